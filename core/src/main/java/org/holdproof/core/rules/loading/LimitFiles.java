package org.holdproof.core.rules.loading;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;
import org.holdproof.core.batch.Moisture;
import org.holdproof.core.batch.Product.Form;
import org.holdproof.core.batch.Product.Species;
import org.holdproof.core.input.CsvRow;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.quantity.Comparison;
import org.holdproof.core.rules.Citation;
import org.holdproof.core.rules.ExposureRule;
import org.holdproof.core.rules.HotAllowance;
import org.holdproof.core.rules.HumidityOption;
import org.holdproof.core.rules.OvenCondition;
import org.holdproof.core.rules.ParasiteRule;
import org.holdproof.core.rules.RuleSet;
import org.holdproof.core.rules.ShelfLifeRule;
import org.holdproof.core.rules.SupportGap;
import org.holdproof.core.rules.SurfaceRule;
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

    private static final List<String> OVENS = List.of(
            "id",
            "title",
            "document",
            "section",
            "oven",
            "piece_at_least_kg",
            "piece_below_kg",
            "temperature",
            "unit",
            "comparison",
            "humidity_above_percent",
            "humidity_minutes",
            "source",
            "how",
            "note");
    private static final List<String> GAPS = List.of(
            "id",
            "title",
            "document",
            "section",
            "waives",
            "species",
            "forms",
            "cuts",
            "vulnerability",
            "source",
            "how",
            "note");
    private static final List<String> PARASITES = List.of(
            "id",
            "title",
            "jurisdiction",
            "document",
            "section",
            "applies",
            "alternative",
            "temperature",
            "unit",
            "comparison",
            "minutes",
            "source",
            "how",
            "note");
    private static final List<String> SURFACE = List.of(
            "id",
            "title",
            "jurisdiction",
            "document",
            "section",
            "applies",
            "temperature",
            "unit",
            "seconds",
            "depth_mm",
            "source",
            "how",
            "note");
    private static final List<String> ALLOWANCES = List.of(
            "id",
            "title",
            "jurisdiction",
            "document",
            "section",
            "applies",
            "count",
            "band",
            "max_minutes",
            "comparison",
            "outcome",
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

    public RuleSet<HumidityOption> humidity() throws UnreadableInputException {
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
        return new RuleSet<>(HumidityOption.class, "Surface moisture", "humidity.csv", options.values());
    }

    public RuleSet<OvenCondition> ovens() throws UnreadableInputException {
        Map<String, OvenCondition> ovens = new LinkedHashMap<>();
        for (CsvRow row : files.rows("oven-conditions", OVENS)) {
            row.putUnder(
                    ovens,
                    new OvenCondition(
                            row.required("id"),
                            row.required("title"),
                            row.choice("oven", OvenCondition.Oven.values()),
                            row.numberIfAny("piece_at_least_kg", 0, 100),
                            row.numberIfAny("piece_below_kg", 0, 100),
                            row.boundary("temperature", "unit", 0, 300),
                            row.choice("comparison", Comparison.values()),
                            row.numberIfAny("humidity_above_percent", 0, 100),
                            row.numberIfAny("humidity_minutes", 0, WEEK_MINUTES),
                            sources.citation(row)));
        }
        return new RuleSet<>(OvenCondition.class, "Ovens for roasts", "oven-conditions.csv", ovens.values());
    }

    public RuleSet<SupportGap> gaps() throws UnreadableInputException {
        Map<String, SupportGap> gaps = new LinkedHashMap<>();
        for (CsvRow row : files.rows("gaps", GAPS)) {
            row.putUnder(
                    gaps,
                    new SupportGap(
                            row.required("id"),
                            row.required("title"),
                            row.choice("waives", SupportGap.Waives.values()),
                            row.choices("species", Species.values()),
                            row.choices("forms", Form.values()),
                            row.list("cuts"),
                            row.required("vulnerability"),
                            sources.citation(row)));
        }
        return new RuleSet<>(SupportGap.class, "Gaps of published support", "gaps.csv", gaps.values());
    }

    public RuleSet<ParasiteRule> parasites() throws UnreadableInputException {
        Map<String, ParasiteRule> rules = new LinkedHashMap<>();
        for (List<CsvRow> rows :
                RuleFiles.together(files.rows("parasites", PARASITES)).values()) {
            CsvRow first = rows.get(0);
            List<ParasiteRule.Way> ways = new ArrayList<>();
            for (CsvRow row : rows) {
                RuleFiles.requirePart(
                        row,
                        "alternative",
                        ways.size() + 1,
                        List.of("title", "jurisdiction", "document", "section", "applies", "source", "how", "note"));
                ways.add(new ParasiteRule.Way(
                        row.boundary("temperature", "unit", -80, 100),
                        row.choice("comparison", Comparison.values()),
                        row.number("minutes", 0, 60 * 1440)));
            }
            first.putUnder(
                    rules,
                    new ParasiteRule(
                            first.required("id"),
                            first.required("title"),
                            first.required("jurisdiction"),
                            first.required("applies"),
                            ways,
                            sources.citation(first)));
        }
        return new RuleSet<>(ParasiteRule.class, "Parasites", "parasites.csv", rules.values());
    }

    public RuleSet<SurfaceRule> surfaces() throws UnreadableInputException {
        Map<String, SurfaceRule> rules = new LinkedHashMap<>();
        for (CsvRow row : files.rows("surface", SURFACE)) {
            row.putUnder(
                    rules,
                    new SurfaceRule(
                            row.required("id"),
                            row.required("title"),
                            row.required("jurisdiction"),
                            row.required("applies"),
                            row.boundary("temperature", "unit", 40, 130),
                            row.number("seconds", 0, 86_400),
                            row.numberIfAny("depth_mm", 0, 100),
                            sources.citation(row)));
        }
        return new RuleSet<>(SurfaceRule.class, "Surfaces of intact pieces", "surface.csv", rules.values());
    }

    /** Each band may cite a document of its own; where it does not, it stands in the one before it. */
    public RuleSet<HotAllowance> allowances() throws UnreadableInputException {
        Map<String, HotAllowance> allowances = new LinkedHashMap<>();
        for (List<CsvRow> rows :
                RuleFiles.together(files.rows("allowances", ALLOWANCES)).values()) {
            CsvRow first = rows.get(0);
            List<HotAllowance.Band> bands = new ArrayList<>();
            Citation citation = sources.citation(first);
            for (int i = 0; i < rows.size(); i++) {
                CsvRow row = rows.get(i);
                RuleFiles.requirePart(row, "band", i + 1, List.of("title", "jurisdiction", "applies", "count"));
                citation = row.isBlank("document") ? citation : sources.citation(row);
                bands.add(band(row, i == rows.size() - 1, citation));
            }
            first.putUnder(
                    allowances,
                    new HotAllowance(
                            first.required("id"),
                            first.required("title"),
                            first.required("jurisdiction"),
                            first.required("applies"),
                            first.choice("count", TimeLimit.Count.values()),
                            bands,
                            citation));
        }
        return new RuleSet<>(HotAllowance.class, "Time under hot holding", "allowances.csv", allowances.values());
    }

    private static HotAllowance.Band band(CsvRow row, boolean last, Citation citation) throws UnreadableInputException {
        OptionalDouble minutes = row.numberIfAny("max_minutes", 1, WEEK_MINUTES);
        Comparison comparison = row.choice("comparison", Comparison.values());
        if (comparison.isFloor()) {
            throw row.fault("comparison", "at-most or below", "A time limit is an upper limit.");
        }
        if (last != minutes.isEmpty()) {
            throw row.fault(
                    "max_minutes",
                    last ? "an empty cell: the last band is open" : "the band's longest time",
                    "Correct the time, or add the open band.");
        }
        return new HotAllowance.Band(
                minutes, comparison, row.choice("outcome", HotAllowance.Outcome.values()), citation);
    }

    public RuleSet<TimeLimit> timeLimits() throws UnreadableInputException {
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
        return new RuleSet<>(TimeLimit.class, "Time as a control", "time-limits.csv", limits.values());
    }

    public RuleSet<ShelfLifeRule> shelfLives() throws UnreadableInputException {
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
        return new RuleSet<>(ShelfLifeRule.class, "Shelf life", "shelf-life.csv", lives.values());
    }

    public RuleSet<ExposureRule> exposures() throws UnreadableInputException {
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
        return new RuleSet<>(ExposureRule.class, "Time in bands of temperature", "exposure.csv", rules.values());
    }
}
