package org.holdproof.core.log.reading;

import java.util.Locale;
import java.util.Set;

/** Reads one temperature cell: a figure, perhaps with its unit, or the lack of one. Used again for each cell. */
final class TemperatureCell {
    /** What a cell holds. */
    enum Content {
        FIGURE,
        /** No figure: blank, dashes, a word, an error code. */
        MISSING,
        /** It starts like a figure but is none. */
        GARBLED
    }

    /** The unit a cell or column states. */
    static final int NO_UNIT = 0;

    static final int CELSIUS = 1;
    static final int FAHRENHEIT = 2;

    private static final Set<String> MISSING_WORDS = Set.of(
            "nan",
            "na",
            "n/a",
            "#n/a",
            "null",
            "nil",
            "none",
            "void",
            "inf",
            "infinity",
            "open",
            "opn",
            "ol",
            "o.l",
            "oor",
            "short",
            "shrt",
            "err",
            "error",
            "fault",
            "fail",
            "failed",
            "hi",
            "lo",
            "high",
            "low",
            "over",
            "under",
            "overflow",
            "overrange",
            "over range",
            "underrange",
            "out of range",
            "invalid",
            "bad",
            "missing",
            "lost",
            "no data",
            "no probe",
            "no sensor",
            "no signal",
            "not connected",
            "disconnected",
            "disc",
            "unplugged",
            "off",
            "unused",
            "undefined",
            "-nan",
            "-inf",
            "+inf",
            "no reading",
            "sensor error");

    private final Figure figure = new Figure();
    private int unit;

    /** The figure last read, in the unit the cell or its column states; may be infinite. */
    double value() {
        return figure.value();
    }

    /** How many digits stood behind the decimal mark of the figure last read. */
    int decimals() {
        return figure.decimals();
    }

    /** The decimal mark of the figure last read, or 0. */
    char mark() {
        return figure.mark();
    }

    /** The unit stated in the cell last read: {@link #NO_UNIT}, {@link #CELSIUS} or {@link #FAHRENHEIT}. */
    int unit() {
        return unit;
    }

    /** Reads a cell without blanks at its ends. */
    Content read(char[] text, int from, int end) {
        unit = NO_UNIT;
        if (from == end) {
            return Content.MISSING;
        }
        int behind = figure.read(text, from, end);
        if (behind == end) {
            return Content.FIGURE;
        }
        if (behind < 0) {
            return Content.MISSING;
        }
        if (text[behind] == '#') {
            return Content.MISSING;
        }
        return readUnit(text, behind, end) ? Content.FIGURE : Content.GARBLED;
    }

    private boolean readUnit(char[] text, int from, int end) {
        int at = skipBlanks(text, from, end);
        char sign = text[at];
        if (sign == '\u2103' || sign == '\u2109') {
            unit = sign == '\u2103' ? CELSIUS : FAHRENHEIT;
            return at + 1 == end;
        }
        boolean degrees = isDegreeSign(sign);
        if (degrees) {
            at = skipBlanks(text, at + 1, end);
            if (at == end) {
                return true;
            }
        }
        if (at + 1 == end) {
            char letter = text[at];
            unit = letter == 'C' || letter == 'c' ? CELSIUS : letter == 'F' || letter == 'f' ? FAHRENHEIT : NO_UNIT;
            return unit != NO_UNIT;
        }
        return readUnitWord(new String(text, at, end - at).toLowerCase(Locale.ROOT));
    }

    private boolean readUnitWord(String word) {
        switch (word) {
            case "celsius", "degc", "deg c", "deg. c", "degrees c", "degrees celsius" -> unit = CELSIUS;
            case "fahrenheit", "degf", "deg f", "deg. f", "degrees f", "degrees fahrenheit" -> unit = FAHRENHEIT;
            case "deg", "degrees" -> unit = NO_UNIT;
            default -> {
                return false;
            }
        }
        return true;
    }

    /** Whether a word is one by which loggers say that there is no reading. */
    static boolean isMissingWord(String cell) {
        String word = cell.strip().toLowerCase(Locale.ROOT);
        boolean dashes = true;
        for (int i = 0; i < word.length(); i++) {
            dashes &= "-\u2013\u2014\u2212_.,=*?/~<> ".indexOf(word.charAt(i)) >= 0;
        }
        return dashes || MISSING_WORDS.contains(word) || word.indexOf('#') >= 0;
    }

    static boolean isDegreeSign(char c) {
        return c == '\u00b0' || c == '\u00ba' || c == '\u02da';
    }

    static boolean isBlank(char c) {
        return c <= ' ' || (c >= '\u00a0' && (c == '\u00a0' || c == '\u202f' || c == '\u2007' || c == '\ufeff'));
    }

    private static int skipBlanks(char[] text, int from, int end) {
        int at = from;
        while (at < end - 1 && isBlank(text[at])) {
            at++;
        }
        return at;
    }
}
