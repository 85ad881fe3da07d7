/** Reads a logger’s file of nearly any layout. Begin with {@link org.holdproof.core.log.reading.LogReader}. */
@NullMarked
package org.holdproof.core.log.reading;

import org.jspecify.annotations.NullMarked;
