package org.holdproof.core.rules.loading;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.holdproof.core.input.CsvRow;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.Comparison;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.CoolingRule;
import org.holdproof.core.rules.CoolingRule.Clock;
import org.holdproof.core.rules.CoolingRule.Condition;
import org.holdproof.core.rules.CoolingRule.Start;
import org.holdproof.core.rules.HoldingRule;
import org.holdproof.core.rules.HoldingRule.Kind;
import org.holdproof.core.rules.LethalityTable;
import org.holdproof.core.rules.ReheatingRule;
import org.holdproof.core.rules.RuleSet;
import org.holdproof.core.rules.ThermalDeath;
import org.holdproof.core.rules.WrittenRule;

/** Reads kinetics and the rules on cooling, holding and reheating, and the rules that are words first. */
public final class RuleFiles {
    private static final List<String> RULE = List.of("id", "title", "jurisdiction", "document", "section", "applies");
    private static final List<String> END =
            List.of("conditions", "corrective_action", "status", "source", "how", "note");
    private static final List<String> KINETICS = List.of(
            "id",
            "title",
            "organism",
            "d_minutes",
            "reference",
            "unit",
            "z",
            "floor",
            "cap",
            "bounds_unit",
            "target_log10",
            "source",
            "document",
            "section",
            "how",
            "note");
    private static final List<String> COOLING = columns(
            RULE,
            List.of(
                    "stage",
                    "start",
                    "from",
                    "to",
                    "unit",
                    "max_minutes",
                    "comparison",
                    "clock",
                    "nitrite_ppm",
                    "brine_percent",
                    "intact_only"),
            END);
    /** What the first row of a cooling rule says for the whole rule. */
    private static final List<String> COOLING_RULE =
            columns(RULE.subList(1, RULE.size()), List.of("nitrite_ppm", "brine_percent", "intact_only"), END);

    private static final List<String> HOLDING = columns(
            RULE, List.of("kind", "limit", "from", "unit", "comparison", "max_minutes", "time_comparison"), END);
    private static final List<String> REHEATING = columns(
            RULE,
            List.of(
                    "alternative",
                    "target",
                    "unit",
                    "comparison",
                    "hold_seconds",
                    "table",
                    "from",
                    "max_minutes",
                    "time_comparison"),
            END);
    /** What the first row of a reheating rule says for all its alternatives. */
    private static final List<String> REHEATING_RULE =
            columns(RULE.subList(1, RULE.size()), List.of("table", "from", "max_minutes", "time_comparison"), END);

    private static final List<String> WRITTEN = List.of(
            "id",
            "jurisdiction",
            "document",
            "section",
            "applies",
            "topic",
            "requirement",
            "comparison",
            "value",
            "tolerance",
            "unit",
            "status",
            "source",
            "how",
            "note");
    /** The measurement table also says at which altitude or pressure a boiling point holds. */
    static final List<String> MEASUREMENT = columns(WRITTEN, List.of("altitude_m", "pressure_kpa"), List.of());

    private static final double COLDEST = -40;
    private static final double HOTTEST = 130;
    private static final double LONGEST_MINUTES = 400 * 1440.0;

    private final TableFiles files;
    private final Sources sources;

    public RuleFiles(TableFiles files, Sources sources) {
        this.files = files;
        this.sources = sources;
    }

    private static List<String> columns(List<String> first, List<String> second, List<String> third) {
        return Stream.of(first, second, third).flatMap(List::stream).toList();
    }

    public RuleSet<ThermalDeath> kinetics() throws UnreadableInputException {
        Map<String, ThermalDeath> kinetics = new LinkedHashMap<>();
        for (CsvRow row : files.rows("kinetics", KINETICS)) {
            TemperatureUnit unit = row.unit("unit");
            Boundary floor = row.boundary("floor", "bounds_unit", 40, 150);
            Boundary cap = row.boundary("cap", "bounds_unit", 40, 150);
            if (floor.value() > cap.value()) {
                throw row.fault("floor", "at most the cap " + cap.text(), "Correct one of the two.");
            }
            row.putUnder(
                    kinetics,
                    new ThermalDeath(
                            row.required("id"),
                            row.required("title"),
                            row.required("organism"),
                            row.number("d_minutes", 1e-6, 1e6),
                            row.boundary("reference", "unit", 0, 150).celsius(),
                            unit.differenceToCelsius(row.number("z", 0.5, 100)),
                            floor.celsius(),
                            cap.celsius(),
                            row.numberIfAny("target_log10", 0.1, 20),
                            sources.citation(row)));
        }
        return new RuleSet<>(ThermalDeath.class, "Kinetics", "kinetics.csv", kinetics.values());
    }

    public RuleSet<CoolingRule> cooling() throws UnreadableInputException {
        Map<String, CoolingRule> rules = new LinkedHashMap<>();
        for (Map.Entry<String, List<CsvRow>> rule :
                together(files.rows("cooling", COOLING)).entrySet()) {
            rules.put(rule.getKey(), coolingRule(rule.getValue()));
        }
        return new RuleSet<>(CoolingRule.class, "Cooling", "cooling.csv", rules.values());
    }

