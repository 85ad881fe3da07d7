package org.holdproof.report.pdf;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;

/**
 * The objects of a PDF that was written once and never added to: header, objects end to end, one cross-reference table,
 * one trailer, end of file, and not a byte besides. A file with a later or an earlier revision, with bytes between its
 * objects, or rewritten by another program does not fit, and is refused. This reader is kept apart from the library
 * that writes reports, so that a fault of one does not hide a fault of the other.
 */
public final class PdfObjects {
    private static final String HEADER = "%PDF-1.7\n%";
    private static final int MOST_OBJECTS = 1_000_000;
    private static final int LARGEST_STREAM = 1 << 30;

    /** One object; a stream's bytes lie from {@code streamStart} to {@code streamEnd}, both -1 where it is none. */
    private record Entry(PdfValue value, int streamStart, int streamEnd) {}

    private final byte[] file;
    private final Map<Integer, Integer> offsets = new HashMap<>();
    private final Map<Integer, Entry> objects = new HashMap<>();
    private final PdfValue.Dictionary trailer;

    private PdfObjects(byte[] file) throws MalformedPdfException {
        this.file = file;
        PdfScanner header = new PdfScanner(file, 0);
        header.expect(HEADER);
        int body = lineEnd(header.position());
        int table = readEnd();
        PdfScanner scanner = new PdfScanner(file, table);
        readTable(scanner);
        this.trailer = scanner.dictionary();
        scanner.skipWhite();
        scanner.expect("startxref\n" + table + "\n%%EOF\n");
        if (scanner.position() != file.length) {
            throw new MalformedPdfException(scanner.position(), "bytes after the end of the file");
        }
        for (String key : trailer.entries().keySet()) {
            if (!List.of("Size", "Root", "Info", "ID").contains(key)) {
                throw new MalformedPdfException(trailer.start(), "the trailer holds /" + key);
            }
        }
        readBody(body, table);
    }

    public static PdfObjects read(byte[] file) throws MalformedPdfException {
        return new PdfObjects(file);
    }

    public PdfValue.Dictionary trailer() {
        return trailer;
    }

    /** The value, or where it is a reference the object it leads to. */
    public Optional<PdfValue> resolve(PdfValue value) {
        if (value instanceof PdfValue.Reference reference) {
            return Optional.ofNullable(objects.get(reference.number()))
                    .map(Entry::value)
                    .filter(found -> !(found instanceof PdfValue.Reference));
        }
        return Optional.of(value);
    }

    public Optional<PdfValue.Dictionary> dictionary(PdfValue.Dictionary in, String key) {
        return in.get(key).flatMap(this::dictionary);
    }

    public Optional<PdfValue.Dictionary> dictionary(PdfValue value) {
        return resolve(value).filter(PdfValue.Dictionary.class::isInstance).map(PdfValue.Dictionary.class::cast);
    }

    public Optional<PdfValue.Array> array(PdfValue.Dictionary in, String key) {
        return in.get(key)
                .flatMap(this::resolve)
                .filter(PdfValue.Array.class::isInstance)
                .map(PdfValue.Array.class::cast);
    }

    public Optional<String> text(PdfValue.Dictionary in, String key) {
        return in.get(key)
                .flatMap(this::resolve)
                .filter(PdfValue.Text.class::isInstance)
                .map(found -> ((PdfValue.Text) found).decoded());
    }

    /** How many objects are dictionaries (or streams) with this entry. */
    public long count(String key) {
        return objects.values().stream()
                .filter(entry -> entry.value() instanceof PdfValue.Dictionary found
                        && found.get(key).isPresent())
                .count();
    }

    /** A stream's dictionary, where the reference leads to a stream. */
    public Optional<PdfValue.Dictionary> stream(PdfValue value) {
        return entryOfStream(value).map(entry -> (PdfValue.Dictionary) entry.value());
    }

    /** A stream's content, inflated where it is deflated. */
    public byte[] content(PdfValue value) throws MalformedPdfException {
        Entry entry = entryOfStream(value)
                .orElseThrow(() -> new MalformedPdfException(value.start(), "a reference that leads to no stream"));
        PdfValue.Dictionary dictionary = (PdfValue.Dictionary) entry.value();
        if (dictionary.get("DecodeParms").isPresent() || dictionary.get("F").isPresent()) {
            throw new MalformedPdfException(dictionary.start(), "a stream stored in another way than reports do");
        }
        int length = entry.streamEnd() - entry.streamStart();
        if (dictionary.get("Filter").isEmpty()) {
            byte[] content = new byte[length];
            System.arraycopy(file, entry.streamStart(), content, 0, length);
            return content;
        }
        if (!dictionary.isName("Filter", "FlateDecode")) {
            throw new MalformedPdfException(dictionary.start(), "a stream stored in another way than reports do");
        }
        return inflate(entry.streamStart(), length);
    }

    private Optional<Entry> entryOfStream(PdfValue value) {
        return value instanceof PdfValue.Reference reference
                ? Optional.ofNullable(objects.get(reference.number())).filter(entry -> entry.streamStart() >= 0)
                : Optional.empty();
    }

