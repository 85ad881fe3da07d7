package org.holdproof.core.log.reading;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.holdproof.core.input.Place;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.wording.Printable;

/** Why a log cannot be read, on its way up to {@link LogReader}, which knows the file's name. */
final class Refusal extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private static final int LONGEST_QUOTE = 60;

    private final Optional<Question> question;
    private final long line;
    private final int column;
    private final String found;
    private final String expected;
    private final String remedy;

    /** What a file may leave open and somebody else can settle. */
    enum Question {
        UNIT,
        DATES,
        ZONE,
        START
    }

    /**
     * @param line the line, counted from 1, or 0 where it is the whole file
     * @param column the column of the table, counted from 1, or 0 where it is the whole line
     */
    Refusal(long line, int column, String found, String expected, String remedy) {
        this(Optional.empty(), line, column, found, expected, remedy);
    }

    private Refusal(Optional<Question> question, long line, int column, String found, String expected, String remedy) {
        super(found, null, false, false);
        this.question = question;
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

    /** A refusal that an answer would lift. */
    static Refusal question(Question question, long line, int column, String found, String expected, String remedy) {
        return new Refusal(Optional.of(question), line, column, found, expected, remedy);
    }

    /** What answer would lift it. */
    Optional<Question> asks() {
        return question;
    }

    /** The same refusal in a file that has so many lines above the text that was read. */
    Refusal below(long linesBefore) {
        return new Refusal(question, line > 0 ? line + linesBefore : 0, column, found, expected, remedy);
    }

    /** Several refusals in one. */
    static Refusal all(List<Refusal> refusals) {
        Refusal first = refusals.get(0);
        return new Refusal(
                Optional.empty(),
                first.line,
                refusals.size() == 1 ? first.column : 0,
                refusals.stream().map(refusal -> refusal.found).collect(Collectors.joining("; and ")),
                refusals.stream().map(refusal -> refusal.expected).collect(Collectors.joining("; and ")),
                refusals.stream().map(refusal -> refusal.remedy).collect(Collectors.joining(" ")));
    }

    int column() {
        return column;
    }

    UnreadableInputException in(String file) {
        return Place.file(file).line(line).column(column).fault(found, expected, remedy);
    }
}
