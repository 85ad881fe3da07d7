package org.holdproof.core.assess;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.holdproof.core.CheckValues;
import org.holdproof.core.assess.TimeAsControl.TimeOut;
import org.holdproof.core.batch.Instrument;
import org.holdproof.core.course.InstrumentStanding;
import org.holdproof.core.heat.BoilingTemperature;
import org.holdproof.core.kinetics.Traces;
import org.holdproof.core.log.Trace;
import org.holdproof.core.measure.BandTime;
import org.holdproof.core.measure.CoolingClock;
import org.holdproof.core.measure.HeldLevel;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Comparison;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.CoolingRule;
import org.holdproof.core.rules.ExposureRule;
import org.holdproof.core.rules.HoldingRule;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.core.rules.LethalityTable;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.rules.ShelfLifeRule;
import org.holdproof.core.rules.TimeLimit;
import org.holdproof.core.rules.WrittenRule;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** The check values told by figures beside a log or without one, each with the source it names. */
class OtherCheckValuesTest {
    private static final RuleLibrary LIBRARY = RuleLibrary.builtIn();

    /** Told by a regulator's extension service in words; no log and no dimension of the vessel to compute it from. */
    private static final String WITHOUT_FIGURES = "COOL-082";

    /** The rows this class answers: all but those with a log the other classes read. */
    private static final Set<String> OTHERS = Set.of(
            "COOL-038",
            "COOL-080",
            "COOL-081",
            "HOLD-013",
            "HOLD-014",
            "HOLD-015",
            "HOLD-016",
            "HOLD-017",
            "HOLD-018",
            "HOLD-019",
            "HOLD-020",
            "HOLD-021",
            "HOLD-022",
            "REH-007",
            "TIME-001",
            "TIME-002",
            "TIME-003",
            "TIME-004",
            "TIME-005",
            "TIME-006",
            "TIME-007",
            "TIME-008",
            "TIME-009",
            "TIME-010",
            "TIME-011",
            "ROP-001",
            "ROP-002",
            "ROP-003",
            "ROP-004",
            "ROP-005",
            "ROP-006",
            "ROP-007",
            "ROP-008",
            "ROP-009",
            "ROP-010",
            "ROP-011",
            "ROP-012",
            "DATE-001",
            "DATE-002",
            "DATE-003",
            "DATE-004",
            "DATE-005",
            "MEAS-001",
            "MEAS-002",
            "MEAS-003",
            "MEAS-004",
            "MEAS-005",
            "MEAS-006",
            "MEAS-007",
            "MEAS-008",
            "MEAS-009");

    static Stream<Arguments> others() {
        return CheckValues.rows("holding.csv").stream()
                .filter(row -> OTHERS.contains(row.getField("case_id")))
                .map(row ->
                        Arguments.of(row.getField("case_id"), row.getField("rule_id"), row.getField("source_id"), row));
    }

    @ParameterizedTest(name = "{0} {1} [{2}]")
    @MethodSource("others")
    void theRuleIsKeptOrNot(String id, String rule, String source, NamedCsvRecord row) {
        boolean kept =
                switch (id.substring(0, id.indexOf('-'))) {
                    case "COOL" -> cooled(id, row);
                    case "HOLD" -> held(row);
                    case "REH" -> reheatedAsRoast(row);
                    case "TIME" -> timed(row);
                    case "ROP" -> packed(id, row);
                    case "DATE" -> dated(row);
                    case "MEAS" -> measured(id, row);
                    default -> throw new IllegalStateException("a check value nobody tests: " + id);
                };

        assertThat(kept)
                .as(row.getField("why"))
                .isEqualTo(row.getField("expected_result").equals("PASS"));
    }

    @Test
    void everyRowOfTheFileBelongsToATest() {
        Set<String> all = CheckValues.rows("holding.csv").stream()
                .map(row -> row.getField("case_id"))
                .collect(Collectors.toCollection(TreeSet::new));
        Set<String> answered = new TreeSet<>(OTHERS);
        Stream.of(
                        CoolingCheckValuesTest.coolingSeries(),
                        HoldingCheckValuesTest.held(),
                        HoldingCheckValuesTest.reheated())
                .flatMap(cases -> cases)
                .forEach(arguments -> answered.add((String) arguments.get()[0]));
        answered.add(WITHOUT_FIGURES);

        assertThat(answered).isEqualTo(all);
    }

