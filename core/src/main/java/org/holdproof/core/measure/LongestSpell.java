package org.holdproof.core.measure;

import java.util.Optional;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.quantity.TemperatureUnit;

/**
 * The longest uninterrupted spell of a trace at or above a temperature.
 *
 * @param worst as far against the cook as the record allows: readings less the tolerance, both ends of an interval at or
 *     above, no gap inside; empty if no reading surely reached the temperature
 * @param nominal with a straight line between readings
 * @param best readings plus the tolerance, the hotter end of an interval counted for all of it, gaps included; a reading
 *     surely below still ends the spell
 */
public record LongestSpell(Optional<Span> worst, Optional<Span> nominal, Optional<Span> best) {

    /**
     * Finds the longest spells.
     *
     * @param celsius the temperature, in °C
     * @param toleranceCelsius how far a reading may lie from the truth, in °C, not negative
     * @param gapMinutes an interval longer than this is a gap
     */
    public static LongestSpell atOrAbove(Trace trace, double celsius, double toleranceCelsius, double gapMinutes) {
        double level = celsius - TemperatureUnit.SLACK_CELSIUS;
        return new LongestSpell(
                worst(trace, level + toleranceCelsius, gapMinutes),
                nominal(trace, level),
                best(trace, level - toleranceCelsius));
    }

    private static Optional<Span> worst(Trace trace, double level, double gapMinutes) {
        Longest longest = new Longest();
        for (int i = 0; i < trace.size(); i++) {
            if (trace.celsius(i) < level) {
                longest.end();
            } else {
                if (i > 0 && trace.minutesAfter(i - 1) > gapMinutes) {
                    longest.end();
                }
                longest.extend(trace.millis(i), trace.millis(i));
            }
        }
        return longest.spell();
    }

    private static Optional<Span> nominal(Trace trace, double level) {
        Longest longest = new Longest();
        for (int i = 0; i < trace.size(); i++) {
            boolean above = trace.celsius(i) >= level;
            if (i > 0 && above != trace.celsius(i - 1) >= level) {
                double share = (level - trace.celsius(i - 1)) / (trace.celsius(i) - trace.celsius(i - 1));
                long crossing = trace.millis(i - 1) + Math.round(share * (trace.millis(i) - trace.millis(i - 1)));
                longest.extend(crossing, crossing);
            }
            if (above) {
                longest.extend(trace.millis(i), trace.millis(i));
            } else {
                longest.end();
            }
        }
        return longest.spell();
    }

    private static Optional<Span> best(Trace trace, double level) {
        Longest longest = new Longest();
        for (int i = 0; i < trace.size(); i++) {
            if (trace.celsius(i) >= level) {
                longest.extend(trace.millis(Math.max(i - 1, 0)), trace.millis(Math.min(i + 1, trace.size() - 1)));
            } else {
                longest.end();
            }
        }
        return longest.spell();
    }

    /** The longest of the spells put to it one after another. */
    private static final class Longest {
        private boolean open;
        private boolean any;
        private long from;
        private long to;
        private long longestFrom;
        private long longestTo;

        void extend(long fromMillis, long toMillis) {
            if (!open) {
                open = true;
                from = fromMillis;
            }
            to = toMillis;
            if (!any || to - from > longestTo - longestFrom) {
                any = true;
                longestFrom = from;
                longestTo = to;
            }
        }

        void end() {
            open = false;
        }

        Optional<Span> spell() {
            return any ? Optional.of(new Span(longestFrom, longestTo)) : Optional.empty();
        }
    }
}
