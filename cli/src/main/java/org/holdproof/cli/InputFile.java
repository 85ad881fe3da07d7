package org.holdproof.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.holdproof.core.input.SourceFile;

/** Files handed in. */
final class InputFile {
    private static final int LARGEST_LOG = Integer.MAX_VALUE - 8;
    private static final int LARGEST_RECORD = 1 << 20;

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
            throw Refusal.unreadable(ErrorMessages.words(failed));
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

    /** The names of files, for a line that says what is being read. */
    static String names(List<Path> files) {
        return String.join(", ", files.stream().map(InputFile::name).toList());
    }

    /**
     * Logs, read once.
     *
     * @throws Refusal if one is missing, a folder, too large, or cannot be read
     */
    static List<SourceFile> logs(List<Path> files) throws Refusal {
        List<SourceFile> logs = new ArrayList<>();
        for (Path file : files) {
            logs.add(SourceFile.of(name(file), bytes(file, LARGEST_LOG)));
        }
        return logs;
    }

    /**
     * A batch record.
     *
     * @throws Refusal if it is missing, a folder, or cannot be read
     */
    static SourceFile record(Path file) throws Refusal {
        return SourceFile.of(name(file), bytes(file, LARGEST_RECORD + 1));
    }
}
