/** A cook under way: what is proven, what it still needs, which limits run. Begin with {@link org.holdproof.core.standing.Standing}. */
@NullMarked
package org.holdproof.core.standing;

import org.jspecify.annotations.NullMarked;
