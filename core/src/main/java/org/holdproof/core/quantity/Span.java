package org.holdproof.core.quantity;

/**
 * A stretch of time; one instant where both ends are the same.
 *
 * @param fromMillis its first instant, in milliseconds since 1970-01-01T00:00Z
 * @param toMillis its last instant
 */
public record Span(long fromMillis, long toMillis) {
    public Span {
        if (toMillis < fromMillis) {
            throw new IllegalArgumentException("a span ends before it begins");
        }
    }

    public double minutes() {
        return (toMillis - fromMillis) / 60_000.0;
    }

    public double seconds() {
        return (toMillis - fromMillis) / 1_000.0;
    }
}
