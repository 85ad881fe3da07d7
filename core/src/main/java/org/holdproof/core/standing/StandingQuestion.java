package org.holdproof.core.standing;

import java.util.List;
import java.util.Optional;
import org.holdproof.core.verdict.Check;

/**
 * One question of a cook under way, and how it stands now.
 *
 * @param key tells it from the other questions of the batch; stays the same as the log grows
 * @param title the question in a few words
 * @param check the check that puts it; empty where only a finished batch is checked for it
 * @param words why it stands so, or what is still needed, in a few sentences
 * @param clocks the limits running out on it
 */
public record StandingQuestion(
        String key, String title, State state, Optional<Check> check, String words, List<RunningClock> clocks) {

    public StandingQuestion {
        clocks = List.copyOf(clocks);
    }

    /** How a question stands. */
    public enum State {
        /** Met, and nothing that comes can undo it. */
        PROVEN,
        /** Met so far; it must be kept on. */
        KEPT,
        /** Not met yet; it still can be. */
        NEEDED,
        /** Neither proven nor lost, and later readings will not prove it. */
        UNPROVABLE,
        /** A limit has run out or was broken. */
        LOST
    }
}
