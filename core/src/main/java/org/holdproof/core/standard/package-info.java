/** Published rules and kinetics as typed data, and the library that loads them. */
@NullMarked
package org.holdproof.core.standard;

import org.jspecify.annotations.NullMarked;
