package org.holdproof.core.lesson;

/** Changes of a count in words: whole logs, never a digit more. */
public final class WholeLogs {
    /** Below this there is nothing left to tell apart. */
    public static final int FLOOR = -7;

    private WholeLogs() {}

    /** One change, to the nearest whole log: {@code +5}, {@code 0}, {@code −3}, {@code −7 or lower}. */
    public static String change(double log10) {
        long whole = Math.round(log10);
        return whole <= FLOOR ? signed(FLOOR) + " or lower" : signed(whole);
    }

    /** The same where there is no room for words: {@code ≤ −7}. */
    public static String shortChange(double log10) {
        long whole = Math.round(log10);
        return whole <= FLOOR ? "≤ " + signed(FLOOR) : signed(whole);
    }

    /** The same as a bare figure, {@code −7} standing for all below it too. */
    public static String figure(double log10) {
        return signed(Math.max(Math.round(log10), FLOOR));
    }

    /** A range of changes: {@code +5 to +7}. */
    public static String range(double lowLog10, double highLog10) {
        long low = Math.round(lowLog10);
        long high = Math.round(highLog10);
        if (low == high || high <= FLOOR) {
            return change(highLog10);
        }
        return low <= FLOOR ? signed(high) + " or lower" : signed(low) + " to " + signed(high);
    }

    /** A change of which only the upper end is known: {@code up to +2}. */
    public static String upTo(double highLog10) {
        long high = Math.round(highLog10);
        if (high == 0) {
            return "0";
        }
        return high > 0 ? "up to " + signed(high) : signed(Math.max(high, FLOOR)) + " or lower";
    }

    private static String signed(long whole) {
        return whole == 0 ? "0" : (whole > 0 ? "+" : "−") + Math.abs(whole);
    }
}
