package org.holdproof.core.rules;

import java.util.OptionalDouble;

/**
 * Where an organism grows, or how long food may stay where it does. Where a document prints a range for a limit, the
 * wider end stands here and the print in the citation's note.
 *
 * @param minCelsius lowest temperature of growth, in °C
 * @param maxCelsius highest temperature of growth, in °C
 * @param minWaterActivity lowest water activity of growth, from 0 to 1
 * @param maxSaltPercent highest salt of growth, in percent of the water phase
 * @param exposureFromCelsius for an exposure limit, the lower end of its band, in °C
 * @param exposureToCelsius its upper end, in °C; empty: no upper end
 * @param exposureMinutes the longest total time in the band
 */
public record GrowthLimit(
        String id,
        Kind kind,
        String organism,
        OptionalDouble minCelsius,
        OptionalDouble maxCelsius,
        OptionalDouble minPh,
        OptionalDouble maxPh,
        OptionalDouble minWaterActivity,
        OptionalDouble maxSaltPercent,
        OptionalDouble exposureFromCelsius,
        OptionalDouble exposureToCelsius,
        OptionalDouble exposureMinutes,
        Citation citation)
        implements Rule {

    /** What a row says. */
    public enum Kind {
        /** The limits of growth. */
        RANGE,
        /** The lowest temperature of growth. */
        MINIMUM,
        /** The longest total time in a band of temperature. */
        MAX_CUMULATIVE_EXPOSURE,
        /** Growth measured in one cooling experiment. */
        COOLING_GROWTH_RESULT
    }

    @Override
    public String title() {
        return organism;
    }
}
