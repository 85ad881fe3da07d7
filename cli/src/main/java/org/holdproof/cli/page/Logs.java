package org.holdproof.cli.page;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.log.LogSettings;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.log.reading.LogReader;

/** The logs on the shelf as read; the few looked at last are kept, so that an edge can be dragged. */
final class Logs {
    /** A row takes about 40 bytes. */
    private static final long MOST_ROWS = 4_000_000;

    private final Shelf shelf;
    private final Map<Key, ProbeLog> read = new LinkedHashMap<>(16, 0.75f, true);

    private record Key(String file, String name, LogSettings settings) {}

    Logs(Shelf shelf) {
        this.shelf = shelf;
    }

    /**
     * A log.
     *
     * @throws UnreadableInputException if it cannot be read, or leaves something open that the settings do not settle
     */
    ProbeLog read(String file, String name, LogSettings settings) throws Fault, IOException, UnreadableInputException {
        Path path = shelf.find(file);
        Key key = new Key(file, name, settings);
        synchronized (read) {
            ProbeLog known = read.get(key);
            if (known != null) {
                return known;
            }
        }
        ProbeLog log;
        try (InputStream in = new BufferedInputStream(Files.newInputStream(path))) {
            log = LogReader.read(name, in, settings);
        }
        synchronized (read) {
            read.put(key, log);
            long rows = read.values().stream().mapToLong(ProbeLog::rows).sum();
            var oldest = read.entrySet().iterator();
            while (rows > MOST_ROWS && read.size() > 1 && oldest.hasNext()) {
                rows -= oldest.next().getValue().rows();
                oldest.remove();
            }
        }
        return log;
    }

    Path file(String id) throws Fault {
        return shelf.find(id);
    }
}
