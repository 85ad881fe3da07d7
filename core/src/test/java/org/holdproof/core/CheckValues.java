package org.holdproof.core;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

/** The published check values and worked examples under {@code check-values}; every row names its source. */
public final class CheckValues {
    private CheckValues() {}

    /** All rows of a file. */
    public static List<NamedCsvRecord> rows(String file) {
        String path = "/check-values/" + file;
        try (CsvReader<NamedCsvRecord> reader = CsvReader.builder()
                .ofNamedCsvRecord(new InputStreamReader(
                        Objects.requireNonNull(CheckValues.class.getResourceAsStream(path), path),
                        StandardCharsets.UTF_8))) {
            return reader.stream().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
