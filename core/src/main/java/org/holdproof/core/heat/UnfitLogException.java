package org.holdproof.core.heat;

/** A log that cannot tell how fast heat went into the piece; the message says what it lacks. */
public final class UnfitLogException extends Exception {
    public UnfitLogException(String message) {
        super(message);
    }
}
