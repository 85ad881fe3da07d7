/** The PAdES seal, the keys for it, and whether one holds. Begin with {@link Seal}. */
@NullMarked
package org.holdproof.report.seal;

import org.jspecify.annotations.NullMarked;
