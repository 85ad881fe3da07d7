package org.holdproof.core.kinetics;

import org.holdproof.core.log.Trace;

/**
 * The count of one organism as food warms through its growth range and into death, or back: growth below the highest
 * temperature of growth, nothing from there to the floor of death, death above it. Temperature is linear between
 * readings and both integrals are exact, so that the readings' interval does not matter while the straight line holds.
 *
 * <p>A picture of direction and order of size for teaching, not a safety verdict.
 */
public final class GrowthThenDeath {
    private final GrowthRate growth;
    private final double ceilingLog10;
    private final SlowestDeath death;

    /**
     * @param ceilingLog10 the count growth comes to a stop at, in log10 CFU/g
     * @throws IllegalArgumentException if anything grows above the floor of death
     */
    public GrowthThenDeath(GrowthRate growth, double ceilingLog10, SlowestDeath death) {
        if (growth.maxCelsius() > death.floorCelsius()) {
            throw new IllegalArgumentException(
                    "growth to " + growth.maxCelsius() + " °C overlaps death from " + death.floorCelsius() + " °C");
        }
        this.growth = growth;
        this.ceilingLog10 = ceilingLog10;
        this.death = death;
    }

    /** The count along a trace that has at least one reading. */
    public Course along(Trace trace, GrowthState start) {
        double[] counts = new double[trace.size()];
        GrowthState state = start;
        double peak = start.log10PerGram();
        counts[0] = peak;
        for (int i = 0; i + 1 < trace.size(); i++) {
            double from = trace.celsius(i);
            double to = trace.celsius(i + 1);
            double minutes = trace.minutesAfter(i);
            double potential = growth.alongLine(from, to, minutes);
            double reduction = death.alongLine(from, to, minutes);
            if (from <= to) {
                GrowthState grown = state.after(potential, ceilingLog10);
                peak = Math.max(peak, grown.log10PerGram());
                state = grown.reducedBy(reduction);
            } else {
                state = state.reducedBy(reduction).after(potential, ceilingLog10);
                peak = Math.max(peak, state.log10PerGram());
            }
            counts[i + 1] = state.log10PerGram();
        }
        return new Course(counts, peak, state);
    }

    /** The count after each reading. */
    public static final class Course {
        private final double[] log10PerGram;
        private final double peak;
        private final GrowthState end;

        private Course(double[] log10PerGram, double peak, GrowthState end) {
            this.log10PerGram = log10PerGram;
            this.peak = peak;
            this.end = end;
        }

        /** The count at reading {@code i}, in log10 CFU/g; far below zero there is none left in any piece. */
        public double log10PerGram(int i) {
            return log10PerGram[i];
        }

        /** The largest count on the way, between two readings too, in log10 CFU/g. */
        public double peakLog10PerGram() {
            return peak;
        }

        /** Where it stands at the last reading, to go on from. */
        public GrowthState end() {
            return end;
        }
    }
}
