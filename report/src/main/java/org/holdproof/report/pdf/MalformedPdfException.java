package org.holdproof.report.pdf;

/** A PDF that is not built the way a report is. The message says where and how. */
public final class MalformedPdfException extends Exception {
    public MalformedPdfException(long offset, String problem) {
        super("at byte " + offset + ": " + problem);
    }
}
