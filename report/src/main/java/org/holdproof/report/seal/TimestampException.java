package org.holdproof.report.seal;

/** A timestamp that was not given, or that does not hold. The message is for the person at the desk. */
public final class TimestampException extends Exception {
    public TimestampException(String message) {
        super(message);
    }
}
