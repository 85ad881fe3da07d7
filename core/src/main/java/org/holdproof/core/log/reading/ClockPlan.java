package org.holdproof.core.log.reading;

import java.time.ZoneId;
import java.util.Optional;

/**
 * How the rows of a log tell their time.
 *
 * @param kind what the clock's cells hold
 * @param column the column of the clock, or of the date where date and time stand apart; counted from 0
 * @param timeColumn the column of the time of day where it stands apart, otherwise -1; counted from 0
 * @param unitMillis the unit of an elapsed time in figures, in milliseconds, otherwise 0
 * @param zone the zone the file itself states for a clock without offset
 */
record ClockPlan(Kind kind, int column, int timeColumn, double unitMillis, Optional<ZoneId> zone) {
    enum Kind {
        /** Date and time in one cell. */
        STAMP,
        /** Date in one cell, time of day in another. */
        DATE_AND_TIME,
        /** Seconds since 1970-01-01T00:00Z. */
        EPOCH_SECONDS,
        /** Milliseconds since 1970-01-01T00:00Z. */
        EPOCH_MILLIS,
        /** Elapsed time as a figure. */
        ELAPSED_FIGURE,
        /** Elapsed time as h:mm:ss or d:hh:mm:ss. */
        ELAPSED_HOURS_MINUTES_SECONDS,
        /** Elapsed time as h:mm. */
        ELAPSED_HOURS_MINUTES,
        /** Elapsed time as mm:ss. */
        ELAPSED_MINUTES_SECONDS;

        boolean isElapsed() {
            return this == ELAPSED_FIGURE
                    || this == ELAPSED_HOURS_MINUTES_SECONDS
                    || this == ELAPSED_HOURS_MINUTES
                    || this == ELAPSED_MINUTES_SECONDS;
        }

        boolean isEpoch() {
            return this == EPOCH_SECONDS || this == EPOCH_MILLIS;
        }
    }
}
