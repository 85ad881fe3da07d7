/** Conduction of heat in a piece of food: what its core does in air, in a bath, in ice, and what a log tells of it. */
@NullMarked
package org.holdproof.core.heat;

import org.jspecify.annotations.NullMarked;
