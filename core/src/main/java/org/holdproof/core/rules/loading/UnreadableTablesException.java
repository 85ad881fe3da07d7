package org.holdproof.core.rules.loading;

/** Rule tables that cannot be used. The message is for the person who keeps them. */
public final class UnreadableTablesException extends Exception {
    private final String file;
    private final long line;
    private final String column;
    private final String found;
    private final String expected;
    private final String remedy;

    /**
     * @param file the file's path inside the tables' folder
     * @param line the line, counted from 1, or 0 where it is the whole file
     * @param column the column's name, or for JSON the pointer (RFC 6901) of the value; empty where it is the whole line
     * @param found what stands there
     * @param expected what was expected
     * @param remedy what to do about it
     */
    public UnreadableTablesException(
            String file, long line, String column, String found, String expected, String remedy) {
        super(file + (line > 0 ? ", line " + line : "") + place(column) + ": found " + found + "; expected " + expected
                + ". " + remedy);
        this.file = file;
        this.line = line;
        this.column = column;
        this.found = found;
        this.expected = expected;
        this.remedy = remedy;
    }

    private static String place(String column) {
        if (column.isEmpty()) {
            return "";
        }
        return (column.startsWith("/") ? ", at " : ", column ") + column;
    }

    public String file() {
        return file;
    }

    public long line() {
        return line;
    }

    public String column() {
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
