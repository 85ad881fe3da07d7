package org.holdproof.report.seal;

/** A PDF that is not built the way a report is. The message says where and how. */
final class MalformedPdfException extends Exception {
    MalformedPdfException(long offset, String problem) {
        super("at byte " + offset + ": " + problem);
    }
}
