package org.holdproof.core.log.reading;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.holdproof.core.log.DateOrder;
import org.holdproof.core.log.reading.ClockCell.DateForm;

/**
 * Reads the clock of one row after another into one long a row. What that long means is settled only when the whole
 * file is known: see {@link #settle}.
 */
final class ClockReader {
    private static final long DAY_MILLIS = 86_400_000L;
    private static final double LATEST_MILLIS = 7_258_118_400_000.0;
    // an unsettled date, packed: three parts of 14, 7 and 7 bits above 28 bits of milliseconds, one day added
    private static final int MILLIS_BITS = 28;
    private static final int SMALL_PART_BITS = 7;

    private final ClockPlan plan;
    private final char forbiddenMark;
    private final ClockCell cell = new ClockCell();
    private final ClockCell timeCell = new ClockCell();
    private final Figure figure = new Figure();
    private final RepeatedDate repeat = new RepeatedDate();

    private boolean shapeKnown;
    private long shapeLine;
    private DateForm form = DateForm.NONE;
    private int namedAt;
    private boolean hasOffset;
    private boolean twelveHour;

    private int possible = CalendarDay.DAY_FIRST | CalendarDay.MONTH_FIRST | CalendarDay.YEAR_FIRST;
    private final Map<DateOrder, Long> ruledOutAt = new EnumMap<>(DateOrder.class);
    private boolean orderMatters;
    private long lastTriple = -1;

    private long clock;
    private String text = "";
    private String expected = "";

    /** @param forbiddenMark a decimal mark that cannot be one in this file's elapsed times, or 0 */
    ClockReader(ClockPlan plan, char forbiddenMark) {
        this.plan = plan;
        this.forbiddenMark = forbiddenMark;
    }

    /** The clock of the row last read, to be settled. */
    long clock() {
        return clock;
    }

    /** The cell that could not be read. */
    String garbledText() {
        return text;
    }

    /** What should have stood there. */
    String expected() {
        return expected;
    }

    /** Reads the only cell of the clock; false if it is none. */
    boolean read(long line, char[] buffer, int from, int end) {
        switch (plan.kind()) {
            case STAMP -> {
                if (repeat.read(buffer, from, end)) {
                    clock = repeat.clock();
                    return true;
                }
                if (!cell.read(buffer, from, end) || cell.form() == DateForm.NONE || !cell.hasTime()) {
                    return garbled(buffer, from, end, "a date and a time of day");
                }
                if (!take(line, cell, cell, buffer, from, end)) {
                    return false;
                }
                repeat.remember(buffer, from, end, cell, clock);
                return true;
            }
            case EPOCH_SECONDS, EPOCH_MILLIS -> {
                boolean seconds = plan.kind() == ClockPlan.Kind.EPOCH_SECONDS;
                if (figure.read(buffer, from, end) != end) {
                    return garbled(buffer, from, end, seconds ? "seconds since 1970" : "milliseconds since 1970");
                }
                double millis = figure.value() * (seconds ? 1000 : 1);
                if (!(millis >= 0 && millis <= LATEST_MILLIS)) {
                    return garbled(buffer, from, end, seconds ? "seconds since 1970" : "milliseconds since 1970");
                }
                clock = Math.round(millis);
                return true;
            }
            case ELAPSED_FIGURE -> {
                boolean readable =
                        figure.read(buffer, from, end) == end && (figure.mark() == 0 || figure.mark() != forbiddenMark);
                double millis = figure.value() * plan.unitMillis();
                if (!readable || !(millis >= 0 && millis <= LATEST_MILLIS)) {
                    return garbled(buffer, from, end, "an elapsed time in figures");
                }
                clock = Math.round(millis);
                return true;
            }
            case ELAPSED_HOURS_MINUTES_SECONDS, ELAPSED_HOURS_MINUTES, ELAPSED_MINUTES_SECONDS -> {
                return (cell.readElapsed(buffer, from, end) && takeElapsed())
                        || garbled(buffer, from, end, "an elapsed time with colons");
            }
            case DATE_AND_TIME -> throw new IllegalStateException("date and time are read apart");
        }
        throw new IllegalStateException("no such clock: " + plan.kind());
    }

