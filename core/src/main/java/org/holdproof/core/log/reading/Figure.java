package org.holdproof.core.log.reading;

/**
 * Reads one number out of characters, without a string for the usual case. The value is the double nearest to the
 * decimal figure, as {@link Double#parseDouble} gives it. One instance serves one thread and is used again for each
 * cell.
 */
final class Figure {
    private static final long EXACT = 1L << 53;
    private static final int LONGEST_MANTISSA = 18;
    private static final int LONGEST = 60;
    private static final double[] TENS = {
        1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18
    };

    private double value;
    private int decimals;
    private char mark;

    /** The number last read; infinite where it is too large for a double. */
    double value() {
        return value;
    }

    /** How many digits stood behind the decimal mark. */
    int decimals() {
        return decimals;
    }

    /** The decimal mark, a point or a comma, or 0 where there was none. */
    char mark() {
        return mark;
    }

    /** Whether a character may open a number as a minus sign: hyphen, minus sign, en dash. */
    static boolean isMinus(char c) {
        return c == '-' || c == '\u2212' || c == '\u2013';
    }

    static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }

    /** Reads the number that starts at {@code from}; returns the place behind it, or -1 if no number starts there. */
    int read(char[] text, int from, int end) {
        int at = from;
        boolean negative = false;
        if (at < end && (text[at] == '+' || isMinus(text[at]))) {
            negative = text[at] != '+';
            at++;
        }
        long mantissa = 0;
        int digits = 0;
        decimals = 0;
        mark = 0;
        for (; at < end; at++) {
            char c = text[at];
            if (isDigit(c)) {
                mantissa = mantissa * 10 + (c - '0');
                digits++;
                if (mark != 0) {
                    decimals++;
                }
            } else if ((c == '.' || c == ',') && mark == 0) {
                mark = c;
            } else {
                break;
            }
        }
        if (digits == 0) {
            return -1;
        }
        int exponentEnd = exponentEnd(text, at, end);
        if (exponentEnd > at || digits > LONGEST_MANTISSA || mantissa > EXACT) {
            return readSlowly(text, from, exponentEnd);
        }
        double size = decimals == 0 ? mantissa : mantissa / TENS[decimals];
        value = negative ? -size : size;
        return at;
    }

    private static int exponentEnd(char[] text, int at, int end) {
        if (at >= end || (text[at] != 'e' && text[at] != 'E')) {
            return at;
        }
        int digit = at + 1;
        if (digit < end && (text[digit] == '+' || text[digit] == '-')) {
            digit++;
        }
        int behind = digit;
        while (behind < end && isDigit(text[behind])) {
            behind++;
        }
        return behind == digit ? at : behind;
    }

    private int readSlowly(char[] text, int from, int end) {
        if (end - from > LONGEST) {
            return -1;
        }
        char[] plain = new char[end - from];
        for (int i = 0; i < plain.length; i++) {
            char c = text[from + i];
            plain[i] = c == ',' ? '.' : isMinus(c) ? '-' : c;
        }
        value = Double.parseDouble(new String(plain));
        return end;
    }
}
