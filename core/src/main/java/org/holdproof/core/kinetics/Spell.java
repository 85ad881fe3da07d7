package org.holdproof.core.kinetics;

/**
 * One uninterrupted time at or above a temperature.
 *
 * @param fromMillis when it began, in milliseconds since 1970-01-01T00:00Z
 * @param toMillis when it ended; the same as its beginning for a single reading
 */
public record Spell(long fromMillis, long toMillis) {
    public double minutes() {
        return (toMillis - fromMillis) / 60_000.0;
    }

    public double seconds() {
        return (toMillis - fromMillis) / 1_000.0;
    }
}
