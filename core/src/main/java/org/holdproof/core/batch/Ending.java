package org.holdproof.core.batch;

import java.time.Instant;

/**
 * What became of the food, and when: until then every minute is judged, after it none.
 *
 * @param how what became of it
 * @param at when; for food still in store, until when it is judged
 */
public record Ending(How how, Instant at) {

    /** The ways a batch can end. */
    public enum How {
        SERVED("served"),
        DISCARDED("discarded"),
        SOLD_ON("sold on"),
        IN_STORE("in store");

        private final String title;

        How(String title) {
            this.title = title;
        }

        /** As it is written in a batch record and printed. */
        public String title() {
            return title;
        }
    }
}
