package org.holdproof.core;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.regex.Pattern;
import org.holdproof.core.kinetics.Traces;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.TemperatureUnit;

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

    /** A row's log: minutes and temperatures. */
    public static Trace trace(NamedCsvRecord row) {
        double[] numbers = Pattern.compile("[;:]")
                .splitAsStream(row.getField("series_min_temp"))
                .mapToDouble(Double::parseDouble)
                .toArray();
        TemperatureUnit unit =
                row.getField("series_unit").equals("F") ? TemperatureUnit.FAHRENHEIT : TemperatureUnit.CELSIUS;
        return Traces.of(unit, numbers);
    }

    /** The id of the rule a row is judged by: the printed Celsius figures are a rule of their own. */
    public static String ruleId(NamedCsvRecord row) {
        String id = row.getField("rule_id");
        return row.getField("boundary_set").startsWith("printed C") ? id + "-C" : id;
    }

    public static double number(NamedCsvRecord row, String field) {
        return Double.parseDouble(row.getField(field));
    }
}
