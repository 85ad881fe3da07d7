/** Lethality integrals over a logged temperature. */
@NullMarked
package org.holdproof.core.kinetics;

import org.jspecify.annotations.NullMarked;
