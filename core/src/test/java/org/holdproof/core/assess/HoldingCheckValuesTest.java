package org.holdproof.core.assess;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.holdproof.core.CheckValues;
import org.holdproof.core.assess.CoolingClock.Events;
import org.holdproof.core.assess.CoolingClock.StageTime;
import org.holdproof.core.kinetics.Traces;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.standard.Boundary;
import org.holdproof.core.standard.CoolingRule;
import org.holdproof.core.standard.RuleLibrary;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every cooling check value, each with the source it names: the straight line between readings gives the printed
 * minutes and verdict, and the interval's verdict never contradicts it.
 */
class HoldingCheckValuesTest {
    private static final Map<String, Verdict> VERDICTS = Map.of(
            "PASS", Verdict.MET,
            "FAIL", Verdict.NOT_MET,
            "INDETERMINATE", Verdict.NOT_PROVEN);

    static Stream<Arguments> coolingSeries() {
        return CheckValues.rows("holding.csv").stream()
                .filter(row -> row.getField("group").equals("cooling"))
                .filter(row -> !row.getField("series_min_temp").isEmpty())
                .filter(row -> VERDICTS.containsKey(row.getField("expected_result")))
                .map(row -> Arguments.of(
                        row.getField("case_id"), row.getField("rule_id"), row.getField("source_id"), row));
    }

    @ParameterizedTest(name = "{0} {1} [{2}]")
    @MethodSource("coolingSeries")
    void aCoolingLogKeepsTheScheduleOrNot(String id, String ruleId, String source, NamedCsvRecord row) {
        CoolingRule rule = CoolingCases.rule(row);
        Events events = CoolingCases.events(row);
        List<StageTime> straight = CoolingClock.straight(
                        CoolingCases.trace(row), number(row, "max_gap_min"), events)
                .time(rule);
        int firstJudged = rule.stages().size() - expectedStages(row).size();
        List<StageTime> judged = straight.subList(Math.max(0, firstJudged), straight.size());

        Verdict whole = judged.stream().map(CoolingClock::judge).reduce(Verdict.MET, Verdict::and);
        assertThat(whole).as(row.getField("why")).isEqualTo(VERDICTS.get(row.getField("expected_result")));
        assertStages(row, judged);
        if (!row.getField("fail_time_min").isEmpty()) {
            StageTime failed = judged.get(Integer.parseInt(row.getField("fail_stage")) - 1);
            assertThat(failed.limitMillis().orElseThrow() / 60_000.0)
                    .isCloseTo(number(row, "fail_time_min"), within(number(row, "tolerance_min")));
        }
        assertTheIntervalAgrees(row, rule, events, straight);
    }

    /** The clock that trusts no line may be unsure; it never contradicts, and always spans, the straight line. */
    private static void assertTheIntervalAgrees(
            NamedCsvRecord row, CoolingRule rule, Events events, List<StageTime> straight) {
        List<StageTime> bounds =
                CoolingClock.bounding(CoolingCases.trace(row), 0.3, events).time(rule);
        for (int i = 0; i < straight.size(); i++) {
            assertThat(bounds.get(i).shortestMinutes())
                    .isLessThanOrEqualTo(straight.get(i).shortestMinutes() + 1e-6);
            assertThat(bounds.get(i).longestMinutes())
                    .isGreaterThanOrEqualTo(straight.get(i).longestMinutes() - 1e-6);
            Verdict bounded = CoolingClock.judge(bounds.get(i));
            assertThat(bounded).isIn(Verdict.NOT_PROVEN, CoolingClock.judge(straight.get(i)));
        }
    }

    private static void assertStages(NamedCsvRecord row, List<StageTime> judged) {
        List<String> expected = expectedStages(row);
        for (int i = 0; i < expected.size(); i++) {
            StageTime time = judged.get(i);
            String text = expected.get(i);
            String verdict = text.substring(text.lastIndexOf(' ') + 1);
            assertThat(CoolingClock.judge(time)).as("stage %d, %s", i + 1, text).isEqualTo(VERDICTS.get(verdict));
            Matcher range = Pattern.compile("=([0-9.]+)\\.\\.([0-9.]+) ").matcher(text);
            Matcher one = Pattern.compile("=([0-9.]+) ").matcher(text);
            Matcher atLeast = Pattern.compile("=>([0-9.]+) ").matcher(text);
            double tolerance = number(row, "tolerance_min") + 0.005;
            if (range.find()) {
                assertThat(time.shortestMinutes()).isCloseTo(Double.parseDouble(range.group(1)), within(tolerance));
                assertThat(time.longestMinutes()).isCloseTo(Double.parseDouble(range.group(2)), within(tolerance));
            } else if (one.find()) {
                assertThat(time.longestMinutes()).isCloseTo(Double.parseDouble(one.group(1)), within(tolerance));
            } else if (atLeast.find()) {
                assertThat(time.shortestMinutes()).isCloseTo(Double.parseDouble(atLeast.group(1)), within(tolerance));
                assertThat(time.longestMinutes()).isInfinite();
            } else {
                assertThat(text).containsAnyOf("start unknown", "not reached");
                assertThat(time.longestMinutes()).isInfinite();
            }
        }
    }

    private static List<String> expectedStages(NamedCsvRecord row) {
        return List.of(row.getField("stage_minutes").split(";"));
    }

    private static double number(NamedCsvRecord row, String field) {
        return Double.parseDouble(row.getField(field));
    }

    /** What a check value's fields say of its log, its rule and the record beside it. */
    private static final class CoolingCases {
        static Trace trace(NamedCsvRecord row) {
            List<Double> numbers = new ArrayList<>();
            for (String pair : row.getField("series_min_temp").split(";")) {
                for (String number : pair.split(":")) {
                    numbers.add(Double.parseDouble(number));
                }
            }
            TemperatureUnit unit = row.getField("series_unit").equals("F")
                    ? TemperatureUnit.FAHRENHEIT
                    : TemperatureUnit.CELSIUS;
            Trace whole = Traces.of(
                    unit, numbers.stream().mapToDouble(Double::doubleValue).toArray());
            String reading = row.getField("reading");
            if (reading.contains("start last")) {
                return whole.between(40 * 60_000, whole.lastMillis());
            }
            return whole;
        }

        static CoolingRule rule(NamedCsvRecord row) {
            RuleLibrary library = RuleLibrary.builtIn();
            String id = row.getField("rule_id");
            if (row.getField("boundary_set").startsWith("printed C")) {
                id += "-C";
            }
            return library.coolingRule(id).orElseThrow();
        }

        static Events events(NamedCsvRecord row) {
            return new Events(minute(row, "start_record_min"), minute(row, "chill_start_min"));
        }

        private static OptionalLong minute(NamedCsvRecord row, String name) {
            Matcher matcher = Pattern.compile(name + "=(-?[0-9.]+)").matcher(row.getField("other_inputs"));
            return matcher.find()
                    ? OptionalLong.of(Math.round(Double.parseDouble(matcher.group(1)) * 60_000))
                    : OptionalLong.empty();
        }
    }
}
