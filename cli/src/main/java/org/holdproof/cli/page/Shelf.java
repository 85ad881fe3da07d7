package org.holdproof.cli.page;

import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.regex.Pattern;

/**
 * The files handed in, in a temporary folder that only their owner can enter, each under the SHA-256 of its bytes. A
 * file of which not every byte arrived is not there. Closing the shelf removes it.
 */
final class Shelf implements Closeable {
    private static final Pattern ID = Pattern.compile("[0-9a-f]{64}");
    private static final int BUFFER = 1 << 16;

    private final Path folder;
    private final long largest;
    private final Thread sweeper;

    private Shelf(Path folder, long largest) {
        this.folder = folder;
        this.largest = largest;
        sweeper = new Thread(this::sweep, "sweep the shelf");
        Runtime.getRuntime().addShutdownHook(sweeper);
    }

    static Shelf open(long largest) throws IOException {
        return new Shelf(Files.createTempDirectory("holdproof-page-"), largest);
    }

    /** A file on the shelf. */
    record Item(String id, long bytes) {}

    /**
     * Takes a file in.
     *
     * @param declared how many bytes the sender says there are; negative: it does not say
     * @throws Fault if it is too large, or other than so many bytes arrive
     */
    Item take(InputStream bytes, long declared) throws Fault, IOException {
        if (declared > largest) {
            throw tooLarge();
        }
        Path part = Files.createTempFile(folder, "", ".part");
        try {
            MessageDigest digest = sha256();
            long count = 0;
            try (OutputStream out = Files.newOutputStream(part)) {
                byte[] buffer = new byte[BUFFER];
                for (int read = bytes.read(buffer); read >= 0; read = bytes.read(buffer)) {
                    count += read;
                    if (count > largest) {
                        throw tooLarge();
                    }
                    digest.update(buffer, 0, read);
                    out.write(buffer, 0, read);
                }
            } catch (IOException failed) {
                if (Faults.isDiskFull(failed)) {
                    throw Fault.diskFull();
                }
                throw failed;
            }
            if (declared >= 0 && count != declared) {
                throw Fault.badRequest("The file was cut off on its way. Hand it in again.");
            }
            String id = HexFormat.of().formatHex(digest.digest());
            Files.move(part, folder.resolve(id), StandardCopyOption.REPLACE_EXISTING);
            return new Item(id, count);
        } finally {
            Files.deleteIfExists(part);
        }
    }

    /**
     * Where a file lies.
     *
     * @throws Fault if there is none of this id
     */
    Path find(String id) throws Fault {
        if (!ID.matcher(id).matches() || !Files.isRegularFile(folder.resolve(id))) {
            throw Fault.missing("This file is no longer here: Holdproof was started anew since. Hand it in again.");
        }
        return folder.resolve(id);
    }

    private Fault tooLarge() {
        return Fault.tooLarge("This file is larger than " + (largest >> 20) + " MiB, the most that is taken.");
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java has SHA-256", impossible);
        }
    }

    @Override
    public void close() {
        sweep();
        try {
            Runtime.getRuntime().removeShutdownHook(sweeper);
        } catch (IllegalStateException ending) {
            // the hook runs already
            return;
        }
    }

    private void sweep() {
        try (DirectoryStream<Path> files = Files.newDirectoryStream(folder)) {
            for (Path file : files) {
                Files.deleteIfExists(file);
            }
            Files.deleteIfExists(folder);
        } catch (IOException failed) {
            // the system clears its temporary folder in its own time
            return;
        }
    }
}
