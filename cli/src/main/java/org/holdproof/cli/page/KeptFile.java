package org.holdproof.cli.page;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;

/** A file in the kitchen folder: there with every byte, or not there. */
final class KeptFile {
    private KeptFile() {}

    /** Writes a file that must not be there yet. */
    static void writeNew(Path file, byte[] content) throws Fault, IOException {
        if (Files.exists(file)) {
            throw new FileAlreadyExistsException(file.toString(), null, "it is there already and is never rewritten");
        }
        write(file, content);
    }

    /** Writes one of the kitchen's own lists anew. */
    static void write(Path file, byte[] content) throws Fault, IOException {
        Path folder = file.getParent();
        if (folder == null) {
            throw new IOException(file + " lies in no folder");
        }
        try {
            Files.createDirectories(folder);
            Path beside = Files.createTempFile(folder, ".holdproof-", ".part");
            try {
                fill(beside, content);
                move(beside, file);
            } finally {
                Files.deleteIfExists(beside);
            }
        } catch (IOException failed) {
            if (Faults.isDiskFull(failed)) {
                throw Fault.diskFull();
            }
            throw failed;
        }
    }

    /** Whether a file is absent, or holds just these bytes. */
    static boolean absentOrSame(Path file, byte[] content) throws IOException {
        return !Files.exists(file) || Arrays.equals(Files.readAllBytes(file), content);
    }

    private static void fill(Path file, byte[] content) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
            ByteBuffer left = ByteBuffer.wrap(content);
            while (left.hasRemaining()) {
                channel.write(left);
            }
            channel.force(true);
        }
    }

    private static void move(Path from, Path to) throws IOException {
        try {
            Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
        } catch (AtomicMoveNotSupportedException unsupported) {
            Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
        }
    }
}
