package org.holdproof.core.standing;

import java.util.OptionalLong;
import org.holdproof.core.quantity.Bounded;

/**
 * A limit in time that has begun to run out and is not settled yet.
 *
 * @param check the id of the check it belongs to, such as {@code cooling.1}
 * @param title the limit in a few words
 * @param channel the probe that governs it now
 * @param presentMillis the instant it was read at, in milliseconds since 1970-01-01T00:00Z
 * @param usedMinutes the minutes used, at worst the most they can be
 * @param limitMinutes the minutes allowed
 * @param soonestMillis the soonest it can end at the present pace, a prediction, in milliseconds since
 *     1970-01-01T00:00Z; empty where the pace may still grow or leads elsewhere
 * @param words what must happen by when, in a sentence
 */
public record RunningClock(
        String check,
        String title,
        String channel,
        long presentMillis,
        Bounded usedMinutes,
        double limitMinutes,
        OptionalLong soonestMillis,
        String words) {

    /** Minutes left for the limit to be provably kept; negative once that is past. */
    public double minutesLeft() {
        return limitMinutes - usedMinutes.worst();
    }

    /** Until when the limit can be provably kept, in milliseconds since 1970-01-01T00:00Z. */
    public long provableUntilMillis() {
        return presentMillis + Math.round(minutesLeft() * 60_000);
    }

    /** When the limit has run out beyond doubt, in milliseconds since 1970-01-01T00:00Z. */
    public long lostFromMillis() {
        return presentMillis + Math.round((limitMinutes - usedMinutes.best()) * 60_000);
    }

    /** Whether the limit still can be kept but will not be at the present pace. */
    public boolean isExpectedLate() {
        return minutesLeft() >= 0 && soonestMillis.isPresent() && soonestMillis.getAsLong() > provableUntilMillis();
    }
}
