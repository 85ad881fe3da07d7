package org.holdproof.cli;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import org.holdproof.core.input.SourceFile;

/**
 * A log that may still be written to, read up to its last whole line: of a figure cut short nobody can tell that it was.
 */
final class GrowingLog {
    /** No line of a log is longer. */
    private static final int TAIL_BYTES = 1 << 20;

    private GrowingLog() {}

    static SourceFile read(Path file) throws IOException {
        long length;
        try (SeekableByteChannel bytes = Files.newByteChannel(file)) {
            length = wholeLines(bytes);
        }
        try (InputStream bytes = new Beginning(Files.newInputStream(file), length)) {
            return SourceFile.of(InputFile.name(file), bytes.readAllBytes());
        }
    }

    /** How many bytes the whole lines take, with the last one's end. */
    private static long wholeLines(SeekableByteChannel bytes) throws IOException {
        long size = bytes.size();
        ByteBuffer mark = read(bytes, 0, 2);
        if (mark.limit() == 2 && mark.get(0) == 'P' && mark.get(1) == 'K') {
            // a spreadsheet is saved whole
            return size;
        }
        boolean littleEndian = mark.limit() == 2 && mark.getShort(0) == (short) 0xFFFE;
        boolean bigEndian = mark.limit() == 2 && mark.getShort(0) == (short) 0xFEFF;
        long from = Math.max(0, size - TAIL_BYTES) & ~1L;
        ByteBuffer tail = read(bytes, from, (int) (size - from));
        int width = littleEndian || bigEndian ? 2 : 1;
        for (int at = tail.limit() / width * width - width; at >= 0; at -= width) {
            int character = width == 1
                    ? tail.get(at)
                    : littleEndian ? Short.reverseBytes(tail.getShort(at)) : tail.getShort(at);
            if (character == '\n' || character == '\r') {
                return from + at + width;
            }
        }
        return 0;
    }

    private static ByteBuffer read(SeekableByteChannel bytes, long from, int count) throws IOException {
        ByteBuffer buffer = ByteBuffer.allocate(count);
        bytes.position(from);
        int got = 0;
        while (buffer.hasRemaining() && got >= 0) {
            got = bytes.read(buffer);
        }
        return buffer.flip();
    }

    /** So many bytes of a stream, as if it ended there. */
    private static final class Beginning extends FilterInputStream {
        private long left;

        Beginning(InputStream whole, long length) {
            super(whole);
            left = length;
        }

        @Override
        public int read() throws IOException {
            int read = left > 0 ? super.read() : -1;
            left -= read >= 0 ? 1 : 0;
            return read;
        }

        @Override
        public int read(byte[] into, int offset, int count) throws IOException {
            if (left <= 0) {
                return count == 0 ? 0 : -1;
            }
            int read = super.read(into, offset, (int) Math.min(count, left));
            left -= Math.max(0, read);
            return read;
        }

        @Override
        public long skip(long count) throws IOException {
            long skipped = super.skip(Math.min(count, left));
            left -= skipped;
            return skipped;
        }

        @Override
        public int available() throws IOException {
            return (int) Math.min(super.available(), left);
        }

        @Override
        public boolean markSupported() {
            return false;
        }
    }
}
