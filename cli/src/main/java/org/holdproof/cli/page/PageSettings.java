package org.holdproof.cli.page;

import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * How a page is served.
 *
 * @param kitchen the kitchen folder; made only when something is kept
 * @param log a log to open at once, which may still be growing
 * @param port the port; empty: any that is free
 * @param largestFile the most bytes a file handed in may have
 */
public record PageSettings(Path kitchen, Optional<Path> log, OptionalInt port, long largestFile) {
    /** A year of readings every second in twenty columns is about this large. */
    public static final long LARGEST_FILE = 4L << 30;

    /** The usual page. */
    public static PageSettings of(Path kitchen, Optional<Path> log) {
        return new PageSettings(kitchen, log, OptionalInt.empty(), LARGEST_FILE);
    }
}
