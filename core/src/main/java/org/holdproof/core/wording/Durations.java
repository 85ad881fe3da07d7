package org.holdproof.core.wording;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * Durations that are compared with each other, in one unit.
 *
 * @param scale the unit
 * @param places decimals of a minute where the unit's own rounding would hide a difference; 0 where it does not
 */
public record Durations(TimeScale scale, int places) {
    private static final int MOST_PLACES = 4;
    /** Durations closer than this are equal: far below the millisecond a log's clock can show. */
    private static final double EQUAL_MINUTES = 1e-6;

    /** The coarsest way in which no duration reads like the limit unless it is equal to it. */
    public static Durations telling(List<Double> minutes, OptionalDouble limit) {
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
                        Math.abs(one - limit) > EQUAL_MINUTES && text(one).equals(text(limit)));
    }

    /** A duration that must not be rounded: in its own unit where the common one would change it. */
    public String exactly(double minutes) {
        boolean kept =
                switch (scale) {
                    case SECONDS -> true;
                    case MINUTES -> Math.abs(minutes * 10 - Math.rint(minutes * 10)) < EQUAL_MINUTES;
                    case HOURS -> Math.abs(minutes - Math.rint(minutes)) < EQUAL_MINUTES;
                };
        return kept || places > 0 ? text(minutes) : TimeScale.of(minutes).text(minutes);
    }

    /** A duration in the common unit. */
    public String text(double minutes) {
        if (places == 0 || Double.isInfinite(minutes)) {
            return scale.text(minutes);
        }
        String figure = String.format(Locale.ROOT, "%." + places + "f", minutes);
        return figure.replaceAll("0+$", "").replaceAll("\\.$", "") + " min";
    }
}
