/** One vocabulary for durations, temperatures and instants. Begin with {@link org.holdproof.core.wording.Wording}. */
@NullMarked
package org.holdproof.core.wording;

import org.jspecify.annotations.NullMarked;
