package org.holdproof.core.rules;

/**
 * A published document.
 *
 * @param id the id rules refer to it by
 * @param how how its figures came into the tables
 */
public record Source(
        String id, String title, String issuer, String year, String edition, String section, String url, How how) {

    /** How a figure was obtained. */
    public enum How {
        /** Seen in a copy of the document. */
        READ("read"),
        /** Worked out from figures that were read. */
        DERIVED("derived"),
        /** Recalled, unconfirmed; every output that uses it says so. */
        MEMORY("memory"),
        /** Said or weighed by cooks; no document stands behind it, so that no rule may rest on it. */
        COMMON_PRACTICE("common practice, no source");

        private final String title;

        How(String title) {
            this.title = title;
        }

        public String title() {
            return title;
        }
    }
}
