package org.holdproof.cli;

import org.holdproof.core.verdict.Verdict;

/** What the process ends with. The figures from 64 up are those of the BSD {@code sysexits}. */
final class ExitCode {
    static final int MET = 0;
    static final int PLANNED = 0;
    static final int NOT_MET = 1;
    /** {@code plan}: the cook as asked for has no safe plan. */
    static final int NO_PLAN = 1;

    static final int NOT_PROVEN = 2;
    /** The command line asks for something that cannot be done. */
    static final int USAGE = 64;
    /** A log, a batch record, a rule folder, a key or a report that cannot be read. */
    static final int UNREADABLE = 65;
    /** A fault of the program itself, or of the disk under it. */
    static final int INTERNAL = 70;
    /** The launcher takes this off again: a Java that could not start ends with 1, and 1 is a verdict. */
    static final int LAUNCHED = 100;

    private ExitCode() {}

    static int of(Verdict verdict) {
        return switch (verdict) {
            case MET -> MET;
            case NOT_MET -> NOT_MET;
            case NOT_PROVEN -> NOT_PROVEN;
        };
    }
}
