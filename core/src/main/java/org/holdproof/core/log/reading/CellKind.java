package org.holdproof.core.log.reading;

/** What a cell looks like, seen alone. */
enum CellKind {
    BLANK,
    /** A figure without unit. */
    FIGURE,
    /** A figure that can only be seconds since 1970. */
    EPOCH_SECONDS,
    /** A figure that can only be milliseconds since 1970. */
    EPOCH_MILLIS,
    /** A figure with °C or °F. */
    TEMPERATURE,
    DATE,
    TIME_OF_DAY,
    DATE_AND_TIME,
    /** Four parts divided by colons, or hours beyond a day: elapsed time only. */
    ELAPSED,
    /** One of the words or signs by which loggers say that there is no reading. */
    NO_READING,
    TEXT;

    private static final double FIRST_EPOCH_SECOND = 946_684_800;
    private static final double LAST_EPOCH_SECOND = 7_258_118_400.0;

    static CellKind of(String cell) {
        if (cell.isEmpty()) {
            return BLANK;
        }
        char[] text = cell.toCharArray();
        TemperatureCell temperature = new TemperatureCell();
        if (temperature.read(text, 0, text.length) == TemperatureCell.Content.FIGURE) {
            return temperature.unit() == TemperatureCell.NO_UNIT ? figure(cell, temperature.value()) : TEMPERATURE;
        }
        ClockCell clock = new ClockCell();
        if (clock.read(text, 0, text.length)) {
            return clock.form() == ClockCell.DateForm.NONE ? TIME_OF_DAY : clock.hasTime() ? DATE_AND_TIME : DATE;
        }
        if (clock.readElapsed(text, 0, text.length)) {
            return ELAPSED;
        }
        return TemperatureCell.isMissingWord(cell) ? NO_READING : TEXT;
    }

    private static CellKind figure(String cell, double value) {
        if (value >= FIRST_EPOCH_SECOND && value <= LAST_EPOCH_SECOND) {
            return EPOCH_SECONDS;
        }
        if (value >= FIRST_EPOCH_SECOND * 1000 && value <= LAST_EPOCH_SECOND * 1000) {
            return EPOCH_MILLIS;
        }
        if (cell.length() == 14 || cell.length() == 12) {
            ClockCell clock = new ClockCell();
            boolean glued = clock.read(cell.toCharArray(), 0, cell.length())
                    && clock.hasTime()
                    && CalendarDay.possibleOrders(
                                    clock.form(),
                                    clock.namedAt(),
                                    clock.datePart(0),
                                    clock.datePart(1),
                                    clock.datePart(2))
                            != 0;
            if (glued) {
                return DATE_AND_TIME;
            }
        }
        return isCompactDate(cell) ? DATE : FIGURE;
    }

    /** Eight figures that name a day, as {@code 20310506}. */
    private static boolean isCompactDate(String cell) {
        char[] text = cell.toCharArray();
        ClockCell clock = new ClockCell();
        return text.length == 8
                && clock.read(text, 0, text.length)
                && CalendarDay.possibleOrders(
                                clock.form(), clock.namedAt(), clock.datePart(0), clock.datePart(1), clock.datePart(2))
                        != 0;
    }

    boolean isFigure() {
        return this == FIGURE || this == EPOCH_SECONDS || this == EPOCH_MILLIS || this == TEMPERATURE;
    }

    boolean isClock() {
        return this == DATE
                || this == TIME_OF_DAY
                || this == DATE_AND_TIME
                || this == ELAPSED
                || this == EPOCH_SECONDS
                || this == EPOCH_MILLIS;
    }

    boolean isReading() {
        return this == FIGURE || this == TEMPERATURE || this == NO_READING || this == BLANK;
    }

    /** Whether the cell has a meaning in a table of readings. */
    boolean isUnderstood() {
        return this != TEXT;
    }
}