    /** Reads the date of a row whose time of day stands apart; false if it is none. */
    boolean readDate(char[] buffer, int from, int end) {
        if (cell.read(buffer, from, end) && cell.form() != DateForm.NONE && midnightOrNoTime()) {
            return true;
        }
        return garbled(buffer, from, end, "a date");
    }

    /** A spreadsheet prints a date of its own as that day's midnight. */
    private boolean midnightOrNoTime() {
        return !cell.hasTime() || (cell.millisOfDay() == 0 && !cell.hasOffset());
    }

    /** Reads the time of day of a row whose date stands apart; false if it is none. */
    boolean readTime(char[] buffer, int from, int end) {
        if (timeCell.read(buffer, from, end) && timeCell.form() == DateForm.NONE && timeCell.hasTime()) {
            return true;
        }
        return garbled(buffer, from, end, "a time of day");
    }

    /** Joins the date and the time of day last read; false if they are written unlike those before. */
    boolean join(long line) {
        return take(line, cell, timeCell, new char[0], 0, 0);
    }

    private boolean garbled(char[] buffer, int from, int end, String wanted) {
        text = new String(buffer, from, Math.min(end - from, 200));
        expected = wanted;
        return false;
    }

    private boolean takeElapsed() {
        int parts = cell.timeParts();
        long[] scale = {1000, 60_000, 3_600_000, DAY_MILLIS};
        int wanted = plan.kind() == ClockPlan.Kind.ELAPSED_HOURS_MINUTES_SECONDS ? 3 : 2;
        if (parts < wanted || (wanted == 2 && parts > 2)) {
            return false;
        }
        int lowest = plan.kind() == ClockPlan.Kind.ELAPSED_HOURS_MINUTES ? 1 : 0;
        if (lowest == 1 && cell.nanos() != 0) {
            return false;
        }
        long millis = cell.nanos() / 1_000_000;
        for (int i = 0; i < parts; i++) {
            int place = parts - 1 - i + lowest;
            if (i > 0 && cell.timePart(i) >= (place == 2 ? 24 : 60)) {
                return false;
            }
            millis += cell.timePart(i) * scale[place];
        }
        clock = millis;
        return true;
    }

    private boolean take(long line, ClockCell date, ClockCell time, char[] buffer, int from, int end) {
        if (!shapeKnown) {
            shapeKnown = true;
            shapeLine = line;
            form = date.form();
            namedAt = date.namedAt();
            hasOffset = time.hasOffset();
            twelveHour = time.twelveHour();
        } else if (form != date.form()
                || namedAt != date.namedAt()
                || hasOffset != time.hasOffset()
                || twelveHour != time.twelveHour()) {
            return garbled(buffer, from, end, "date and time written as in line " + shapeLine);
        }
        int a = date.datePart(0);
        int b = date.datePart(1);
        int c = date.datePart(2);
        long millis = time.millisOfDay() - time.offsetMinutes() * 60_000L;
        long triple = (a * 10_000L + c) * 100 + b;
        if (triple != lastTriple && !narrow(line, a, b, c)) {
            return garbled(buffer, from, end, "a day that exists, in the order of the dates before it");
        }
        lastTriple = triple;
        if (isPacked()) {
            long packed = ((long) c << (2 * SMALL_PART_BITS)) | ((long) a << SMALL_PART_BITS) | b;
            clock = (packed << MILLIS_BITS) | (millis + DAY_MILLIS);
        } else {
            clock = CalendarDay.epochDay(onlyOrder(), a, b, c) * DAY_MILLIS + millis;
        }
        return true;
    }

    private boolean isPacked() {
        return form == DateForm.YEAR_LAST || form == DateForm.SHORT_YEAR || form == DateForm.NAMED_MONTH_SHORT_YEAR;
    }

    private boolean narrow(long line, int a, int b, int c) {
        int here = CalendarDay.possibleOrders(form, namedAt, a, b, c);
        int left = possible & here;
        if (left == 0) {
            return false;
        }
        for (DateOrder order : DateOrder.values()) {
            int bit = CalendarDay.bit(order);
            if ((possible & bit) != 0 && (left & bit) == 0) {
                ruledOutAt.put(order, line);
            }
        }
        possible = left;
        orderMatters |= differs(a, b, c);
        return true;
    }

