package org.holdproof.core.log.reading;

import org.holdproof.core.input.Place;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.wording.Printable;

/** Why a log cannot be read, on its way up to {@link LogReader}, which knows the file's name. */
final class Refusal extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private static final int LONGEST_QUOTE = 60;

    private final long line;
    private final int column;
    private final String found;
    private final String expected;
    private final String remedy;

    /**
     * @param line the line, counted from 1, or 0 where it is the whole file
     * @param column the column of the table, counted from 1, or 0 where it is the whole line
     */
    Refusal(long line, int column, String found, String expected, String remedy) {
        super(found, null, false, false);
        this.line = line;
        this.column = column;
        this.found = found;
        this.expected = expected;
        this.remedy = remedy;
    }

    /** Text of the file in quotation marks, shortened, with unprintable characters shown. */
    static String quote(CharSequence text) {
        StringBuilder quoted = new StringBuilder("\"");
        int shown = Math.min(text.length(), LONGEST_QUOTE);
        for (int i = 0; i < shown; i++) {
            char c = text.charAt(i);
            if (c == '\n' || c == '\r') {
                quoted.append("\u23ce");
            } else if (!Printable.is(c)) {
                quoted.append('\ufffd');
            } else {
                quoted.append(c);
            }
        }
        return quoted.append(shown < text.length() ? "…\"" : "\"").toString();
    }

    int column() {
        return column;
    }

    UnreadableInputException in(String file) {
        return Place.file(file).line(line).column(column).fault(found, expected, remedy);
    }
}
