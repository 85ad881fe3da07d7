package org.holdproof.core.heat.smoke;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.holdproof.core.log.Trace;

/** Readings of published-curves.csv. */
final class SmokerLogs {
    private static final Map<String, List<NamedCsvRecord>> BY_ID = read();

    private SmokerLogs() {}

    static List<NamedCsvRecord> rows(String id) {
        return Objects.requireNonNull(BY_ID.get(id), id);
    }

    private static Map<String, List<NamedCsvRecord>> read() {
        InputStream stream = Objects.requireNonNull(
                SmokerLogs.class.getResourceAsStream("/heat/smoke/published-curves.csv"), "published-curves.csv");
        try (CsvReader<NamedCsvRecord> reader =
                CsvReader.builder().ofNamedCsvRecord(new InputStreamReader(stream, StandardCharsets.UTF_8))) {
            return reader.stream().collect(Collectors.groupingBy(row -> row.getField("id")));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** At whole minutes from 0 on, straight between the readings. */
    static Trace everyMinute(String id, int toMinute) {
        List<NamedCsvRecord> rows = rows(id);
        long[] millis = new long[toMinute + 1];
        double[] celsius = new double[toMinute + 1];
        int next = 0;
        for (int minute = 0; minute <= toMinute; minute++) {
            while (next < rows.size() - 1 && minute(rows.get(next)) < minute) {
                next++;
            }
            double value = number(rows.get(next));
            if (next > 0 && minute(rows.get(next)) >= minute) {
                NamedCsvRecord before = rows.get(next - 1);
                double share = (minute - minute(before)) / (minute(rows.get(next)) - minute(before));
                value = number(before) + share * (value - number(before));
            }
            millis[minute] = minute * 60_000L;
            celsius[minute] = value;
        }
        return new Trace(id, millis, celsius);
    }

    static double minute(NamedCsvRecord row) {
        return Double.parseDouble(row.getField("minute"));
    }

    static double number(NamedCsvRecord row) {
        return Double.parseDouble(row.getField("value"));
    }
}
