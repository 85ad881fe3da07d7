package org.holdproof.core.batch;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The logging thermometer.
 *
 * @param id its serial number or name
 * @param toleranceCelsius how far it may read from the truth either way, a difference in °C, not negative
 * @param lastCheck the last time it was checked
 * @param checkEveryDays how often the kitchen's plan has it checked
 */
public record Instrument(
        String id, double toleranceCelsius, Optional<InstrumentCheck> lastCheck, OptionalDouble checkEveryDays) {

    /** How a thermometer was checked. */
    public enum Method {
        ICE_POINT,
        BOILING_POINT,
        /** Against a reference thermometer. */
        COMPARISON
    }

    /**
     * One check of the thermometer.
     *
     * @param readingCelsius what it showed
     * @param referenceCelsius what a reference thermometer showed; only with {@link Method#COMPARISON}
     * @param altitudeMetres height above sea level; only with {@link Method#BOILING_POINT}
     */
    public record InstrumentCheck(
            LocalDate date,
            Method method,
            double readingCelsius,
            OptionalDouble referenceCelsius,
            OptionalDouble altitudeMetres) {}
}
