package org.holdproof.core.heat;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

/** Rows of the data files the heat tests check against. */
final class HeatReference {
    private HeatReference() {}

    /** Rows of a file beside the tests. */
    static List<NamedCsvRecord> rows(String name) {
        return read("/heat/" + name);
    }

    /** Rows of a file shipped with the reference tables. */
    static List<NamedCsvRecord> shipped(String name) {
        return read("/org/holdproof/tables/heat/" + name);
    }

    static double number(NamedCsvRecord row, String field) {
        return Double.parseDouble(row.getField(field));
    }

    private static List<NamedCsvRecord> read(String path) {
        InputStream stream = Objects.requireNonNull(HeatReference.class.getResourceAsStream(path), path);
        try (CsvReader<NamedCsvRecord> reader =
                CsvReader.builder().ofNamedCsvRecord(new InputStreamReader(stream, StandardCharsets.UTF_8))) {
            return reader.stream().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
