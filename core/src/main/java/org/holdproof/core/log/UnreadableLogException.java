package org.holdproof.core.log;

/** A log that cannot be read, or that leaves open what must not be guessed. The message is for the person at the desk. */
public final class UnreadableLogException extends Exception {
    private final String file;
    private final long line;
    private final int column;
    private final String found;
    private final String expected;
    private final String remedy;

    /**
     * @param file the file's name as the user gave it
     * @param line the line, counted from 1, or 0 where it is the whole file
     * @param column the column of the table (not the character), counted from 1, or 0 where it is the whole line
     * @param found what stands there
     * @param expected what was expected
     * @param remedy what to do about it
     */
    public UnreadableLogException(String file, long line, int column, String found, String expected, String remedy) {
        super(file + (line > 0 ? ", line " + line : "") + (column > 0 ? ", column " + column : "") + ": found " + found
                + "; expected " + expected + ". " + remedy);
        this.file = file;
        this.line = line;
        this.column = column;
        this.found = found;
        this.expected = expected;
        this.remedy = remedy;
    }

    public String file() {
        return file;
    }

    public long line() {
        return line;
    }

    public int column() {
        return column;
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
}
