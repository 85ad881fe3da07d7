package org.holdproof.core.log.reading;

import org.holdproof.core.log.DateOrder;
import org.holdproof.core.log.reading.ClockCell.DateForm;

/** What the three parts of a date may mean, and the day they then name. */
final class CalendarDay {
    /** No such day. */
    static final long NONE = Long.MIN_VALUE;

    /** Sets of {@link DateOrder}, a bit each. */
    static final int DAY_FIRST = bit(DateOrder.DAY_MONTH_YEAR);

    static final int MONTH_FIRST = bit(DateOrder.MONTH_DAY_YEAR);
    static final int YEAR_FIRST = bit(DateOrder.YEAR_MONTH_DAY);

    private static final int FIRST_YEAR = 1970;
    private static final int LAST_YEAR = 2199;
    private static final int CENTURY = 2000;
    private static final int[] MONTH_LENGTHS = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};

    private CalendarDay() {}

    static int bit(DateOrder order) {
        return switch (order) {
            case DAY_MONTH_YEAR -> 1;
            case MONTH_DAY_YEAR -> 2;
            case YEAR_MONTH_DAY -> 4;
        };
    }

    /** The orders in which the three parts name a day that exists. */
    static int possibleOrders(DateForm form, int namedAt, int a, int b, int c) {
        int allowed =
                switch (form) {
                    case NONE -> 0;
                    case YEAR_FIRST -> YEAR_FIRST;
                    case YEAR_LAST -> DAY_FIRST | MONTH_FIRST;
                    case SHORT_YEAR -> DAY_FIRST | MONTH_FIRST | YEAR_FIRST;
                    case NAMED_MONTH -> namedAt == 0 ? MONTH_FIRST : a > 99 ? YEAR_FIRST : DAY_FIRST;
                    case NAMED_MONTH_SHORT_YEAR -> namedAt == 0 ? MONTH_FIRST : DAY_FIRST | YEAR_FIRST;
                };
        int possible = 0;
        for (DateOrder order : DateOrder.values()) {
            if ((allowed & bit(order)) != 0 && epochDay(order, a, b, c) != NONE) {
                possible |= bit(order);
            }
        }
        return possible;
    }

    /** Days since 1970-01-01, or {@link #NONE}; a year below 100 is one of the 2000s. */
    static long epochDay(DateOrder order, int a, int b, int c) {
        return switch (order) {
            case DAY_MONTH_YEAR -> epochDay(c, b, a);
            case MONTH_DAY_YEAR -> epochDay(c, a, b);
            case YEAR_MONTH_DAY -> epochDay(a, b, c);
        };
    }

    /** Days since 1970-01-01, or {@link #NONE}; a year below 100 is one of the 2000s. */
    static long epochDay(int writtenYear, int month, int day) {
        int year = writtenYear < 100 ? CENTURY + writtenYear : writtenYear;
        if (year < FIRST_YEAR || year > LAST_YEAR || month < 1 || month > 12 || day < 1 || day > length(year, month)) {
            return NONE;
        }
        // days of whole years counted from 1 March 0000, so that the leap day ends a year
        int marchYear = month > 2 ? year : year - 1;
        int marchMonth = month > 2 ? month - 3 : month + 9;
        long days = 365L * marchYear + marchYear / 4 - marchYear / 100 + marchYear / 400;
        return days + (153 * marchMonth + 2) / 5 + day - 1 - 719_468;
    }

    private static int length(int year, int month) {
        boolean leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
        return month == 2 && leap ? 29 : MONTH_LENGTHS[month - 1];
    }
}
