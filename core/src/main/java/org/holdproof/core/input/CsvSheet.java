package org.holdproof.core.input;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** A CSV table with a fixed header: UTF-8, comma, quotes after RFC 4180. */
public final class CsvSheet {
    private CsvSheet() {}

    /**
     * The rows below the header.
     *
     * @param file the file's name for messages
     * @param columns the header's names; the file must have exactly these, in any order
     * @throws UnreadableInputException if the file is no such table
     */
    public static List<CsvRow> read(String file, byte[] bytes, List<String> columns) throws UnreadableInputException {
        List<CsvRow> rows = new ArrayList<>();
        Map<String, Integer> places = new HashMap<>();
        try (CsvReader<CsvRecord> reader = CsvReader.builder().ofCsvRecord(Utf8.decode(Place.file(file), bytes))) {
            for (CsvRecord csv : reader) {
                if (places.isEmpty()) {
                    places = header(file, csv, columns);
                    continue;
                }
                if (csv.getFieldCount() != places.size()) {
                    throw Place.file(file)
                            .line(csv.getStartingLineNumber())
                            .fault(
                                    csv.getFieldCount() + " columns",
                                    places.size() + ", as in the header",
                                    "Put text that holds a comma or a quote into double quotes, and end the row where the header"
                                            + " ends.");
                }
                rows.add(new CsvRow(file, csv.getStartingLineNumber(), places, csv.getFields()));
            }
        } catch (CsvParseException e) {
            throw Place.file(file)
                    .line(rows.isEmpty() ? 1 : rows.get(rows.size() - 1).line() + 1)
                    .fault(
                            "text that is not CSV",
                            "comma-separated values, quotes doubled inside quotes",
                            "Correct the row there.");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        if (rows.isEmpty()) {
            throw Place.file(file)
                    .fault("no row", "a header and at least one row", "Fill the table or take the file out.");
        }
        return rows;
    }

    private static Map<String, Integer> header(String file, CsvRecord csv, List<String> columns)
            throws UnreadableInputException {
        Map<String, Integer> places = new HashMap<>();
        for (int i = 0; i < csv.getFieldCount(); i++) {
            places.put(csv.getField(i), i);
        }
        if (places.size() != columns.size()
                || csv.getFieldCount() != columns.size()
                || !places.keySet().containsAll(columns)) {
            throw Place.file(file)
                    .line(csv.getStartingLineNumber())
                    .fault(
                            "the header " + shortened(String.join(",", csv.getFields())),
                            String.join(",", columns),
                            "Copy the header from the built-in table of this kind.");
        }
        return places;
    }

    static String shortened(String text) {
        return text.length() <= 120 ? text : text.substring(0, 117) + "...";
    }
}
