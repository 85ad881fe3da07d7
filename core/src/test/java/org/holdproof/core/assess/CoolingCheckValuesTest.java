package org.holdproof.core.assess;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.holdproof.core.CheckValues;
import org.holdproof.core.log.Trace;
import org.holdproof.core.measure.CoolingClock;
import org.holdproof.core.measure.CoolingClock.Events;
import org.holdproof.core.measure.CoolingClock.StageTime;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.rules.CoolingRule;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.verdict.Verdict;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every cooling check value, each with the source it names: the straight line between readings gives the printed
 * minutes and verdict, and the interval's verdict never contradicts it.
 */
class CoolingCheckValuesTest {
    private static final Map<String, Verdict> VERDICTS = Map.of(
            "PASS", Verdict.MET,
            "FAIL", Verdict.NOT_MET,
            "INDETERMINATE", Verdict.NOT_PROVEN);

    static Stream<Arguments> coolingSeries() {
        return CheckValues.rows("holding.csv").stream()
                .filter(row -> row.getField("group").equals("cooling"))
                .filter(row -> !row.getField("series_min_temp").isEmpty())
                .filter(row -> VERDICTS.containsKey(row.getField("expected_result")))
                .map(row ->
                        Arguments.of(row.getField("case_id"), row.getField("rule_id"), row.getField("source_id"), row));
    }

    @ParameterizedTest(name = "{0} {1} [{2}]")
    @MethodSource("coolingSeries")
    void aCoolingLogKeepsTheScheduleOrNot(String id, String ruleId, String source, NamedCsvRecord row) {
        CoolingRule rule = CoolingCases.rule(row);
        Events events = CoolingCases.events(row);
        List<StageTime> straight = CoolingClock.straight(
                        CoolingCases.trace(row), CheckValues.number(row, "max_gap_min"), events)
                .time(rule);
        List<StageTime> judged = CoolingCases.judged(row, straight);

        Verdict whole = judged.stream().map(CoolingClock::judge).reduce(Verdict.MET, Verdict::and);
        assertThat(whole).as(row.getField("why")).isEqualTo(VERDICTS.get(row.getField("expected_result")));
        assertStages(row, judged);
        if (!row.getField("fail_time_min").isEmpty()) {
            StageTime failed = judged.get(Integer.parseInt(row.getField("fail_stage")) - 1);
            assertThat(failed.limitMillis().orElseThrow() / 60_000.0)
                    .isCloseTo(
                            CheckValues.number(row, "fail_time_min"), within(CheckValues.number(row, "tolerance_min")));
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
            double tolerance = CheckValues.number(row, "tolerance_min") + 0.005;
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
        return Pattern.compile(";").splitAsStream(row.getField("stage_minutes")).toList();
    }

    /** What a check value's fields say of its log, its rule and the record beside it. */
    private static final class CoolingCases {
        static Trace trace(NamedCsvRecord row) {
            Trace whole = CheckValues.trace(row);
            boolean startsLast = row.getField("reading").contains("start last");
            return startsLast ? whole.between(40 * 60_000, whole.lastMillis()) : whole;
        }

        /** The rule, or the variant of it that the row's reading and boundary set ask for. */
        static CoolingRule rule(NamedCsvRecord row) {
            String set = row.getField("boundary_set");
            String reading = row.getField("reading");
            CoolingRule rule = RuleLibrary.builtIn()
                    .rules(CoolingRule.class)
                    .find(CheckValues.ruleId(row))
                    .orElseThrow();
            if (set.contains("guard band")) {
                return with(
                        rule,
                        stage -> changed(stage, stage.start(), lowered(stage.to()), stage.maxMinutes(), stage.clock()));
            }
            if (reading.equals("dwell")) {
                CoolingRule.Stage first = rule.stages().get(0);
                return with(
                        rule,
                        List.of(changed(
                                first, first.start(), first.to(), first.maxMinutes(), CoolingRule.Clock.DWELL)));
            }
            if (reading.contains("total 6 h")) {
                return with(
                        rule,
                        stage -> stage.number() == 1
                                ? stage
                                : changed(
                                        stage,
                                        CoolingRule.Start.SAME_AS_FIRST,
                                        stage.to(),
                                        OptionalDouble.of(360),
                                        stage.clock()));
            }
            return rule;
        }

        private static CoolingRule with(CoolingRule rule, UnaryOperator<CoolingRule.Stage> change) {
            return with(rule, rule.stages().stream().map(change).toList());
        }

        private static CoolingRule with(CoolingRule rule, List<CoolingRule.Stage> stages) {
            return new CoolingRule(
                    rule.id(),
                    rule.title(),
                    rule.jurisdiction(),
                    rule.applies(),
                    stages,
                    rule.condition(),
                    rule.correctiveAction(),
                    rule.citation());
        }

        private static CoolingRule.Stage changed(
                CoolingRule.Stage stage,
                CoolingRule.Start start,
                Optional<Boundary> to,
                OptionalDouble maxMinutes,
                CoolingRule.Clock clock) {
            return new CoolingRule.Stage(
                    stage.number(), start, stage.from(), to, maxMinutes, stage.comparison(), clock);
        }

        private static Optional<Boundary> lowered(Optional<Boundary> to) {
            return to.map(boundary -> new Boundary(boundary.value() - 1, boundary.unit()));
        }

        /**
         * The stages a row speaks of. Its first stage may be the rule's second, where the rule's first is no cooling;
         * a reading that takes the first arrival sees the first stage of a log cut off there.
         */
        static List<StageTime> judged(NamedCsvRecord row, List<StageTime> straight) {
            int from = Math.max(0, straight.size() - expectedStages(row).size());
            List<StageTime> judged = new ArrayList<>(straight.subList(from, straight.size()));
            if (row.getField("reading").contains("arrival first")) {
                Trace untilFirstArrival = trace(row).between(0, 115 * 60_000);
                judged.set(
                        0,
                        CoolingClock.straight(untilFirstArrival, 30, Events.NONE)
                                .time(rule(row))
                                .get(0));
            }
            return judged;
        }

        static Events events(NamedCsvRecord row) {
            OptionalLong endOfHeating = minute(row, "start_record_min");
            return new Events(
                    endOfHeating.isPresent() ? endOfHeating : minute(row, "cook_end_min"),
                    minute(row, "chill_start_min"));
        }

        private static OptionalLong minute(NamedCsvRecord row, String name) {
            Matcher matcher = Pattern.compile(name + "=(-?[0-9.]+)").matcher(row.getField("other_inputs"));
            return matcher.find()
                    ? OptionalLong.of(Math.round(Double.parseDouble(matcher.group(1)) * 60_000))
                    : OptionalLong.empty();
        }
    }
}
