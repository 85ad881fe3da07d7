package org.holdproof.core.batch;

/** A batch record that cannot be read. The message is for the person at the desk. */
public final class UnreadableBatchException extends Exception {
    private final String file;
    private final int line;
    private final int column;
    private final String pointer;
    private final String found;
    private final String expected;
    private final String remedy;

    /**
     * A fault whose line is not known.
     *
     * @param file the file's name as the user gave it
     * @param pointer the JSON pointer (RFC 6901) of the value, or an empty text for the whole file
     * @param found what stands there
     * @param expected what was expected
     * @param remedy what to do about it
     */
    public UnreadableBatchException(String file, String pointer, String found, String expected, String remedy) {
        this(file, 0, 0, pointer, found, expected, remedy);
    }

    /**
     * @param file the file's name as the user gave it
     * @param line the line, counted from 1, or 0 where it is the whole file
     * @param column the character of the line, counted from 1, or 0 where it is the whole file
     * @param pointer the JSON pointer (RFC 6901) of the value, or an empty text for the whole file
     * @param found what stands there
     * @param expected what was expected
     * @param remedy what to do about it
     */
    public UnreadableBatchException(
            String file, int line, int column, String pointer, String found, String expected, String remedy) {
        super(printable(file + (line > 0 ? ", line " + line + ", column " + column : "")
                + (pointer.isEmpty() ? "" : ", at " + pointer) + ": found " + found + "; expected " + expected + ". "
                + remedy));
        this.file = file;
        this.line = line;
        this.column = column;
        this.pointer = pointer;
        this.found = found;
        this.expected = expected;
        this.remedy = remedy;
    }

    public String file() {
        return file;
    }

    /** The line, counted from 1, or 0 where it is the whole file. */
    public int line() {
        return line;
    }

    /** The character of the line, counted from 1, or 0 where it is the whole file. */
    public int column() {
        return column;
    }

    public String pointer() {
        return pointer;
    }

    public String found() {
        return found;
    }

    public String expected() {
        return expected;
    }

    public String remedy() {
        return remedy;
    }

    /** What the file says may hold control characters; on a terminal they would be obeyed. */
    private static String printable(String message) {
        return message.replaceAll("\\p{Cc}", "\uFFFD");
    }
}