    private byte[] inflate(int start, int length) throws MalformedPdfException {
        Inflater inflater = new Inflater();
        try {
            inflater.setInput(file, start, length);
            ByteArrayOutputStream content = new ByteArrayOutputStream(Math.max(64, length * 2));
            byte[] piece = new byte[1 << 16];
            while (!inflater.finished()) {
                int count = inflater.inflate(piece);
                if (count == 0) {
                    throw new MalformedPdfException(start, "a compressed stream that breaks off");
                }
                content.write(piece, 0, count);
                if (content.size() > LARGEST_STREAM) {
                    throw new MalformedPdfException(start, "a stream of more than " + LARGEST_STREAM + " bytes");
                }
            }
            if (inflater.getRemaining() > 0) {
                throw new MalformedPdfException(start, "bytes after the end of a compressed stream");
            }
            return content.toByteArray();
        } catch (DataFormatException broken) {
            throw new MalformedPdfException(start, "a compressed stream that cannot be read");
        } finally {
            inflater.end();
        }
    }

    private int lineEnd(int from) throws MalformedPdfException {
        for (int at = from; at < Math.min(file.length, from + 64); at++) {
            if (file[at] == '\n') {
                return at + 1;
            }
        }
        throw new MalformedPdfException(from, "a header without an end");
    }

    private int readEnd() throws MalformedPdfException {
        int tail = Math.max(0, file.length - 40);
        String end = new String(file, tail, file.length - tail, StandardCharsets.ISO_8859_1);
        int mark = end.lastIndexOf("startxref\n");
        if (mark < 0 || !end.endsWith("\n%%EOF\n")) {
            throw new MalformedPdfException(file.length, "the file does not end as a PDF does");
        }
        long table = new PdfScanner(file, tail + mark + "startxref\n".length()).digits();
        if (table >= file.length) {
            throw new MalformedPdfException(file.length, "the end of the file points out of the file");
        }
        return (int) table;
    }

    private void readTable(PdfScanner scanner) throws MalformedPdfException {
        scanner.expect("xref\n");
        while (!scanner.startsWith("trailer\n")) {
            long first = scanner.digits();
            scanner.expect(" ");
            long count = scanner.digits();
            scanner.expect("\n");
            if (first + count > MOST_OBJECTS) {
                throw new MalformedPdfException(scanner.position(), "more objects than a report has");
            }
            for (long number = first; number < first + count; number++) {
                int line = scanner.position();
                long offset = scanner.digits();
                scanner.expect(" ");
                long generation = scanner.digits();
                scanner.expect(" ");
                boolean free = scanner.startsWith("f");
                scanner.expect(free ? "f \n" : "n \n");
                if (scanner.position() - line != 20 || free != (number == 0) || generation != (free ? 65535 : 0)) {
                    throw new MalformedPdfException(line, "a cross-reference that no report holds");
                }
                if (!free && (offset >= line || offsets.put((int) number, (int) offset) != null)) {
                    throw new MalformedPdfException(line, "a cross-reference that no report holds");
                }
            }
        }
        scanner.expect("trailer\n");
    }

    private void readBody(int body, int table) throws MalformedPdfException {
        TreeMap<Integer, Integer> byOffset = new TreeMap<>();
        for (Map.Entry<Integer, Integer> entry : offsets.entrySet()) {
            if (byOffset.put(entry.getValue(), entry.getKey()) != null) {
                throw new MalformedPdfException(entry.getValue(), "two objects at one place");
            }
        }
        int at = body;
        for (Map.Entry<Integer, Integer> place : byOffset.entrySet()) {
            if (place.getKey() != at) {
                throw new MalformedPdfException(at, "bytes that belong to no object");
            }
            at = readObject(place.getValue(), at);
        }
        if (at != table) {
            throw new MalformedPdfException(at, "bytes that belong to no object");
        }
    }

    private int readObject(int number, int offset) throws MalformedPdfException {
        PdfScanner scanner = new PdfScanner(file, offset);
        scanner.expect(number + " 0 obj\n");
        PdfValue value = scanner.value();
        int streamStart = -1;
        int streamEnd = -1;
        if (scanner.startsWith("stream\n") || scanner.startsWith("\nstream\n")) {
            scanner.expect(scanner.startsWith("\n") ? "\nstream\n" : "stream\n");
            streamStart = scanner.position();
            scanner.skip(streamLength(value));
            streamEnd = scanner.position();
            scanner.expect("\nendstream");
        }
        scanner.expect("\nendobj\n");
        objects.put(number, new Entry(value, streamStart, streamEnd));
        return scanner.position();
    }

    private int streamLength(PdfValue dictionary) throws MalformedPdfException {
        Optional<PdfValue> length =
                dictionary instanceof PdfValue.Dictionary found ? found.get("Length") : Optional.empty();
        if (length.isPresent() && length.get() instanceof PdfValue.Reference elsewhere) {
            Integer offset = offsets.get(elsewhere.number());
            if (offset != null) {
                PdfScanner scanner = new PdfScanner(file, offset);
                scanner.expect(elsewhere.number() + " 0 obj\n");
                length = Optional.of(scanner.value());
            }
        }
        if (length.isPresent() && length.get() instanceof PdfValue.Whole bytes && bytes.value() <= file.length) {
            return (int) bytes.value();
        }
        throw new MalformedPdfException(dictionary.start(), "a stream without a length");
    }
}
