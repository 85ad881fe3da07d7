/** Planning a bath before the cook: when the core is safe, what covers the worst, chill, loss. */
@NullMarked
package org.holdproof.core.plan;

import org.jspecify.annotations.NullMarked;