    /** The rows of each rule, which stand together. */
    static Map<String, List<CsvRow>> together(List<CsvRow> rows) throws UnreadableInputException {
        Map<String, List<CsvRow>> byRule = new LinkedHashMap<>();
        String previous = "";
        for (CsvRow row : rows) {
            String id = row.required("id");
            if (!id.equals(previous) && byRule.containsKey(id)) {
                throw row.fault("id", "an id of its own, its rows together", "Give the rule another id, or sort it.");
            }
            byRule.computeIfAbsent(id, key -> new ArrayList<>()).add(row);
            previous = id;
        }
        return byRule;
    }

    /** Requires a part's number, and that what holds for the whole rule is said in its first row only. */
    static void requirePart(CsvRow row, String column, int number, List<String> ofTheWhole)
            throws UnreadableInputException {
        if (row.count(column, 1, 20) != number) {
            throw row.fault(column, column + " " + number, "Number them 1, 2, 3 in the document's order.");
        }
        if (number > 1) {
            for (String whole : ofTheWhole) {
                if (!row.isBlank(whole)) {
                    throw row.fault(whole, "an empty cell", "Say it once, in the row of " + column + " 1.");
                }
            }
        }
    }

    private CoolingRule coolingRule(List<CsvRow> rows) throws UnreadableInputException {
        CsvRow first = rows.get(0);
        List<CoolingRule.Stage> stages = new ArrayList<>();
        for (CsvRow row : rows) {
            stages.add(stage(row, stages.size() + 1));
        }
        return new CoolingRule(
                first.required("id"),
                first.required("title"),
                first.required("jurisdiction"),
                first.required("applies"),
                stages,
                new Condition(
                        first.numberIfAny("nitrite_ppm", 0, 10_000),
                        first.numberIfAny("brine_percent", 0, 100),
                        first.yes("intact_only")),
                first.text("corrective_action"),
                sources.citation(first, first.text("conditions")));
    }

    private static CoolingRule.Stage stage(CsvRow row, int number) throws UnreadableInputException {
        requirePart(row, "stage", number, COOLING_RULE);
        CoolingRule.Stage stage = new CoolingRule.Stage(
                number,
                row.choice("start", Start.values()),
                row.boundaryIfAny("from", "unit", COLDEST, HOTTEST),
                row.boundaryIfAny("to", "unit", COLDEST, HOTTEST),
                row.numberIfAny("max_minutes", 1, LONGEST_MINUTES),
                timeComparison(row, "comparison"),
                row.choice("clock", Clock.values()));
        requireMeaning(row, stage);
        return stage;
    }

    private static void requireMeaning(CsvRow row, CoolingRule.Stage stage) throws UnreadableInputException {
        boolean timed = stage.clock() == Clock.ELAPSED || stage.clock() == Clock.DWELL;
        if (timed != stage.maxMinutes().isPresent()) {
            throw row.fault(
                    "max_minutes",
                    timed ? "a limit for an elapsed or dwell clock" : "no limit for a growth or none clock",
                    "Correct the limit or the clock.");
        }
        boolean needsFrom = stage.clock() == Clock.DWELL || (timed && stage.start() == Start.FALLS_THROUGH);
        if (needsFrom && stage.from().isEmpty()) {
            throw row.fault("from", "the temperature the clock starts at", "Fill the cell from the document.");
        }
        if (stage.clock() == Clock.DWELL && stage.to().isEmpty()) {
            throw row.fault("to", "the temperature the band ends at", "Fill the cell from the document.");
        }
        if (stage.from().isPresent()
                && stage.to().isPresent()
                && stage.from().get().value() <= stage.to().get().value()) {
            throw row.fault("to", "less than " + stage.from().get().text(), "Correct one of the two: food cools.");
        }
        boolean leansOnFirst = stage.start() == Start.SAME_AS_FIRST || stage.start() == Start.AFTER_PREVIOUS;
        if (leansOnFirst && stage.number() == 1) {
            throw row.fault("start", "a start of its own in stage 1", "Name the event that starts the first stage.");
        }
    }

    public RuleSet<HoldingRule> holding() throws UnreadableInputException {
        Map<String, HoldingRule> rules = new LinkedHashMap<>();
        for (CsvRow row : files.rows("holding", HOLDING)) {
            HoldingRule rule = new HoldingRule(
                    row.required("id"),
                    row.required("title"),
                    row.required("jurisdiction"),
                    row.required("applies"),
                    row.choice("kind", Kind.values()),
                    row.boundaryIfAny("limit", "unit", COLDEST, HOTTEST),
                    row.boundaryIfAny("from", "unit", COLDEST, HOTTEST),
                    row.choice("comparison", Comparison.values()),
                    row.numberIfAny("max_minutes", 1, LONGEST_MINUTES),
                    timeComparison(row, "time_comparison"),
                    row.text("corrective_action"),
                    sources.citation(row, row.text("conditions")));
            requireMeaning(row, rule);
            row.putUnder(rules, rule);
        }
        return new RuleSet<>(HoldingRule.class, "Holding and come-up", "holding.csv", rules.values());
    }

