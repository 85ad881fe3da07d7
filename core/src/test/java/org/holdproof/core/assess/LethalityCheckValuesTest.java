package org.holdproof.core.assess;

import static java.util.Map.entry;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.holdproof.core.CheckValues;
import org.holdproof.core.kinetics.LethalRate;
import org.holdproof.core.kinetics.Traces;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.core.rules.LethalityTable;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.verdict.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Every lethality check value, each with the source it names, at the precision it is published at. */
class LethalityCheckValuesTest {
    private static final double NONE_BELOW = Double.NEGATIVE_INFINITY;
    private static final double NO_CAP = Double.POSITIVE_INFINITY;

    /** The check values' names of the published tables. */
    private static final Map<String, String> TABLES = Map.ofEntries(
            entry("FSIS 2021 Table 2, 6.5 log", "fsis-2021-meat-6.5-log"),
            entry("FSIS 2021 Table 2, 6.5 log (Fahrenheit governs)", "fsis-2021-meat-6.5-log"),
            entry("FSIS 2021 Table 2, 7.0 log", "fsis-2021-meat-7-log"),
            entry("FSIS 2021 Table 6, 5 log", "fsis-2021-meat-5-log"),
            entry("FSIS 2021 Table 3, 7 log", "fsis-2021-chicken-7-log"),
            entry("FSIS 2021, fat above 12 % or unknown", "fsis-2021-chicken-7-log"),
            entry("FSIS 2021 Table 4, 7 log", "fsis-2021-turkey-7-log"),
            entry("FSIS 2021, other or mixed poultry", "fsis-2021-other-poultry-7-log"),
            entry("CFIA Table 1, 6.5 log (Celsius governs)", "ca-cfia-table-1-6.5-log"),
            entry("CFIA Table 1, 6.5 log", "ca-cfia-table-1-6.5-log"),
            entry("FDA Food Code 2017 3-401.11(A)(2)", "us-food-code-a2"),
            entry("FDA Food Code 2013 3-401.11(A)(2)", "us-food-code-2013-a2"),
            entry("FDA Food Code 2013 3-401.11(B)", "us-food-code-roasts"),
            entry("FDA Food Code 1999 3-401.11(B)", "us-food-code-roasts-before-2001"),
            entry("NY 1 NYCRR 271-2.10", "us-ny-271-2.10-roasts"),
            entry("9 CFR 318.23(b)", "us-9-cfr-318.23-patties"),
            entry("UK rounded set", "uk-rounded"),
            entry("UK FSA / CFA non-proteolytic C. botulinum, 6 log", "uk-90c-10min"),
            entry("NZ MPI 2020", "nz-mpi-2020"));

    static Stream<Arguments> cases(String kind) {
        return CheckValues.rows("lethality.csv").stream()
                .filter(row -> row.getField("kind").equals(kind))
                .map(row -> Arguments.of(
                        row.getField("case_id"),
                        row.getField("rule_or_model"),
                        row.getField("source_id") + ", " + row.getField("how"),
                        row));
    }

    static Stream<Arguments> tableLookups() {
        return cases("table_lookup");
    }

    static Stream<Arguments> requiredTimes() {
        return cases("required_time");
    }

    static Stream<Arguments> fValues() {
        return cases("f_value");
    }

    static Stream<Arguments> logReductions() {
        return cases("log_reduction");
    }

    static Stream<Arguments> rules() {
        return cases("rule");
    }

    @ParameterizedTest(name = "{0} {1} [{2}]")
    @MethodSource("tableLookups")
    void aTemperatureHeldMeetsTheTableOrNot(String id, String rule, String source, NamedCsvRecord row) {
        Trace trace = Traces.held(celsius(row), CheckValues.number(row, "input_time_s") / 60);

        RowJudgement judged = RowJudgement.of(trace, rowsFor(row), 0, 5);

        Verdict expected = row.getField("expected_value").equals("pass") ? Verdict.MET : Verdict.NOT_MET;
        assertThat(judged.verdict()).as(row.getField("note")).isEqualTo(expected);
        assertThat(judged.nominallyMet()).isEqualTo(expected == Verdict.MET);
    }

    @ParameterizedTest(name = "{0} {1} [{2}]")
    @MethodSource("requiredTimes")
    void theTimeATableOrACurveAsksFor(String id, String rule, String source, NamedCsvRecord row) {
        double seconds = TABLES.containsKey(row.getField("rule_or_model")) ? tableSeconds(row) : curveSeconds(row);
        double expected = CheckValues.number(row, "expected_value")
                * (row.getField("expected_unit").equals("min") ? 60 : 1);
        double tolerance = CheckValues.number(row, "tolerance_abs")
                * (row.getField("expected_unit").equals("min") ? 60 : 1);

        assertThat(seconds).as(row.getField("note")).isCloseTo(expected, within(tolerance));
    }

