package org.holdproof.core.rules.loading;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** A CSV table with a fixed header: UTF-8, comma, quotes after RFC 4180. */
final class CsvSheet {
    private CsvSheet() {}

    /**
     * The rows below the header.
     *
     * @param columns the header's names; the file must have exactly these, in any order
     */
    static List<CsvRow> read(String file, byte[] bytes, List<String> columns) throws UnreadableTablesException {
        List<CsvRow> rows = new ArrayList<>();
        Map<String, Integer> places = new HashMap<>();
        try (CsvReader<CsvRecord> reader = CsvReader.builder().ofCsvRecord(utf8(file, bytes))) {
            for (CsvRecord csv : reader) {
                if (places.isEmpty()) {
                    places = header(file, csv, columns);
                    continue;
                }
                if (csv.getFieldCount() != places.size()) {
                    throw new UnreadableTablesException(
                            file,
                            csv.getStartingLineNumber(),
                            "",
                            csv.getFieldCount() + " columns",
                            places.size() + ", as in the header",
                            "Put text that holds a comma or a quote into double quotes, and end the row where the header"
                                    + " ends.");
                }
                rows.add(new CsvRow(file, csv.getStartingLineNumber(), places, csv.getFields()));
            }
        } catch (CsvParseException e) {
            throw new UnreadableTablesException(
                    file,
                    rows.isEmpty() ? 1 : rows.get(rows.size() - 1).line() + 1,
                    "",
                    "text that is not CSV",
                    "comma-separated values, quotes doubled inside quotes",
                    "Correct the row there.");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        if (rows.isEmpty()) {
            throw new UnreadableTablesException(
                    file, 0, "", "no row", "a header and at least one row", "Fill the table or take the file out.");
        }
        return rows;
    }

    /** The rows of a topic's table and of the tables that add to it. */
    static List<CsvRow> readAll(TableFiles files, String topic, List<String> columns) throws UnreadableTablesException {
        List<CsvRow> rows = new ArrayList<>();
        for (String file : files.ofTopic(topic, ".csv")) {
            rows.addAll(read(file, files.bytes(file), columns));
        }
        return rows;
    }

    private static Map<String, Integer> header(String file, CsvRecord csv, List<String> columns)
            throws UnreadableTablesException {
        Map<String, Integer> places = new HashMap<>();
        for (int i = 0; i < csv.getFieldCount(); i++) {
            places.put(csv.getField(i), i);
        }
        if (places.size() != columns.size()
                || csv.getFieldCount() != columns.size()
                || !places.keySet().containsAll(columns)) {
            throw new UnreadableTablesException(
                    file,
                    csv.getStartingLineNumber(),
                    "",
                    "the header " + shortened(String.join(",", csv.getFields())),
                    String.join(",", columns),
                    "Copy the header from the built-in table of this kind.");
        }
        return places;
    }

    /** Strict UTF-8, a leading byte order mark dropped. */
    static String utf8(String file, byte[] bytes) throws UnreadableTablesException {
        try {
            String text = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
            return text.startsWith("\uFEFF") ? text.substring(1) : text;
        } catch (CharacterCodingException e) {
            throw new UnreadableTablesException(
                    file, 0, "", "bytes that are not UTF-8", "UTF-8 text", "Save the file as UTF-8.");
        }
    }

    static String shortened(String text) {
        return text.length() <= 120 ? text : text.substring(0, 117) + "...";
    }
}
