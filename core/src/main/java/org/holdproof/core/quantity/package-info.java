/** Temperatures, quantities with their units, and the interval every figure is. */
@NullMarked
package org.holdproof.core.quantity;

import org.jspecify.annotations.NullMarked;
