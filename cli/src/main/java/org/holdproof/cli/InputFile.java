package org.holdproof.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/** Files handed in. */
final class InputFile {
    private InputFile() {}

    /**
     * A file's bytes, no more than so many.
     *
     * @throws Refusal if it is missing, a folder, or cannot be read
     */
    static byte[] bytes(Path file, int most) throws Refusal {
        checkReadable(file);
        try (InputStream in = Files.newInputStream(file)) {
            return in.readNBytes(most);
        } catch (IOException failed) {
            throw Refusal.unreadable(Complaints.words(failed));
        }
    }

    /** @throws Refusal if it is missing, a folder, or may not be read */
    static void checkReadable(Path file) throws Refusal {
        if (Files.isDirectory(file)) {
            throw Refusal.unreadable(file + ": a folder; a file was expected");
        }
        if (!Files.exists(file)) {
            throw Refusal.unreadable(file + ": no such file");
        }
        if (!Files.isReadable(file)) {
            throw Refusal.unreadable(file + ": it may not be read by you");
        }
    }

    /** The file's name without its folder. */
    static String name(Path file) {
        Path name = file.getFileName();
        return name == null ? file.toString() : name.toString();
    }
}
