/** The checks, their verdicts, and the assessment of one batch. */
@NullMarked
package org.holdproof.core.assess;

import org.jspecify.annotations.NullMarked;
