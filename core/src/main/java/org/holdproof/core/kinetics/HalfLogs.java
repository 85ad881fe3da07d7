package org.holdproof.core.kinetics;

import java.util.Locale;

/** Orders of size in words: whole and half logs, never a digit more. */
final class HalfLogs {
    /** Rounding noise that must not push a figure to the next half. */
    private static final double SLACK = 1e-9;

    private HalfLogs() {}

    /** From one increase, rounded down, to another, rounded up: {@code 1.5 to 4 logs}. Neither is negative. */
    static String range(double low, double high) {
        if (high <= SLACK) {
            return "no growth";
        }
        double from = Math.floor(low * 2 + SLACK) / 2;
        double to = Math.ceil(high * 2 - SLACK) / 2;
        if (high < 0.5 - SLACK) {
            return "less than half a log";
        }
        if (from == to) {
            return logs(to);
        }
        return from == 0 ? "anything from less than half a log to " + logs(to) : figure(from) + " to " + logs(to);
    }

    private static String logs(double halves) {
        return halves == 0.5 ? "half a log" : figure(halves) + (halves == 1 ? " log" : " logs");
    }

    /** The nearest whole or half, without a trailing zero. */
    static String figure(double value) {
        double half = Math.rint(value * 2) / 2;
        return half == Math.rint(half) ? Long.toString((long) half) : String.format(Locale.ROOT, "%.1f", half);
    }
}
