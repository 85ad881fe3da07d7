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

    /** @throws IllegalArgumentException if the tolerance is not finite or is negative */
    public Instrument {
        if (!Double.isFinite(toleranceCelsius) || toleranceCelsius < 0) {
            throw new IllegalArgumentException("tolerance " + toleranceCelsius);
        }
    }

    /** How a thermometer was checked. */
    public enum Method {
        ICE_POINT("ice point"),
        BOILING_POINT("boiling point"),
        /** Against a reference thermometer. */
        COMPARISON("comparison");

        private final String title;

        Method(String title) {
            this.title = title;
        }

        /** The method's name as it is written in a batch record and printed. */
        public String title() {
            return title;
        }
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
            OptionalDouble altitudeMetres) {

        /** @throws IllegalArgumentException if a figure is not finite */
        public InstrumentCheck {
            if (!Double.isFinite(readingCelsius)
                    || !Double.isFinite(referenceCelsius.orElse(0))
                    || !Double.isFinite(altitudeMetres.orElse(0))) {
                throw new IllegalArgumentException("a check's figures must be finite");
            }
        }
    }
}
