package org.holdproof.report.pdf;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A value read from a PDF (ISO 32000-1, 7.3) and the bytes it was read from: {@code start} to {@code end}, exclusive. */
public sealed interface PdfValue {
    int start();

    int end();

    record Name(String text, int start, int end) implements PdfValue {}

    record Whole(long value, int start, int end) implements PdfValue {}

    /** A real number, true, false or null: nothing the check needs. */
    record Other(int start, int end) implements PdfValue {}

    record Reference(int number, int start, int end) implements PdfValue {}

    /** A string; its bytes as chars of one byte each. */
    record Text(String octets, boolean hexadecimal, int start, int end) implements PdfValue {
        /** As text: UTF-16 with a byte order mark, or else taken as Latin. */
        public String decoded() {
            return octets.startsWith("\u00FE\u00FF")
                    ? new String(octets.getBytes(StandardCharsets.ISO_8859_1), StandardCharsets.UTF_16)
                    : octets;
        }
    }

    record Array(List<PdfValue> items, int start, int end) implements PdfValue {
        public Array {
            items = List.copyOf(items);
        }
    }

    record Dictionary(Map<String, PdfValue> entries, int start, int end) implements PdfValue {
        public Dictionary {
            entries = Map.copyOf(entries);
        }

        public Optional<PdfValue> get(String key) {
            return Optional.ofNullable(entries.get(key));
        }

        public boolean isName(String key, String name) {
            return get(key).filter(
                            value -> value instanceof Name found && found.text().equals(name))
                    .isPresent();
        }
    }
}
