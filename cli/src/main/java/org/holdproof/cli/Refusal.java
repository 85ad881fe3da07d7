package org.holdproof.cli;

/** Something asked for that is not done, and why. The message is for the person at the desk. */
final class Refusal extends Exception {
    private final int exitCode;

    private Refusal(int exitCode, String message) {
        super(message);
        this.exitCode = exitCode;
    }

    /** The command line asks for something that cannot be done. */
    static Refusal usage(String message) {
        return new Refusal(ExitCode.USAGE, message);
    }

    /** A file cannot be read or makes no sense. */
    static Refusal unreadable(String message) {
        return new Refusal(ExitCode.UNREADABLE, message);
    }

    int exitCode() {
        return exitCode;
    }
}
