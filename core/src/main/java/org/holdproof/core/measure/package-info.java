/** Interval figures on a trace: the longest spell, cooling clocks, time in a band, held levels. Begin with {@link org.holdproof.core.measure.LongestSpell}. */
@NullMarked
package org.holdproof.core.measure;

import org.jspecify.annotations.NullMarked;
