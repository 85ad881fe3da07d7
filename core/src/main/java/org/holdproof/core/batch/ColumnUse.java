package org.holdproof.core.batch;

import java.time.Instant;
import java.util.Optional;

/**
 * What one column of a log measured, throughout or for a stretch of time.
 *
 * @param heading the column's heading in the log
 * @param role what it measured
 * @param probe the name of the place it measured, the same in every log and stretch that measured there
 * @param from when it began to, by the kitchen's clock; empty: from the log's first row
 * @param to when it ceased to; empty: to the log's last row
 */
public record ColumnUse(String heading, ColumnRole role, String probe, Optional<Instant> from, Optional<Instant> to) {

    /** @throws IllegalArgumentException if the stretch does not end after its beginning */
    public ColumnUse {
        if (from.isPresent() && to.isPresent() && !to.get().isAfter(from.get())) {
            throw new IllegalArgumentException("the stretch of " + heading + " ends before it begins");
        }
    }

    /** Whether the column measured this at an instant, in milliseconds since 1970-01-01T00:00Z; both ends included. */
    public boolean holdsAt(long millis) {
        return from.map(begin -> millis >= begin.toEpochMilli()).orElse(true)
                && to.map(end -> millis <= end.toEpochMilli()).orElse(true);
    }

    /** Whether it shares more than an end with another stretch. */
    boolean overlaps(ColumnUse other) {
        Instant begin = from.orElse(Instant.MIN);
        Instant otherBegin = other.from.orElse(Instant.MIN);
        Instant end = to.orElse(Instant.MAX);
        Instant otherEnd = other.to.orElse(Instant.MAX);
        return begin.isBefore(otherEnd) && otherBegin.isBefore(end);
    }
}
