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
        READ("read", ""),
        /** Worked out from figures that were read. */
        DERIVED("derived", ""),
        /** Seen only in another text that quotes the document; every output that uses it says so. */
        QUOTED("quoted", "quoted in another text, unconfirmed"),
        /** Recalled, unconfirmed; every output that uses it says so. */
        MEMORY("memory", "from memory, unconfirmed"),
        /** Where the documents are silent and an answer is needed: this program's own, and printed as that. */
        CONVENTION("convention", "convention of this program, no published figure"),
        /** Said or weighed by cooks; no document stands behind it, so that no rule may rest on it. */
        COMMON_PRACTICE("common practice, no source", "common practice, no source");

        private final String title;
        private final String caveat;

        How(String title, String caveat) {
            this.title = title;
            this.caveat = caveat;
        }

        public String title() {
            return title;
        }

        /** What stands beside every figure obtained so; empty where it was read, or follows from what was. */
        public String caveat() {
            return caveat;
        }

        /** Whether nobody here saw the figure in its own document. */
        public boolean isUnconfirmed() {
            return this == QUOTED || this == MEMORY;
        }
    }
}