    private static boolean cooled(String id, NamedCsvRecord row) {
        CoolingRule rule =
                LIBRARY.rules(CoolingRule.class).find(row.getField("rule_id")).orElseThrow();
        if (id.equals("COOL-038")) {
            assertThat(row.getField("expected_result")).isEqualTo("NOT_APPLICABLE");
            return rule.isOpenTo(Cooks.BRISKET);
        }
        double hours = figure(row, "hours_to_41F[>~]").orElseThrow();
        Trace slow = Traces.fahrenheit(0, 135, hours * 60, 41.001);
        CoolingClock.StageTime total = CoolingClock.straight(slow, Double.POSITIVE_INFINITY, CoolingClock.Events.NONE)
                .time(rule)
                .get(1);
        assertThat(total.limitMillis().orElseThrow() / 60_000.0).isEqualTo(CheckValues.number(row, "fail_time_min"));
        return CoolingClock.judge(total) != Verdict.NOT_MET;
    }

    private static boolean held(NamedCsvRecord row) {
        String ruleId = row.getField("rule_id");
        Optional<TimeLimit> limit = LIBRARY.rules(TimeLimit.class).find(ruleId);
        if (limit.isPresent()) {
            double right = limit.get().hotStart().map(Boundary::celsius).orElse(0.0);
            List<Double> spells = spells(row);
            double beyond = figure(row, "minutes_(?:below_63|above_8)=").orElse(0);
            return TimeAsControl.keeps(
                    limit.get(), new TimeOut(spells.isEmpty() ? List.of(beyond) : spells, right, right, true, (int)
                            figure(row, "previous_periods=").orElse(0)));
        }
        if (ruleId.equals("US-FDA-FISH-RAW1")) {
            return Exposure.keeps(LIBRARY.rules(ExposureRule.class).find(ruleId).orElseThrow(), band -> figure(
                            row,
                            "minutes_" + Math.round(band.from().value()) + "_"
                                    + Math.round(band.to().value()) + "=")
                    .orElseThrow());
        }
        HoldingRule rule = LIBRARY.rules(HoldingRule.class).find(ruleId).orElseThrow();
        Trace trace = CheckValues.trace(row);
        Bounded minutes = rule.kind() == HoldingRule.Kind.LOW_COOK
                ? LowCookCheck.minutesBelow(trace, rule, 0)
                : BandTime.minutes(
                        trace,
                        rule.from().orElseThrow().celsius(),
                        rule.limit().orElseThrow().celsius(),
                        0);
        Matcher printed = Pattern.compile("^([0-9.]+)$").matcher(row.getField("stage_minutes"));
        if (printed.find()) {
            assertThat(minutes.nominal()).isCloseTo(Double.parseDouble(printed.group(1)), within(0.05));
        }
        return rule.timeComparison().holds(minutes.nominal(), rule.maxMinutes().orElseThrow(), Check.FIGURE_SLACK);
    }

    /** The roast's own door: reheated by the table it was cooked by. */
    private static boolean reheatedAsRoast(NamedCsvRecord row) {
        List<LethalityRow> rows = LIBRARY.rules(LethalityTable.class)
                .find("us-food-code-roasts")
                .orElseThrow()
                .rows();
        return RowJudgement.of(CheckValues.trace(row), rows, 0, Double.POSITIVE_INFINITY)
                .nominallyMet();
    }

