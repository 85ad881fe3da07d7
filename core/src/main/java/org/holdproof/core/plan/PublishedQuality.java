package org.holdproof.core.plan;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.holdproof.core.heat.HeatTable;
import org.holdproof.core.rules.Source;
import org.holdproof.core.rules.Source.How;

/**
 * A published figure about eating quality, as its document prints it. Most are ranges or words: none is a law.
 *
 * @param temperature as printed, in °C; may be empty
 * @param value as printed
 * @param how how the figure was obtained
 * @param note what to know about it; may be empty
 */
public record PublishedQuality(
        String topic,
        String material,
        String condition,
        String temperature,
        String time,
        String value,
        String unit,
        Source source,
        How how,
        String note) {

    private static final Pattern NUMBER = Pattern.compile("[0-9]+(?:\\.[0-9]+)?");
    private static final Pattern IN_BRACKETS = Pattern.compile("\\([^)]*\\)");

    /** Every figure the tables hold. */
    public static List<PublishedQuality> all() {
        return Loaded.ALL;
    }

    private static final class Loaded {
        static final List<PublishedQuality> ALL = load();

        private static List<PublishedQuality> load() {
            Map<String, Source> sources = HeatTable.sources();
            List<PublishedQuality> all = new ArrayList<>();
            for (NamedCsvRecord row : HeatTable.rows("quality.csv")) {
                Source source = sources.get(row.getField("source_id"));
                if (source == null) {
                    throw new IllegalStateException(
                            "quality.csv cites " + row.getField("source_id") + ", which sources.json lacks");
                }
                all.add(new PublishedQuality(
                        row.getField("topic"),
                        row.getField("material"),
                        row.getField("condition"),
                        row.getField("temperature_C"),
                        row.getField("time"),
                        row.getField("value"),
                        row.getField("unit"),
                        source,
                        HeatTable.how(row.getField("how")),
                        row.getField("note")));
            }
            return List.copyOf(all);
        }
    }

    /** How far a temperature lies outside those printed, in °C; infinite where none is printed. */
    double distanceCelsius(double celsius) {
        Matcher numbers = NUMBER.matcher(IN_BRACKETS.matcher(temperature).replaceAll(""));
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        while (numbers.find()) {
            low = Math.min(low, Double.parseDouble(numbers.group()));
            high = Math.max(high, Double.parseDouble(numbers.group()));
        }
        return low > high ? Double.POSITIVE_INFINITY : Math.max(0, Math.max(low - celsius, celsius - high));
    }

    /** Who says so: {@code J. Food Science 1963 (read)}; for a fact of the trade only what it is. */
    public String cited() {
        if (how == How.COMMON_PRACTICE) {
            return how.title();
        }
        return source.issuer() + (source.year().isEmpty() ? "" : " " + source.year()) + " (" + how.title() + ")";
    }

    /** The figure in one line, without its source. */
    public String text() {
        StringBuilder text = new StringBuilder(material);
        text.append(condition.isEmpty() ? "" : ", " + condition);
        text.append(temperature.isEmpty() ? "" : ", " + temperature + " °C");
        text.append(time.isEmpty() ? "" : ", " + time);
        text.append(value.isEmpty() ? "" : ": " + value);
        text.append(unit.isEmpty() || unit.equals("C") ? "" : " " + unit);
        return text.toString();
    }
}