    private static void requireMeaning(CsvRow row, HoldingRule rule) throws UnreadableInputException {
        if (rule.kind() == Kind.COME_UP
                && (rule.limit().isEmpty()
                        || rule.from().isEmpty()
                        || rule.from().get().value() >= rule.limit().get().value()
                        || rule.maxMinutes().isEmpty())) {
            throw row.fault(
                    "kind",
                    "for a come-up rule a from below its limit, and max_minutes",
                    "Fill from, limit and max_minutes from the document.");
        }
        boolean floor = rule.comparison().isFloor();
        if ((rule.kind() == Kind.HOT_MINIMUM && !floor) || (rule.kind() == Kind.COLD_MAXIMUM && floor)) {
            throw row.fault(
                    "comparison",
                    rule.kind() == Kind.HOT_MINIMUM ? "at-least or above" : "at-most or below",
                    "Turn the comparison round, or correct the kind.");
        }
    }

    /**
     * The reheating rules.
     *
     * @param tables the cooking tables a rule may name as its targets
     */
    public RuleSet<ReheatingRule> reheating(RuleSet<LethalityTable> tables) throws UnreadableInputException {
        Map<String, ReheatingRule> rules = new LinkedHashMap<>();
        for (List<CsvRow> rows : together(files.rows("reheating", REHEATING)).values()) {
            CsvRow first = rows.get(0);
            first.putUnder(rules, reheatingRule(rows, tables));
        }
        return new RuleSet<>(ReheatingRule.class, "Reheating", "reheating.csv", rules.values());
    }

    private ReheatingRule reheatingRule(List<CsvRow> rows, RuleSet<LethalityTable> tables)
            throws UnreadableInputException {
        CsvRow first = rows.get(0);
        List<ReheatingRule.Target> targets = new ArrayList<>();
        for (int i = 0; i < rows.size(); i++) {
            requirePart(rows.get(i), "alternative", i + 1, REHEATING_RULE);
            target(rows.get(i)).ifPresent(targets::add);
        }
        Optional<LethalityTable> table = first.isBlank("table") ? Optional.empty() : tables.find(first.text("table"));
        if (table.isEmpty() && !first.isBlank("table")) {
            throw first.fault("table", "an id of " + tables.file(), "Correct the id, or add the table.");
        }
        return new ReheatingRule(
                first.required("id"),
                first.required("title"),
                first.required("jurisdiction"),
                first.required("applies"),
                targets,
                table,
                first.boundaryIfAny("from", "unit", COLDEST, HOTTEST),
                first.numberIfAny("max_minutes", 1, LONGEST_MINUTES),
                timeComparison(first, "time_comparison"),
                first.text("conditions"),
                first.text("corrective_action"),
                sources.citation(first));
    }

    private static Optional<ReheatingRule.Target> target(CsvRow row) throws UnreadableInputException {
        Comparison comparison = row.choice("comparison", Comparison.values());
        if (!comparison.isFloor()) {
            throw row.fault("comparison", "at-least or above", "Food is reheated to a target, not below one.");
        }
        double hold = row.number("hold_seconds", 0, 86_400);
        Optional<Boundary> at = row.boundaryIfAny("target", "unit", 30, HOTTEST);
        return at.map(found -> new ReheatingRule.Target(found, comparison, hold));
    }

    private static Comparison timeComparison(CsvRow row, String column) throws UnreadableInputException {
        Comparison comparison = row.choice(column, Comparison.values());
        if (comparison.isFloor()) {
            throw row.fault(column, "at-most or below", "A time limit is an upper limit.");
        }
        return comparison;
    }

    /** The rules of all groups; a group is also its file's name. */
    public RuleSet<WrittenRule> written(List<String> groups) throws UnreadableInputException {
        Map<String, WrittenRule> rules = new LinkedHashMap<>();
        for (String group : groups) {
            for (CsvRow row : files.rows(group, group.equals("measurement") ? MEASUREMENT : WRITTEN)) {
                row.putUnder(
                        rules,
                        new WrittenRule(
                                row.required("id"),
                                group,
                                row.required("jurisdiction"),
                                row.text("applies"),
                                row.required("topic"),
                                row.required("requirement"),
                                row.isBlank("comparison")
                                        ? Optional.empty()
                                        : Optional.of(row.choice("comparison", Comparison.values())),
                                row.numberIfAny("value", -1e6, 1e6),
                                row.numberIfAny("tolerance", 0, 1e6),
                                row.text("unit"),
                                sources.citation(row)));
            }
        }
        return new RuleSet<>(
                WrittenRule.class, "Rules that are words first", String.join(", ", groups), rules.values());
    }
}
