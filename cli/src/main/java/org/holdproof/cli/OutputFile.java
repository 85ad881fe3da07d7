package org.holdproof.cli;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Set;

/** A file about to be written: beside its place first, then moved there whole. It is never seen half written. */
final class OutputFile {
    private static final Set<PosixFilePermission> OWNER_ONLY =
            Set.of(PosixFilePermission.OWNER_READ, PosixFilePermission.OWNER_WRITE);

    private final Path path;
    private final boolean ownerOnly;

    private OutputFile(Path path, boolean ownerOnly) {
        this.path = path;
        this.ownerOnly = ownerOnly;
    }

    /**
     * A file that anyone may read whom the folder lets in. One that exists is replaced.
     *
     * @param inputs files it must not be
     * @throws Refusal if it cannot be written there, or is one of the inputs
     */
    static OutputFile at(Path path, List<Path> inputs) throws Refusal {
        checkPlace(path);
        for (Path input : inputs) {
            if (same(path, input)) {
                throw Refusal.usage(
                        path + " is an input or another output of this command; name another file to write to");
            }
        }
        return new OutputFile(path, false);
    }

    /** A new file for its owner alone; one that exists is not touched. */
    static OutputFile secretAt(Path path) throws Refusal {
        checkPlace(path);
        if (Files.exists(path)) {
            throw Refusal.usage(path + " exists already and is not overwritten; name another file with --out");
        }
        return new OutputFile(path, true);
    }

    Path path() {
        return path;
    }

    /** @throws IOException if the disk does not take it; then nothing is left behind */
    void write(byte[] content) throws IOException {
        Path beside = Files.createTempFile(folderOf(path), ".holdproof-", ".part", attributes());
        try {
            try (FileChannel channel = FileChannel.open(beside, StandardOpenOption.WRITE)) {
                ByteBuffer left = ByteBuffer.wrap(content);
                while (left.hasRemaining()) {
                    channel.write(left);
                }
                channel.force(true);
            }
            move(beside);
        } finally {
            Files.deleteIfExists(beside);
        }
    }

    private void move(Path beside) throws IOException {
        if (ownerOnly) {
            Files.move(beside, path);
            return;
        }
        try {
            Files.move(beside, path, StandardCopyOption.ATOMIC_MOVE);
        } catch (AtomicMoveNotSupportedException unsupported) {
            Files.move(beside, path, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    /** A temporary file is its owner's alone; a report is for everyone the folder lets in. */
    private FileAttribute<?>[] attributes() {
        if (!isPosix()) {
            return new FileAttribute<?>[0];
        }
        Set<PosixFilePermission> permissions = ownerOnly ? OWNER_ONLY : PosixFilePermissions.fromString("rw-rw-rw-");
        return new FileAttribute<?>[] {PosixFilePermissions.asFileAttribute(permissions)};
    }

    private static boolean isPosix() {
        return FileSystems.getDefault().supportedFileAttributeViews().contains("posix");
    }

    private static void checkPlace(Path path) throws Refusal {
        if (Files.isDirectory(path)) {
            throw Refusal.usage(path + " is a folder; name a file in it");
        }
        Path folder = folderOf(path);
        if (!Files.isDirectory(folder)) {
            throw Refusal.usage("the folder " + folder + " does not exist; make it first, or name another");
        }
        if (!Files.isWritable(folder)) {
            throw Refusal.usage("nothing can be written in the folder " + folder + "; name another");
        }
        if (Files.exists(path) && !Files.isRegularFile(path)) {
            throw Refusal.usage(path + " is not a regular file; name another");
        }
    }

    private static boolean same(Path one, Path other) throws Refusal {
        if (one.toAbsolutePath().normalize().equals(other.toAbsolutePath().normalize())) {
            return true;
        }
        try {
            return Files.exists(one) && Files.exists(other) && Files.isSameFile(one, other);
        } catch (IOException failed) {
            throw Refusal.usage(ErrorMessages.words(failed));
        }
    }

    private static Path folderOf(Path path) {
        Path folder = path.toAbsolutePath().getParent();
        return folder == null ? path.toAbsolutePath() : folder;
    }
}
