package org.holdproof.core.course;

import java.util.OptionalDouble;
import org.holdproof.core.batch.Stage;

/**
 * A stage as the curves suggest it, for a person to confirm.
 *
 * @param kind what it looks like
 * @param fromMillis the last reading before the change that begins it, or the first of the log
 * @param toMillis the last reading before the change that ends it, or the last of the log; for a moment the same as from
 * @param setPointCelsius what it seems to have been set to, in °C, to half a degree; empty where no medium was logged
 * @param sureness how much speaks for it
 * @param why what speaks for it, in a sentence
 */
public record StageProposal(
        Stage.Kind kind,
        long fromMillis,
        long toMillis,
        OptionalDouble setPointCelsius,
        Sureness sureness,
        String why) {

    /** How much speaks for a proposal. */
    public enum Sureness {
        /** The medium or the core can hardly be read otherwise. */
        CLEAR("clear"),
        /** It could be something else. */
        LIKELY("likely"),
        /** Little more than a guess. */
        DOUBTFUL("doubtful");

        private final String title;

        Sureness(String title) {
            this.title = title;
        }

        public String title() {
            return title;
        }
    }
}
