package org.holdproof.core.wording;

import java.util.Locale;

/** The unit durations are said in. Figures of one sentence share it, so that a reader can compare them at a glance. */
public enum TimeScale {
    SECONDS,
    MINUTES,
    HOURS;

    private static final double MINUTES_FROM = 2;
    private static final double HOURS_FROM = 180;

    /** The scale that suits the longest finite one of some durations, in minutes. */
    public static TimeScale of(double... minutes) {
        double longest = 0;
        for (double one : minutes) {
            longest = Double.isFinite(one) ? Math.max(longest, one) : longest;
        }
        return longest < MINUTES_FROM ? SECONDS : longest < HOURS_FROM ? MINUTES : HOURS;
    }

    /** A duration on this scale: {@code 5 h 59 min}, {@code 112 min}, {@code 14 s}; {@code no bound} where infinite. */
    public String text(double minutes) {
        if (Double.isInfinite(minutes)) {
            return "no bound";
        }
        return switch (this) {
            case SECONDS -> trimmed(minutes * 60) + " s";
            case MINUTES -> trimmed(minutes) + " min";
            case HOURS -> hours(Math.round(minutes));
        };
    }

    private static String hours(long minutes) {
        long rest = minutes % 60;
        if (minutes < 60) {
            return minutes + " min";
        }
        return minutes / 60 + " h" + (rest == 0 ? "" : " " + rest + " min");
    }

    private static String trimmed(double value) {
        String figure = String.format(Locale.ROOT, "%.1f", value);
        return figure.endsWith(".0") ? figure.substring(0, figure.length() - 2) : figure;
    }
}
