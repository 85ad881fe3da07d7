/** A probe's log: columns of instants and temperatures, its reader, and what is wrong with it. */
@NullMarked
package org.holdproof.core.log;

import org.jspecify.annotations.NullMarked;
