package org.holdproof.core.batch;

/** A batch record that cannot be read. The message is for the person at the desk. */
public final class UnreadableBatchException extends Exception {
    private final String file;
    private final String pointer;

    /**
     * @param file the file's name as the user gave it
     * @param pointer the JSON pointer (RFC 6901) of the value, or an empty text for the whole file
     * @param found what stands there
     * @param expected what was expected
     * @param remedy what to do about it
     */
    public UnreadableBatchException(String file, String pointer, String found, String expected, String remedy) {
        super(file + (pointer.isEmpty() ? "" : ", at " + pointer) + ": found " + found + "; expected " + expected + ". "
                + remedy);
        this.file = file;
        this.pointer = pointer;
    }

    public String file() {
        return file;
    }

    public String pointer() {
        return pointer;
    }
}
