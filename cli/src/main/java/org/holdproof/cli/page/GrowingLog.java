package org.holdproof.cli.page;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/** The log named when the page was started, as far as its last whole line is written. */
record GrowingLog(Shelf shelf, Optional<Path> log) {
    private static final int LARGEST = 256 << 20;

    ObjectNode json() throws Fault, IOException {
        Path file = log.orElseThrow(() -> Fault.missing("No log was named when the page was started."));
        if (Files.size(file) > LARGEST) {
            throw Fault.tooLarge("A log to be followed has at most " + (LARGEST >> 20) + " MiB.");
        }
        byte[] bytes = Files.readAllBytes(file);
        int whole = wholeLines(bytes);
        Shelf.Item item = shelf.take(new ByteArrayInputStream(bytes, 0, whole), whole);
        return Asked.MAPPER
                .createObjectNode()
                .put("file", item.id())
                .put("name", String.valueOf(file.getFileName()))
                .put("kind", "log");
    }

    /** Of a figure cut short nobody can tell that it was: what follows the last line's end is left out. */
    private static int wholeLines(byte[] bytes) {
        boolean wide = bytes.length > 1
                && ((bytes[0] == (byte) 0xFF && bytes[1] == (byte) 0xFE)
                        || (bytes[0] == (byte) 0xFE && bytes[1] == (byte) 0xFF));
        int low = wide && bytes[0] == (byte) 0xFF ? 0 : wide ? 1 : 0;
        int step = wide ? 2 : 1;
        for (int at = bytes.length / step * step - step; at >= 0; at -= step) {
            boolean end = bytes[at + low] == '\n' || bytes[at + low] == '\r';
            if (end && (!wide || bytes[at + 1 - low] == 0)) {
                return at + step;
            }
        }
        return 0;
    }
}
