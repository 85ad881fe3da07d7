package org.holdproof.core.rules.loading;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.holdproof.core.batch.Moisture;
import org.holdproof.core.input.CsvRow;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.quantity.Comparison;
import org.holdproof.core.rules.ExposureRule;
import org.holdproof.core.rules.HumidityOption;
import org.holdproof.core.rules.ShelfLifeRule;
import org.holdproof.core.rules.TimeLimit;

/** Reads the rules on surface moisture, time as a control, exposure and shelf life. */
public final class LimitFiles {
    private static final List<String> HUMIDITY = List.of(
            "id",
            "title",
            "document",
            "section",
            "means",
            "share_percent",
            "at_least_minutes",
            "end_point",
            "oven_at_least",
            "unit",
            "cook_at_least_minutes",
            "piece_kg",
            "source",
            "how",
            "note");
    private static final List<String> TIME = List.of(
            "id",
            "title",
            "jurisdiction",
            "document",
            "section",
            "applies",
            "cold_start",
            "hot_start",
            "ceiling",
            "unit",
            "ceiling_comparison",
            "max_minutes",
            "comparison",
            "count",
            "marked",
            "disposition",
            "source",
            "how",
            "note");
    private static final List<String> SHELF_LIFE = List.of(
            "id",
            "title",
            "jurisdiction",
            "document",
            "section",
            "applies",
            "store_at",
            "unit",
            "days",
            "from",
            "packaged_days",
            "reach",
            "reach_minutes",
            "disposition",
            "source",
            "how",
            "note");

    private static final List<String> EXPOSURE = List.of(
            "id",
            "title",
            "jurisdiction",
            "document",
            "section",
            "applies",
            "limb",
            "from",
            "to",
            "unit",
            "max_minutes",
            "source",
            "how",
            "note");

    private static final double COLDEST = -40;
    private static final double HOTTEST = 250;
    private static final double WEEK_MINUTES = 7 * 1440.0;
    private static final int LONGEST_DAYS = 400;

    private final TableFiles files;
    private final Sources sources;

    public LimitFiles(TableFiles files, Sources sources) {
        this.files = files;
        this.sources = sources;
    }

    public Map<String, HumidityOption> humidity() throws UnreadableInputException {
        Map<String, HumidityOption> options = new LinkedHashMap<>();
        for (CsvRow row : files.rows("humidity", HUMIDITY)) {
            row.putUnder(
                    options,
                    new HumidityOption(
                            row.required("id"),
                            row.required("title"),
                            row.choice("means", Moisture.Means.values()),
                            row.number("share_percent", 0, 100),
                            row.number("at_least_minutes", 0, WEEK_MINUTES),
                            row.boundaryIfAny("end_point", "unit", COLDEST, HOTTEST),
                            row.number("cook_at_least_minutes", 0, WEEK_MINUTES),
                            row.numberIfAny("piece_kg", 0, 100),
                            row.boundaryIfAny("oven_at_least", "unit", COLDEST, HOTTEST),
                            sources.citation(row)));
        }
        return options;
    }

    public Map<String, TimeLimit> timeLimits() throws UnreadableInputException {
        Map<String, TimeLimit> limits = new LinkedHashMap<>();
        for (CsvRow row : files.rows("time-limits", TIME)) {
            row.putUnder(
                    limits,
                    new TimeLimit(
                            row.required("id"),
                            row.required("title"),
                            row.required("jurisdiction"),
                            row.required("applies"),
                            row.boundaryIfAny("cold_start", "unit", COLDEST, HOTTEST),
                            row.boundaryIfAny("hot_start", "unit", COLDEST, HOTTEST),
                            row.boundaryIfAny("ceiling", "unit", COLDEST, HOTTEST),
                            row.choice("ceiling_comparison", Comparison.values()),
                            row.number("max_minutes", 1, WEEK_MINUTES),
                            row.choice("comparison", Comparison.values()),
                            row.choice("count", TimeLimit.Count.values()),
                            row.yes("marked"),
                            row.text("disposition"),
                            sources.citation(row)));
        }
        return limits;
    }

    public Map<String, ShelfLifeRule> shelfLives() throws UnreadableInputException {
        Map<String, ShelfLifeRule> lives = new LinkedHashMap<>();
        for (CsvRow row : files.rows("shelf-life", SHELF_LIFE)) {
            row.putUnder(
                    lives,
                    new ShelfLifeRule(
                            row.required("id"),
                            row.required("title"),
                            row.required("jurisdiction"),
                            row.required("applies"),
                            row.boundary("store_at", "unit", COLDEST, 20),
                            row.count("days", 1, LONGEST_DAYS),
                            row.choice("from", ShelfLifeRule.From.values()),
                            row.countIfAny("packaged_days", 1, LONGEST_DAYS),
                            row.boundaryIfAny("reach", "unit", COLDEST, 20),
                            row.numberIfAny("reach_minutes", 1, WEEK_MINUTES),
                            row.text("disposition"),
                            sources.citation(row)));
        }
        return lives;
    }

    public Map<String, ExposureRule> exposures() throws UnreadableInputException {
        Map<String, CsvRow> heads = new LinkedHashMap<>();
        Map<String, SortedMap<Integer, List<ExposureRule.Band>>> limbs = new LinkedHashMap<>();
        for (CsvRow row : files.rows("exposure", EXPOSURE)) {
            String id = row.required("id");
            heads.putIfAbsent(id, row);
            limbs.computeIfAbsent(id, key -> new TreeMap<>())
                    .computeIfAbsent(row.count("limb", 1, 9), key -> new ArrayList<>())
                    .add(new ExposureRule.Band(
                            row.boundary("from", "unit", COLDEST, HOTTEST),
                            row.boundary("to", "unit", COLDEST, HOTTEST),
                            row.number("max_minutes", 1, WEEK_MINUTES)));
        }
        Map<String, ExposureRule> rules = new LinkedHashMap<>();
        for (CsvRow head : heads.values()) {
            head.putUnder(
                    rules,
                    new ExposureRule(
                            head.required("id"),
                            head.required("title"),
                            head.required("jurisdiction"),
                            head.required("applies"),
                            List.copyOf(limbs.getOrDefault(head.required("id"), new TreeMap<>())
                                    .values()),
                            sources.citation(head)));
        }
        return rules;
    }
}
