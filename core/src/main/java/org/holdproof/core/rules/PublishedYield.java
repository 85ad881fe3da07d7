package org.holdproof.core.rules;

import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * A published yield.
 *
 * @param step what was done: braised, roasted, trimming
 * @param basis weight over weight, in words
 * @param percent the yield
 * @param lowPercent its low end, where a range is known
 * @param highPercent its high end, where a range is known
 * @param pieces how many were weighed
 */
public record PublishedYield(
        String id,
        String species,
        String cut,
        String step,
        String basis,
        OptionalDouble percent,
        OptionalDouble lowPercent,
        OptionalDouble highPercent,
        OptionalInt pieces,
        Citation citation) {}
