package org.holdproof.report.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.wording.TimeScale;

/**
 * Durations that are compared with each other, in one unit.
 *
 * @param scale the unit
 * @param places decimals of a minute where the unit's own rounding would hide a difference; 0 where it does not
 */
record Durations(TimeScale scale, int places) {
    private static final int MOST_PLACES = 4;

    /** The coarsest way in which no duration reads like the limit unless it is equal to it. */
    static Durations telling(List<Double> minutes, OptionalDouble limit) {
        List<Double> all = new ArrayList<>(minutes);
        limit.ifPresent(all::add);
        Durations durations = new Durations(
                TimeScale.of(all.stream().mapToDouble(Double::doubleValue).toArray()), 0);
        while (limit.isPresent() && durations.places < MOST_PLACES && durations.hides(minutes, limit.getAsDouble())) {
            durations = new Durations(TimeScale.MINUTES, durations.places + 1);
        }
        return durations;
    }

    private boolean hides(List<Double> minutes, double limit) {
        return minutes.stream()
                .filter(Double::isFinite)
                .anyMatch(one ->
                        Math.abs(one - limit) > Check.FIGURE_SLACK && text(one).equals(text(limit)));
    }

    /** A duration that must not be rounded: in its own unit where the common one would change it. */
    String exactly(double minutes) {
        boolean kept =
                switch (scale) {
                    case SECONDS -> true;
                    case MINUTES -> Math.abs(minutes * 10 - Math.rint(minutes * 10)) < Check.FIGURE_SLACK;
                    case HOURS -> Math.abs(minutes - Math.rint(minutes)) < Check.FIGURE_SLACK;
                };
        return kept || places > 0 ? text(minutes) : TimeScale.of(minutes).text(minutes);
    }

    String text(double minutes) {
        return places == 0 ? scale.text(minutes) : Figures.trimmed(minutes, places) + " min";
    }
}
