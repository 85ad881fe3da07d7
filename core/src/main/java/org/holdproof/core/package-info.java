/**
 * Whether a temperature record proves that food was made safe and kept safe. Begin with
 * {@link org.holdproof.core.Verification}.
 */
@NullMarked
package org.holdproof.core;

import org.jspecify.annotations.NullMarked;
