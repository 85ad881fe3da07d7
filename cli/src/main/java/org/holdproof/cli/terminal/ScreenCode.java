package org.holdproof.cli.terminal;

import java.util.Locale;
import java.util.Optional;

/**
 * What the program itself tells a terminal besides text. Inside the program a code is written with a key made anew for
 * each run, so that no text from a file can pass for one; {@link PrintableWriter} turns it into what terminals know
 * (ECMA-48).
 */
public enum ScreenCode {
    GREEN("\u001b[1;32m"),
    RED("\u001b[1;31m"),
    AMBER("\u001b[1;33m"),
    PLAIN("\u001b[0m"),
    WIPE_LINE("\r\u001b[K"),
    CLEAR_SCREEN("\u001b[H\u001b[2J");

    private static final String KEY = "\u001b" + newKey();

    private final String sent;

    ScreenCode(String sent) {
        this.sent = sent;
    }

    /** The code as it stands in the program's own texts. */
    @Override
    @SuppressWarnings("EnumOrdinal") // a letter of its own for each is all that is asked
    public String toString() {
        return KEY + (char) ('a' + ordinal());
    }

    /** What the terminal is sent. */
    String sent() {
        return sent;
    }

    /** How many characters a code takes in the program's own texts. */
    static int length() {
        return KEY.length() + 1;
    }

    /** The code that stands in a text at a place. */
    static Optional<ScreenCode> at(String text, int place) {
        if (!text.startsWith(KEY, place) || place + length() > text.length()) {
            return Optional.empty();
        }
        int which = text.charAt(place + KEY.length()) - 'a';
        return which >= 0 && which < values().length ? Optional.of(values()[which]) : Optional.empty();
    }

    /** A file was written before this run began, so it cannot hold what the clock says now. */
    private static String newKey() {
        return String.format(Locale.ROOT, "%016x", System.nanoTime() * 0x9E3779B97F4A7C15L);
    }
}
