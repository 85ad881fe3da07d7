package org.holdproof.core.batch;

/**
 * How a logger's clock stood against the kitchen's.
 *
 * @param aheadMillis how far it was ahead, in milliseconds; negative: behind
 * @param withinMillis how far that figure may be from the truth either way, in milliseconds, not negative
 */
public record ClockError(long aheadMillis, long withinMillis) {
    /** A clock that agrees with the kitchen's. */
    public static final ClockError NONE = new ClockError(0, 0);

    /** @throws IllegalArgumentException if the uncertainty is negative */
    public ClockError {
        if (withinMillis < 0) {
            throw new IllegalArgumentException("within " + withinMillis + " ms");
        }
    }
}
