/** Published rules and kinetics as typed data, and the library that loads them. */
@NullMarked
package org.holdproof.core.rules;

import org.jspecify.annotations.NullMarked;