    private static boolean timed(NamedCsvRecord row) {
        TimeLimit limit =
                LIBRARY.rules(TimeLimit.class).find(row.getField("rule_id")).orElseThrow();
        TemperatureUnit unit =
                row.getField("series_unit").equals("F") ? TemperatureUnit.FAHRENHEIT : TemperatureUnit.CELSIUS;
        double cold = limit.coldStart().map(Boundary::celsius).orElse(0.0);
        double start = figure(row, "start_temp=").stream()
                .map(unit::toCelsius)
                .findFirst()
                .orElse(cold);
        double warmest = start;
        List<Double> spells = spells(row);
        if (!row.getField("series_min_temp").isEmpty()) {
            Trace trace = CheckValues.trace(row);
            Boundary ceiling = limit.ceiling().orElseThrow();
            HeldLevel level =
                    HeldLevel.of(trace, limit.ceilingComparison(), ceiling.celsius(), 0, Double.POSITIVE_INFINITY);
            warmest = level.celsius().nominal();
            spells = List.of(trace.lastMillis() / 60_000.0);
            if (!row.getField("fail_time_min").isEmpty()) {
                assertThat(level.breachMillis().orElseThrow() / 60_000.0)
                        .isCloseTo(CheckValues.number(row, "fail_time_min"), within(0.1));
            }
        } else if (spells.isEmpty()) {
            spells = List.of(figure(row, "minutes=").orElseThrow());
        }
        boolean marked = !row.getField("other_inputs").contains("marked=false");
        return TimeAsControl.keeps(limit, new TimeOut(spells, start, warmest, marked, 0));
    }

    private static boolean packed(String id, NamedCsvRecord row) {
        String ruleId = row.getField("rule_id");
        return switch (id) {
            case "ROP-001", "ROP-002", "ROP-003" -> {
                WrittenRule seal = LIBRARY.rules(WrittenRule.class).find(ruleId).orElseThrow();
                double core = figure(row, "core_at_seal=").orElseThrow();
                assertThat(seal.unit()).isEqualTo("F");
                yield seal.comparison().orElseThrow().holds(core, seal.value().orElseThrow(), 1e-9);
            }
            case "ROP-004", "ROP-005" -> {
                LocalDate last = ShelfLife.lastDay(
                        shelfLife(ruleId),
                        date(row, "packaged"),
                        Optional.of(date(row, "removed_from_34F")),
                        Optional.empty());
                yield last.equals(date(row, "expected_last_day"));
            }
            case "ROP-006" ->
                ShelfLife.lastDay(shelfLife(ruleId), date(row, "packaged"), Optional.empty(), Optional.empty())
                        .equals(date(row, "expected_last_day"));
            case "ROP-007" ->
                TimeAsControl.keeps(
                        LIBRARY.rules(TimeLimit.class).find(ruleId).orElseThrow(),
                        new TimeOut(
                                List.of(figure(row, "minutes_since_packaging=").orElseThrow()), 0, 0, true, 0));
            case "ROP-008" -> {
                WrittenRule twice =
                        LIBRARY.rules(WrittenRule.class).find(ruleId).orElseThrow();
                yield twice.comparison()
                        .orElseThrow()
                        .holds(
                                figure(row, "signed_checks_per_day=").orElseThrow(),
                                twice.value().orElseThrow(),
                                0);
            }
            case "ROP-009" -> {
                LocalDate packed = LocalDate.of(2031, 3, 1);
                LocalDate day = packed.plusDays((long) figure(row, "days=").orElseThrow());
                yield !day.isAfter(ShelfLife.lastDay(shelfLife(ruleId), packed, Optional.empty(), Optional.empty()));
            }
            default ->
                RowJudgement.of(
                                CheckValues.trace(row),
                                LIBRARY.rules(LethalityTable.class)
                                        .find("uk-90c-10min")
                                        .orElseThrow()
                                        .rows(),
                                0,
                                Double.POSITIVE_INFINITY)
                        .nominallyMet();
        };
    }

    private static boolean dated(NamedCsvRecord row) {
        LocalDate prepared = row.getField("other_inputs").contains("oldest_ingredient")
                ? date(row, "oldest_ingredient")
                : date(row, "prepared");
        Optional<ShelfLife.Frozen> frozen = row.getField("other_inputs").contains("frozen=")
                ? Optional.of(new ShelfLife.Frozen(date(row, "frozen"), date(row, "thawed")))
                : Optional.empty();
        return ShelfLife.lastDay(shelfLife(row.getField("rule_id")), prepared, Optional.empty(), frozen)
                .equals(date(row, "expected_last_day"));
    }

