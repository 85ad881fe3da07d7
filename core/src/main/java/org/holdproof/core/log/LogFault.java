package org.holdproof.core.log;

/**
 * Something wrong with a log that does not stop it from being read.
 *
 * @param kind what is wrong
 * @param channel the channel's name, or empty where it is the clock or the whole row
 * @param firstLine the first line of the file it concerns, counted from 1
 * @param lastLine the last line of the file it concerns
 * @param detail what was found and what was made of it, in a sentence without the line numbers
 */
public record LogFault(Kind kind, String channel, long firstLine, long lastLine, String detail) {

    /** What can be wrong with a log that can be read. */
    public enum Kind {
        /** The same instant and the same readings again: the repeat is left out. */
        REPEATED_CLOCK("repeated time"),
        /** The same instant with other readings: nobody can say which holds, so the reading is missing. */
        CONFLICTING_DUPLICATE("two readings at one time"),
        /** A row older than one before it: left out. */
        BACKWARD_CLOCK("clock ran backward"),
        /** The file runs from the newest row to the oldest: read from its end. */
        NEWEST_FIRST("newest row first"),
        /** The local clock was set back or forward an hour inside the log. */
        CLOCK_CHANGE("daylight-saving change"),
        /** A cell without a figure: blank, dashes, a word. */
        MISSING_READING("missing reading"),
        /** A figure no probe in food can have read; taken as missing. */
        IMPOSSIBLE_READING("impossible reading"),
        /** A rise or fall faster than food or a bath allows; kept. */
        JUMP("jump"),
        /** A reading that did not move while it should have; kept. */
        STUCK("stuck sensor"),
        /** A spell without readings. */
        GAP("gap"),
        /** Rows that end before the last column, or hold no time. */
        SHORT_ROW("incomplete row");

        private final String title;

        Kind(String title) {
            this.title = title;
        }

        /** What a person would call it. */
        public String title() {
            return title;
        }
    }
}
