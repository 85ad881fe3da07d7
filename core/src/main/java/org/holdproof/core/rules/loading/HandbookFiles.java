package org.holdproof.core.rules.loading;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.holdproof.core.input.CsvRow;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.rules.BathTime;
import org.holdproof.core.rules.BoilingPoint;
import org.holdproof.core.rules.GrowthLimit;
import org.holdproof.core.rules.RuleSet;

/** Reads the tables nothing is judged by: growth limits, bath times, boiling points. */
public final class HandbookFiles {
    private static final List<String> GROWTH = List.of(
            "id",
            "kind",
            "organism",
            "min_celsius",
            "max_celsius",
            "min_ph",
            "max_ph",
            "min_water_activity",
            "max_salt_percent",
            "exposure_from_celsius",
            "exposure_to_celsius",
            "exposure_minutes",
            "document",
            "section",
            "source",
            "how",
            "note");
    private static final List<String> BATH = List.of(
            "id",
            "product",
            "thickness_mm",
            "bath_celsius",
            "start_celsius",
            "printed_time",
            "seconds",
            "targets",
            "document",
            "section",
            "source",
            "how",
            "note");

    private final TableFiles files;
    private final Sources sources;

    public HandbookFiles(TableFiles files, Sources sources) {
        this.files = files;
        this.sources = sources;
    }

    public RuleSet<GrowthLimit> growthLimits() throws UnreadableInputException {
        Map<String, GrowthLimit> limits = new LinkedHashMap<>();
        for (CsvRow row : files.rows("growth-limits", GROWTH)) {
            row.putUnder(
                    limits,
                    new GrowthLimit(
                            row.required("id"),
                            row.choice("kind", GrowthLimit.Kind.values()),
                            row.required("organism"),
                            row.numberIfAny("min_celsius", -40, 130),
                            row.numberIfAny("max_celsius", -40, 130),
                            row.numberIfAny("min_ph", 0, 14),
                            row.numberIfAny("max_ph", 0, 14),
                            row.numberIfAny("min_water_activity", 0, 1),
                            row.numberIfAny("max_salt_percent", 0, 100),
                            row.numberIfAny("exposure_from_celsius", -40, 130),
                            row.numberIfAny("exposure_to_celsius", -40, 130),
                            row.numberIfAny("exposure_minutes", 1, 1e6),
                            sources.citation(row)));
        }
        return new RuleSet<>(GrowthLimit.class, "Growth limits", "growth-limits.csv", limits.values());
    }

    public RuleSet<BathTime> bathTimes() throws UnreadableInputException {
        Map<String, BathTime> times = new LinkedHashMap<>();
        for (CsvRow row : files.rows("bath-times", BATH)) {
            BathTime time = new BathTime(
                    row.required("id"),
                    row.required("product"),
                    row.number("thickness_mm", 1, 1000),
                    row.number("bath_celsius", 30, 100),
                    row.numberIfAny("start_celsius", -40, 60),
                    row.number("seconds", 1, 30 * 86_400.0),
                    row.required("printed_time"),
                    row.required("targets"),
                    sources.citation(row));
            PrintedTime.require(row, "printed_time", "seconds");
            row.putUnder(times, time);
        }
        return new RuleSet<>(BathTime.class, "Times in a bath", "bath-times.csv", times.values());
    }

    /** The rows of the measurement table that give a pressure. */
    public RuleSet<BoilingPoint> boilingPoints() throws UnreadableInputException {
        Map<String, BoilingPoint> points = new LinkedHashMap<>();
        for (CsvRow row : files.rows("measurement", RuleFiles.MEASUREMENT)) {
            if (!row.isBlank("pressure_kpa")) {
                row.putUnder(
                        points,
                        new BoilingPoint(
                                row.required("id"),
                                row.numberIfAny("altitude_m", -500, 9000),
                                row.number("pressure_kpa", 20, 120),
                                row.boundary("value", "unit", 50, 110),
                                row.number("tolerance", 0, 10),
                                sources.citation(row)));
            }
        }
        return new RuleSet<>(BoilingPoint.class, "Boiling points", "measurement.csv", points.values());
    }
}