    private boolean differs(int a, int b, int c) {
        long day = CalendarDay.NONE;
        for (DateOrder order : DateOrder.values()) {
            if ((possible & CalendarDay.bit(order)) != 0) {
                long other = CalendarDay.epochDay(order, a, b, c);
                if (day != CalendarDay.NONE && other != day) {
                    return true;
                }
                day = other;
            }
        }
        return false;
    }

    private DateOrder onlyOrder() {
        for (DateOrder order : DateOrder.values()) {
            if ((possible & CalendarDay.bit(order)) != 0) {
                return order;
            }
        }
        throw new IllegalStateException("no date read yet");
    }

    /** One of the orders the dates can have. */
    DateOrder possibleOrder() {
        return onlyOrder();
    }

    /** Whether the clock's values are instants already, by an offset or by counting from 1970. */
    boolean isInstant() {
        return plan.kind().isEpoch() || hasOffset;
    }

    /**
     * Turns the clocks of all rows into milliseconds since 1970-01-01T00:00, of the local clock unless
     * {@link #isInstant()}, or since the start where the time is elapsed.
     *
     * @throws Refusal if the order of day, month and year is open, or not the one somebody settled
     */
    void settle(Columns columns, Optional<DateOrder> settled) {
        if (plan.kind() != ClockPlan.Kind.STAMP && plan.kind() != ClockPlan.Kind.DATE_AND_TIME) {
            return;
        }
        boolean figures = form == DateForm.YEAR_FIRST || form == DateForm.YEAR_LAST || form == DateForm.SHORT_YEAR;
        if (settled.isPresent() && (figures || isPacked())) {
            requirePossible(settled.get());
            possible = CalendarDay.bit(settled.get());
        }
        if (!isPacked()) {
            return;
        }
        if (Integer.bitCount(possible) > 1 && orderMatters) {
            throw Refusal.question(
                    Refusal.Question.DATES,
                    shapeLine,
                    plan.column() + 1,
                    "dates that can be read as " + names(possible),
                    "a date that settles the order (a day above 12)",
                    "Say the order: \"log.dates\" in the batch record, or --dates dmy, mdy or ymd.");
        }
        DateOrder order = onlyOrder();
        long triple = -1;
        long dayMillis = 0;
        for (int row = 0; row < columns.rows(); row++) {
            long packed = columns.clock(row);
            long date = packed >>> MILLIS_BITS;
            if (date != triple) {
                triple = date;
                int b = (int) date & ((1 << SMALL_PART_BITS) - 1);
                int a = (int) (date >>> SMALL_PART_BITS) & ((1 << SMALL_PART_BITS) - 1);
                int c = (int) (date >>> (2 * SMALL_PART_BITS));
                dayMillis = CalendarDay.epochDay(order, a, b, c) * DAY_MILLIS;
            }
            columns.setClock(row, dayMillis + (packed & ((1L << MILLIS_BITS) - 1)) - DAY_MILLIS);
        }
    }

    private void requirePossible(DateOrder order) {
        if ((possible & CalendarDay.bit(order)) != 0) {
            return;
        }
        long line = ruledOutAt.getOrDefault(order, shapeLine);
        throw new Refusal(
                line,
                plan.column() + 1,
                "a date written as " + names(possible),
                names(CalendarDay.bit(order)) + ", as \"log.dates\" or --dates says",
                "Correct \"log.dates\" in the batch record, or --dates; the file settles its order itself.");
    }

    private static String names(int orders) {
        String[] names = Arrays.stream(DateOrder.values())
                .filter(order -> (orders & CalendarDay.bit(order)) != 0)
                .map(ClockReader::name)
                .toArray(String[]::new);
        return String.join(" or as ", names);
    }

    private static String name(DateOrder order) {
        return switch (order) {
            case DAY_MONTH_YEAR -> "day, month, year";
            case MONTH_DAY_YEAR -> "month, day, year";
            case YEAR_MONTH_DAY -> "year, month, day";
        };
    }
}
