package org.holdproof.core.verdict;

import java.util.List;
import org.holdproof.core.quantity.Span;

/**
 * What the log is worth as a record.
 *
 * @param rows rows read
 * @param medianMinutes the longest of the core probes' median intervals between readings
 * @param gapLimitMinutes the shortest of the core probes' gap limits
 * @param gaps the gaps of the core probes, anywhere in the log
 * @param offsetCelsius what was added to every reading for the instrument's known error, in °C
 * @param toleranceCelsius the tolerance the figures were widened by, in °C
 */
public record RecordFacts(
        int rows,
        double medianMinutes,
        double gapLimitMinutes,
        List<Gap> gaps,
        double offsetCelsius,
        double toleranceCelsius) {
    public RecordFacts {
        gaps = List.copyOf(gaps);
    }

    /** A spell without readings of one channel. */
    public record Gap(String channel, Span span) {}
}
