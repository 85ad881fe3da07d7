package org.holdproof.core.log.reading;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.Reader;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A log's bytes, readable from any line on. Lines end with a line feed, or with a carriage return where there is none. */
final class LogBytes {
    private static final int AHEAD = 12;

    private final byte[] bytes;
    private final char lineEnd;
    private Optional<Scout> scout = Optional.empty();

    LogBytes(byte[] bytes) {
        this.bytes = bytes;
        boolean feeds = false;
        for (int i = 0; i < bytes.length && !feeds; i++) {
            feeds = bytes[i] == '\n';
        }
        this.lineEnd = feeds ? '\n' : '\r';
    }

    /** The text from the start of a line, counted from 1. */
    LogText from(long line) throws IOException {
        LogText text = new LogText(new ByteArrayInputStream(bytes));
        skip(text, line);
        return text;
    }

    /** A line and a few behind it; lines must be asked for in their order. */
    List<String> linesAt(long line) throws IOException {
        if (scout.isEmpty()) {
            scout = Optional.of(new Scout(new LogText(new ByteArrayInputStream(bytes))));
        }
        return scout.get().linesAt(line);
    }

    private void skip(Reader text, long line) throws IOException {
        char[] one = new char[1];
        long at = 1;
        while (at < line && text.read(one, 0, 1) > 0) {
            at += one[0] == lineEnd ? 1 : 0;
        }
    }

    /** Goes through the lines once. */
    private final class Scout {
        private final Reader text;
        private final char[] buffer = new char[8192];
        private final List<String> window = new ArrayList<>();
        private final StringBuilder part = new StringBuilder();
        private int next;
        private int limit;
        private boolean ended;
        private long first = 1;

        Scout(Reader text) {
            this.text = text;
        }

        List<String> linesAt(long line) throws IOException {
            while (first < line && (!window.isEmpty() || more())) {
                window.remove(0);
                first++;
            }
            boolean more = true;
            while (more && window.size() <= AHEAD) {
                more = more();
            }
            return first == line ? List.copyOf(window) : List.of();
        }

        private boolean more() throws IOException {
            if (ended) {
                return false;
            }
            while (true) {
                if (next == limit) {
                    limit = text.read(buffer, 0, buffer.length);
                    next = 0;
                    if (limit < 0) {
                        ended = true;
                        limit = 0;
                        window.add(part.toString());
                        return true;
                    }
                }
                char c = buffer[next++];
                if (c == lineEnd) {
                    window.add(part.toString());
                    part.setLength(0);
                    return true;
                }
                part.append(c);
            }
        }
    }
}
