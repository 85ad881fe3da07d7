/** The fonts a report is set in. */
@NullMarked
package org.holdproof.report.font;

import org.jspecify.annotations.NullMarked;
