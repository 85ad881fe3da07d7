package org.holdproof.core.log.reading;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/**
 * A log's characters: UTF-16 where a byte-order mark says so, otherwise UTF-8, where each byte that is not UTF-8 is
 * taken as windows-1252. A file in a single-byte Latin encoding thus reads as it stands: its degree sign, alone between
 * ASCII characters, is never valid UTF-8.
 */
final class LogText extends Reader {
    private static final int BUFFER = 1 << 16;
    private static final int LONGEST_SEQUENCE = 4;
    private static final Charset LATIN = Charset.forName("windows-1252");

    private static final VarHandle EIGHT = MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.nativeOrder());
    private static final long SIGNS = 0x8080_8080_8080_8080L;

    private final InputStream bytes;
    private final Optional<Reader> utf16;
    private final char[] latin;
    private final byte[] buffer = new byte[BUFFER];
    private int next;
    private int limit;
    private boolean atEnd;
    private char last = '\n';
    private char lastVisible = '\n';
    private char pendingLow;

    /** @param bytes the file from its first byte, byte-order mark included */
    LogText(InputStream bytes) throws IOException {
        this.bytes = bytes;
        byte[] all = new byte[256];
        for (int i = 0; i < all.length; i++) {
            all[i] = (byte) i;
        }
        this.latin = new String(all, LATIN).toCharArray();
        fill();
        if (startsWith(0xff, 0xfe)) {
            next = 2;
            utf16 = Optional.of(new InputStreamReader(rest(), StandardCharsets.UTF_16LE));
        } else if (startsWith(0xfe, 0xff)) {
            next = 2;
            utf16 = Optional.of(new InputStreamReader(rest(), StandardCharsets.UTF_16BE));
        } else {
            utf16 = Optional.empty();
            if (startsWith(0xef, 0xbb, 0xbf)) {
                next = 3;
            }
        }
    }

    /** The last character given out, or a line break before the first. */
    char lastCharacter() {
        return last;
    }

    /** The last character given out that is neither blank nor a line break. */
    char lastVisibleCharacter() {
        return lastVisible;
    }

    @Override
    public int read(char[] target, int offset, int length) throws IOException {
        if (length == 0) {
            return 0;
        }
        int count = utf16.isPresent() ? utf16.get().read(target, offset, length) : decode(target, offset, length);
        if (count > 0) {
            last = target[offset + count - 1];
            int at = offset + count - 1;
            while (at >= offset && TemperatureCell.isBlank(target[at])) {
                at--;
            }
            lastVisible = at < offset ? lastVisible : target[at];
        }
        return count;
    }

    private int decode(char[] target, int offset, int length) throws IOException {
        int out = offset;
        int end = offset + length;
        if (pendingLow != 0) {
            target[out++] = pendingLow;
            pendingLow = 0;
        }
        if (limit - next < LONGEST_SEQUENCE && !atEnd) {
            fill();
        }
        while (out < end) {
            int run = asciiRun(Math.min(end - out, limit - next));
            // a Latin-1 string and back: both copies are vectorised, a loop of our own is not
            new String(buffer, next, run, StandardCharsets.ISO_8859_1).getChars(0, run, target, out);
            out += run;
            next += run;
            if (out == end || next == limit || (limit - next < LONGEST_SEQUENCE && !atEnd)) {
                break;
            }
            out = decodeOne(target, out, end);
        }
        if (out == offset) {
            return atEnd && next == limit ? -1 : decode(target, offset, length);
        }
        return out - offset;
    }

    /** How many of the next bytes are ASCII before the first that is not, up to a limit. */
    private int asciiRun(int longest) {
        int run = 0;
        while (run + Long.BYTES <= longest && ((long) EIGHT.get(buffer, next + run) & SIGNS) == 0) {
            run += Long.BYTES;
        }
        while (run < longest && buffer[next + run] >= 0) {
            run++;
        }
        return run;
    }

    /** Decodes the sequence at {@code next}, which does not start with an ASCII byte. */
    private int decodeOne(char[] target, int at, int end) {
        int first = buffer[next] & 0xff;
        int size = first >= 0xf0 ? 4 : first >= 0xe0 ? 3 : 2;
        int point = size == 4 ? first & 0x07 : size == 3 ? first & 0x0f : first & 0x1f;
        boolean valid = first >= 0xc2 && first <= 0xf4 && limit - next >= size;
        for (int i = 1; valid && i < size; i++) {
            int following = buffer[next + i] & 0xff;
            valid = (following & 0xc0) == 0x80;
            point = (point << 6) | (following & 0x3f);
        }
        int smallest = size == 4 ? 0x10000 : size == 3 ? 0x800 : 0x80;
        valid = valid && point >= smallest && point <= 0x10ffff && !(point >= 0xd800 && point <= 0xdfff);
        if (!valid) {
            target[at] = latin[first];
            next++;
            return at + 1;
        }
        next += size;
        if (point < 0x10000) {
            // full-width digits and signs are the ASCII ones, 0xFEE0 further on (Unicode, Halfwidth and Fullwidth
            // Forms)
            target[at] = (char) (point >= 0xff01 && point <= 0xff5e ? point - 0xfee0 : point);
            return at + 1;
        }
        target[at] = Character.highSurrogate(point);
        if (at + 1 < end) {
            target[at + 1] = Character.lowSurrogate(point);
            return at + 2;
        }
        pendingLow = Character.lowSurrogate(point);
        return at + 1;
    }

    private void fill() throws IOException {
        System.arraycopy(buffer, next, buffer, 0, limit - next);
        limit -= next;
        next = 0;
        int count = bytes.read(buffer, limit, buffer.length - limit);
        if (count < 0) {
            atEnd = true;
        } else {
            limit += count;
        }
    }

    private boolean startsWith(int... marks) throws IOException {
        while (limit < marks.length && !atEnd) {
            fill();
        }
        if (limit < marks.length) {
            return false;
        }
        for (int i = 0; i < marks.length; i++) {
            if ((buffer[i] & 0xff) != marks[i]) {
                return false;
            }
        }
        return true;
    }

    /** The bytes not yet taken: what is buffered, then the stream. */
    private InputStream rest() {
        return new InputStream() {
            @Override
            public int read() throws IOException {
                if (next < limit) {
                    return buffer[next++] & 0xff;
                }
                return bytes.read();
            }

            @Override
            public int read(byte[] target, int offset, int length) throws IOException {
                if (next < limit) {
                    int count = Math.min(length, limit - next);
                    System.arraycopy(buffer, next, target, offset, count);
                    next += count;
                    return count;
                }
                return bytes.read(target, offset, length);
            }
        };
    }

    @Override
    public void close() throws IOException {
        bytes.close();
    }
}
