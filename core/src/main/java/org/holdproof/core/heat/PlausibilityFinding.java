package org.holdproof.core.heat;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.holdproof.core.log.Trace;

/**
 * Whether readings can have come from a core, with the figures behind it.
 *
 * @param why in words, with the figures that decided
 * @param excessCelsius how far the readings rise above the fastest possible core, in °C; empty where too few readings
 *     lie in the rise to tell
 * @param thresholdCelsius the excess from which they are impossible: 0.5 °C or 3.5 times their scatter
 * @param lag the factor j of the gap's closing, above 1 at a core; empty where the medium was not steady or the readings
 *     too few
 * @param fallCelsius how far the readings fall below what the medium allows a core, in °C
 * @param noiseCelsius standard deviation of the readings' own scatter, in °C
 * @param atMillis the reading that shows it most, where one does
 * @param fastestPossible the fastest possible core at the readings' instants, for a chart
 */
public record PlausibilityFinding(
        Outcome outcome,
        String why,
        OptionalDouble excessCelsius,
        double thresholdCelsius,
        OptionalDouble lag,
        double fallCelsius,
        double noiseCelsius,
        OptionalLong atMillis,
        Optional<Trace> fastestPossible) {
    private static final double LEAST_THRESHOLD = 0.5;

    /** What the readings can and cannot be. */
    public enum Outcome {
        /** Nothing speaks against a core; not a proof that it was one. */
        POSSIBLE("possible"),
        /** As fast as the medium itself. */
        IN_THE_MEDIUM("not possible for a core of this thickness: as if in the bath"),
        /** Too fast for a core, slower than the medium. */
        NEAR_THE_SURFACE("not possible for a core of this thickness: as if near the surface"),
        /** A fall no core could make in this medium. */
        PULLED_OUT("not possible for a core of this thickness: as if pulled out"),
        /** A figure that does not move while everything around it does. */
        STANDS_STILL("not possible for a core: they stand still"),
        /** Above the boiling point of water. */
        TOO_HOT("not possible for a core: too hot"),
        /** A step no core could make from one reading to the next. */
        MOVED("not possible for a core of this thickness: as if the probe was moved"),
        /** The record does not allow an answer. */
        UNDECIDED("cannot be decided");

        private final String title;

        Outcome(String title) {
            this.title = title;
        }

        /** In words. */
        public String title() {
            return title;
        }

        /** Whether the readings cannot be a core's. */
        public boolean isImpossible() {
            return this != POSSIBLE && this != UNDECIDED;
        }
    }

    /** The same figures with another outcome, and the reading that shows it. */
    public PlausibilityFinding saying(Outcome other, String otherWhy, long otherMillis) {
        return new PlausibilityFinding(
                other,
                otherWhy,
                excessCelsius,
                thresholdCelsius,
                lag,
                fallCelsius,
                noiseCelsius,
                OptionalLong.of(otherMillis),
                Optional.empty());
    }

    /** No answer, with the reason in words. */
    public static PlausibilityFinding undecided(String why) {
        return new PlausibilityFinding(
                Outcome.UNDECIDED,
                why,
                OptionalDouble.empty(),
                LEAST_THRESHOLD,
                OptionalDouble.empty(),
                0,
                0,
                OptionalLong.empty(),
                Optional.empty());
    }
}