    private static double tableSeconds(NamedCsvRecord row) {
        double celsius = celsius(row);
        return rowsFor(row).stream()
                .filter(found -> found.at().celsius() <= celsius + TemperatureUnit.SLACK_CELSIUS)
                .max(Comparator.comparingDouble(found -> found.at().celsius()))
                .orElseThrow()
                .seconds();
    }

    /** The time at which the curve's rate makes up the stated time at the reference temperature. */
    private static double curveSeconds(NamedCsvRecord row) {
        String parameters = row.getField("model_parameters");
        LethalRate rate =
                new LethalRate(parameter(parameters, "T_ref"), parameter(parameters, "z"), NONE_BELOW, NO_CAP);
        double atReference = parameters.contains("t_ref=")
                ? parameter(parameters, "t_ref")
                : firstNumber(row.getField("rule_or_model"), "(?:F0|value) ([0-9.]+)") * 60;
        return atReference / rate.at(celsius(row));
    }

    @ParameterizedTest(name = "{0} {1} [{2}]")
    @MethodSource("logReductions")
    void theReductionACurveGives(String id, String rule, String source, NamedCsvRecord row) {
        String parameters = row.getField("model_parameters");
        boolean fahrenheit = parameters.contains("130 F");
        double reference =
                fahrenheit ? TemperatureUnit.FAHRENHEIT.toCelsius(130) : firstNumber(parameters, "at ([0-9.]+) C");
        double z = fahrenheit ? TemperatureUnit.FAHRENHEIT.differenceToCelsius(10) : parameter(parameters, "z");
        LethalRate rate = new LethalRate(reference, z, NONE_BELOW, NO_CAP);
        double minutes =
                rate.equivalentMinutes(celsius(row), celsius(row), CheckValues.number(row, "input_time_s") / 60);

        assertThat(minutes / parameter(parameters, "D"))
                .as(row.getField("note"))
                .isCloseTo(CheckValues.number(row, "expected_value"), within(CheckValues.number(row, "tolerance_abs")));
    }

    @ParameterizedTest(name = "{0} {1} [{2}]")
    @MethodSource("fValues")
    void theEquivalentTimeOfASeries(String id, String rule, String source, NamedCsvRecord row) {
        double minutes =
                switch (id) {
                    case "L072" -> nonProteolytic(celsius(row), CheckValues.number(row, "input_time_s") / 60);
                    case "L074" -> exampleA(Rule.SUM);
                    case "L075" -> exampleA(Rule.TRAPEZIUM);
                    case "L076" -> exampleA(Rule.STRAIGHT_LINE);
                    case "L077" -> exampleA(Rule.LOWER_OF_TWO);
                    case "L078" -> segments("worked-example-b-segments.csv", 121.1, 10);
                    case "L079" -> new LethalRate(121, 8.5, NONE_BELOW, NO_CAP).equivalentMinutes(138, 138, 4 / 60.0);
                    case "L080" -> fiveMinutesAtRate(2.925);
                    case "L081" -> fiveMinutesAtRate(1.730);
                    case "L082" -> segments("worked-example-d-segments.csv", 121, 10);
                    case "L087" -> ramp(50, 70, 70, 7.5, 60);
                    case "L088" -> ramp(50, 60, 60, 10 / 1.8, 120);
                    case "L089" -> ramp(60, 50, 60, 10 / 1.8, 60);
                    default -> throw new IllegalStateException("a check value nobody tests: " + id);
                };
        double figure = row.getField("expected_unit").equals("s") ? minutes * 60 : minutes;

        assertThat(figure)
                .as(row.getField("note"))
                .isCloseTo(CheckValues.number(row, "expected_value"), within(CheckValues.number(row, "tolerance_abs")));
    }

    private enum Rule {
        SUM,
        TRAPEZIUM,
        STRAIGHT_LINE,
        LOWER_OF_TWO
    }

    /** General method on the published 22 readings, reference 250 °F, z 18 °F. */
    private static double exampleA(Rule rule) {
        List<NamedCsvRecord> series = CheckValues.rows("worked-example-a-series.csv");
        LethalRate rate = new LethalRate(TemperatureUnit.FAHRENHEIT.toCelsius(250), 10, NONE_BELOW, NO_CAP);
        double[] celsius = series.stream()
                .mapToDouble(row -> TemperatureUnit.FAHRENHEIT.toCelsius(CheckValues.number(row, "temp_f")))
                .toArray();
        double minutes = 0;
        for (int i = 0; i < celsius.length; i++) {
            double first = rate.at(celsius[i]);
            assertThat(first)
                    .as("rate at reading %d", i)
                    .isCloseTo(CheckValues.number(series.get(i), "lethal_rate_published"), within(5e-9 + 5e-5 * first));
            if (rule == Rule.SUM) {
                minutes += first * 5;
            } else if (i + 1 < celsius.length) {
                minutes += switch (rule) {
                    case TRAPEZIUM -> (first + rate.at(celsius[i + 1])) / 2 * 5;
                    case STRAIGHT_LINE -> rate.equivalentMinutes(celsius[i], celsius[i + 1], 5);
                    default -> Math.min(first, rate.at(celsius[i + 1])) * 5;
                };
            }
        }
        return minutes;
    }

