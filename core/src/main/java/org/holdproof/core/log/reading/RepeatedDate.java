package org.holdproof.core.log.reading;

/**
 * The short way for date and time in one cell: most rows differ from the one before in nothing but the digits of the
 * time of day. What stands before and behind those is compared, not read again.
 */
final class RepeatedDate {
    private static final int LONGEST = 48;

    private final char[] before = new char[LONGEST];
    private final char[] behind = new char[LONGEST];
    private int beforeLength = -1;
    private int behindLength;
    private int hourAdded;
    private boolean twelveHour;
    private long midnight;
    private long clock;

    /** The clock of the cell last read. */
    long clock() {
        return clock;
    }

    /** Remembers a cell that was read the long way, and the clock it gave, to which milliseconds can be added. */
    void remember(char[] text, int from, int end, ClockCell cell, long value) {
        beforeLength = -1;
        int prefix = cell.timeFrom() - from;
        int suffix = end - cell.timeEnd();
        if (cell.timeFrom() < 0 || prefix > LONGEST || suffix > LONGEST) {
            return;
        }
        System.arraycopy(text, from, before, 0, prefix);
        System.arraycopy(text, cell.timeEnd(), behind, 0, suffix);
        beforeLength = prefix;
        behindLength = suffix;
        twelveHour = cell.twelveHour();
        hourAdded = twelveHour && cell.millisOfDay() >= 43_200_000 ? 12 : 0;
        midnight = value - cell.millisOfDay();
    }

    /** Reads a cell that differs from the one remembered in the time of day only; false if it does not. */
    boolean read(char[] text, int from, int end) {
        int at = from + beforeLength;
        int last = end - behindLength;
        if (beforeLength < 0 || last - at < 4 || !same(text, from, before, beforeLength)) {
            return false;
        }
        if (!same(text, last, behind, behindLength)) {
            return false;
        }
        int hour = text[at] - '0';
        if (text[at + 1] != ':') {
            hour = hour < 0 || hour > 2 ? -1 : hour * 10 + digit(text[at + 1]);
            at++;
        }
        if (last - at < 4 || text[at + 1] != ':') {
            return false;
        }
        int minute = two(text, at + 2);
        at += 4;
        int second = 0;
        int millis = 0;
        if (at < last) {
            if (text[at] != ':' || last - at < 3) {
                return false;
            }
            second = two(text, at + 1);
            at += 3;
            if (at < last) {
                millis = millis(text, at, last);
            }
        }
        if (hour < 0 || hour > 23 || minute < 0 || minute > 59 || second < 0 || second > 59 || millis < 0) {
            return false;
        }
        if (twelveHour) {
            if (hour < 1 || hour > 12) {
                return false;
            }
            hour = hour % 12 + hourAdded;
        }
        clock = midnight + ((hour * 60 + minute) * 60 + second) * 1000L + millis;
        return true;
    }

    private static int millis(char[] text, int mark, int last) {
        if ((text[mark] != '.' && text[mark] != ',') || mark + 1 == last) {
            return -1;
        }
        int millis = 0;
        int scale = 100;
        for (int at = mark + 1; at < last; at++) {
            if (!Figure.isDigit(text[at])) {
                return -1;
            }
            millis += (text[at] - '0') * scale;
            scale /= 10;
        }
        return millis;
    }

    private static boolean same(char[] text, int from, char[] wanted, int length) {
        for (int i = 0; i < length; i++) {
            if (text[from + i] != wanted[i]) {
                return false;
            }
        }
        return true;
    }

    private static int digit(char c) {
        return c >= '0' && c <= '9' ? c - '0' : -100;
    }

    private static int two(char[] text, int at) {
        return digit(text[at]) * 10 + digit(text[at + 1]);
    }
}