    private static boolean measured(String id, NamedCsvRecord row) {
        OptionalDouble reading = figure(row, "(?:^|;)reading=");
        return switch (id) {
            case "MEAS-001", "MEAS-002" -> keepsTolerance(id, row, instrument(Instrument.Method.ICE_POINT, reading, 0));
            case "MEAS-003" -> keepsTolerance(id, row, instrument(Instrument.Method.BOILING_POINT, reading, 0));
            case "MEAS-004", "MEAS-005" -> {
                assertThat(BoilingTemperature.atAltitude(1500))
                        .isCloseTo(figure(row, "expected=").orElseThrow(), within(0.005));
                yield Math.abs(instrument(Instrument.Method.BOILING_POINT, reading, 1500))
                        <= figure(row, "tolerance=").orElseThrow();
            }
            case "MEAS-006" -> {
                double metres = figure(row, "altitude_ft=").orElseThrow() * 0.3048;
                double celsius = TemperatureUnit.FAHRENHEIT.toCelsius(reading.orElseThrow());
                yield Math.abs(TemperatureUnit.CELSIUS.differenceToCelsius(
                                        celsius - BoilingTemperature.atAltitude(metres))
                                * 1.8)
                        <= figure(row, "tolerance=").orElseThrow();
            }
            case "MEAS-007" -> {
                assertThat(BoilingTemperature.atPressure(95))
                        .isCloseTo(figure(row, "expected=").orElseThrow(), within(0.0005));
                yield Math.abs(reading.orElseThrow() - BoilingTemperature.atPressure(95))
                        <= figure(row, "tolerance=").orElseThrow();
            }
            case "MEAS-008" ->
                GuidelineCases.answer("L102")
                        .equals(Long.toString(
                                Math.round(figure(row, "expected_limit=").orElseThrow())));
            default -> {
                double limit = TemperatureUnit.FAHRENHEIT.toCelsius(145);
                yield Stream.of(148.0, 147.0, 141.0)
                        .map(fahrenheit -> HeldLevel.of(
                                Traces.fahrenheit(0, fahrenheit, 1, fahrenheit), Comparison.AT_LEAST, limit, 0, 5))
                        .allMatch(level -> level.judge(Comparison.AT_LEAST, limit) == Verdict.MET);
            }
        };
    }

    private static boolean keepsTolerance(String id, NamedCsvRecord row, double errorCelsius) {
        WrittenRule rule =
                LIBRARY.rules(WrittenRule.class).find(row.getField("rule_id")).orElseThrow();
        assertThat(rule.unit()).as(id).isEqualTo("C");
        return Math.abs(errorCelsius) <= rule.tolerance().orElseThrow();
    }

    private static double instrument(Instrument.Method method, OptionalDouble reading, double altitudeMetres) {
        return InstrumentStanding.errorCelsius(new Instrument.InstrumentCheck(
                LocalDate.of(2031, 1, 1),
                method,
                reading.orElseThrow(),
                OptionalDouble.empty(),
                OptionalDouble.of(altitudeMetres)));
    }

    private static ShelfLifeRule shelfLife(String id) {
        return LIBRARY.rules(ShelfLifeRule.class).find(id).orElseThrow();
    }

    private static OptionalDouble figure(NamedCsvRecord row, String name) {
        Matcher matcher = Pattern.compile(name + "(-?[0-9.]+)").matcher(row.getField("other_inputs"));
        return matcher.find() ? OptionalDouble.of(Double.parseDouble(matcher.group(1))) : OptionalDouble.empty();
    }

    private static List<Double> spells(NamedCsvRecord row) {
        Matcher matcher = Pattern.compile("spells_min=([0-9.+]+)").matcher(row.getField("other_inputs"));
        return matcher.find()
                ? Pattern.compile("\\+")
                        .splitAsStream(matcher.group(1))
                        .map(Double::valueOf)
                        .toList()
                : List.of();
    }

    private static LocalDate date(NamedCsvRecord row, String name) {
        Matcher matcher = Pattern.compile("(?:^|;)" + name + "=([0-9-]+)").matcher(row.getField("other_inputs"));
        assertThat(matcher.find()).as(name).isTrue();
        return LocalDate.parse(matcher.group(1));
    }
}
