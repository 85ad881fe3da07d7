package org.holdproof.core.rules;

import java.util.OptionalInt;
import org.holdproof.core.quantity.Boundary;

/**
 * One published cell: at or above this temperature for this long.
 *
 * @param at the temperature as printed
 * @param fatPercent the fat column, where the table has them
 * @param seconds the time as printed, in seconds; 0 where the document calls it instantaneous
 * @param printedTime the time as printed, with its unit: {@code 112 min}
 */
public record LethalityRow(
        Boundary at, OptionalInt fatPercent, double seconds, String printedTime, Citation citation) {}
