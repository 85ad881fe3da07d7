package org.holdproof.cli.terminal;

import java.io.PrintWriter;

/** Says on one line of {@code err} what is being done, and wipes it when it is done; silent where nobody watches. */
public final class Progress implements AutoCloseable {
    private final PrintWriter err;
    private final boolean watched;

    public Progress(Terminal terminal) {
        err = terminal.err();
        watched = terminal.progress();
    }

    /** Replaces what is shown. */
    public void now(String doing) {
        if (watched) {
            err.print(ScreenCode.WIPE_LINE + doing);
            err.flush();
        }
    }

    /** Wipes the line, for something else to be printed. */
    public void wipe() {
        if (watched) {
            err.print(ScreenCode.WIPE_LINE);
            err.flush();
        }
    }

    @Override
    public void close() {
        wipe();
    }
}
