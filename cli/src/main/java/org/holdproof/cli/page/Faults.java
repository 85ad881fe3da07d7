package org.holdproof.cli.page;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.util.Locale;

/** What went wrong, in words. */
final class Faults {
    private Faults() {}

    /** A failure of the disk or the system, without the names of Java's types. */
    static String words(IOException failed) {
        if (failed instanceof AccessDeniedException denied) {
            return denied.getFile() + " may not be used by you.";
        }
        if (failed instanceof NoSuchFileException missing) {
            return missing.getFile() + " is not there.";
        }
        if (failed instanceof FileSystemException system && system.getReason() != null) {
            return system.getFile() + ": " + system.getReason() + ".";
        }
        String message = failed.getMessage();
        return message == null || message.isBlank() ? "the system gave no reason." : message + ".";
    }

    /** Whether a failure says that there is no room left. */
    static boolean isDiskFull(IOException failed) {
        String message = String.valueOf(failed.getMessage()).toLowerCase(Locale.ROOT);
        return message.contains("no space left") || message.contains("not enough space") || message.contains("quota");
    }

    /** A fault of the program: what kind, and nothing of where. */
    static Fault internal(Throwable internal) {
        return Fault.badRequest("A fault in Holdproof (" + internal.getClass().getSimpleName()
                + "). Nothing was kept, and no verdict was reached. Please report it, with what you did.");
    }
}
