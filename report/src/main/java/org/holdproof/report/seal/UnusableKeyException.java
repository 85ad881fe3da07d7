package org.holdproof.report.seal;

import java.nio.file.Path;

/** A key file that cannot be used or made. The message is for the person at the desk. */
public final class UnusableKeyException extends Exception {
    private final Path file;

    /**
     * @param found what is wrong
     * @param remedy what to do about it
     */
    UnusableKeyException(Path file, String found, String remedy) {
        super(file + ": " + found + ". " + remedy);
        this.file = file;
    }

    public Path file() {
        return file;
    }
}