    private static double segments(String file, double reference, double z) {
        LethalRate rate = new LethalRate(reference, z, NONE_BELOW, NO_CAP);
        return CheckValues.rows(file).stream()
                .mapToDouble(row -> rate.equivalentMinutes(
                        CheckValues.number(row, "temp_c"),
                        CheckValues.number(row, "temp_c"),
                        CheckValues.number(row, "duration_s") / 60))
                .sum();
    }

    private static double nonProteolytic(double celsius, double minutes) {
        return new LethalRate(90, celsius < 90 ? 9 : 10, NONE_BELOW, NO_CAP)
                .equivalentMinutes(celsius, celsius, minutes);
    }

    /** Only the sum of the rates is published, not the readings: one temperature of that rate, held one interval. */
    private static double fiveMinutesAtRate(double rate) {
        LethalRate lethal = new LethalRate(121.1, 10, NONE_BELOW, NO_CAP);
        double celsius = 121.1 + 10 * Math.log10(rate);
        return lethal.equivalentMinutes(celsius, celsius, 5);
    }

    private static double ramp(double from, double to, double reference, double z, double minutes) {
        return new LethalRate(reference, z, NONE_BELOW, NO_CAP).equivalentMinutes(from, to, minutes);
    }

    /** 30 published heat treatments: hold at most equivalent time at most come-up, hold and cooling together. */
    @Test
    void l086ComeUpAndCoolingCountForSomethingButNotForAll() {
        List<NamedCsvRecord> treatments = CheckValues.rows("worked-example-f-comeup-hold-cool.csv");
        assertThat(treatments).hasSize(30);
        for (NamedCsvRecord row : treatments) {
            double hold = CheckValues.number(row, "hold_min");
            double all = CheckValues.number(row, "come_up_min") + hold + CheckValues.number(row, "cooling_min");
            assertThat(CheckValues.number(row, "equivalent_min_at_target")).isBetween(hold, all);
            double z = 9;
            LethalRate rate = new LethalRate(CheckValues.number(row, "target_temp_c"), z, NONE_BELOW, NO_CAP);
            double ours = rate.equivalentMinutes(
                            20, CheckValues.number(row, "target_temp_c"), CheckValues.number(row, "come_up_min"))
                    + rate.equivalentMinutes(
                            CheckValues.number(row, "target_temp_c"), CheckValues.number(row, "target_temp_c"), hold)
                    + rate.equivalentMinutes(
                            CheckValues.number(row, "target_temp_c"), 20, CheckValues.number(row, "cooling_min"));
            assertThat(ours).isBetween(hold, all);
        }
    }

    @ParameterizedTest(name = "{0} {1} [{2}]")
    @MethodSource("rules")
    void theGuidelinesRules(String id, String rule, String source, NamedCsvRecord row) {
        assertThat(GuidelineCases.answer(id)).as(row.getField("note")).isEqualTo(row.getField("expected_value"));
    }

    @Test
    void everyCheckValueBelongsToATestOfThisClass() {
        assertThat(CheckValues.rows("lethality.csv")).hasSize(102).allSatisfy(row -> assertThat(row.getField("kind"))
                .isIn("table_lookup", "required_time", "f_value", "log_reduction", "rule", "property"));
    }

    private static List<LethalityRow> rowsFor(NamedCsvRecord row) {
        LethalityTable table = RuleLibrary.builtIn()
                .rules(LethalityTable.class)
                .find(Objects.requireNonNull(TABLES.get(row.getField("rule_or_model"))))
                .orElseThrow();
        Matcher fat = Pattern.compile("([0-9]+) % fat").matcher(row.getField("product"));
        return table.rowsFor(fat.find() ? OptionalDouble.of(Double.parseDouble(fat.group(1))) : OptionalDouble.empty());
    }

    private static double celsius(NamedCsvRecord row) {
        double value = CheckValues.number(row, "input_temp_value");
        return row.getField("input_temp_unit").equals("F") ? TemperatureUnit.FAHRENHEIT.toCelsius(value) : value;
    }

    private static double parameter(String parameters, String name) {
        return firstNumber(parameters, "(?:^|; )" + name + "=([0-9.]+)");
    }

    private static double firstNumber(String text, String pattern) {
        Matcher matcher = Pattern.compile(pattern).matcher(text);
        assertThat(matcher.find()).as(text).isTrue();
        return Double.parseDouble(matcher.group(1));
    }
}
