package org.holdproof.core.assess;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.holdproof.core.CheckValues;
import org.holdproof.core.log.Trace;
import org.holdproof.core.measure.HeldLevel;
import org.holdproof.core.measure.ReheatClock;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.rules.HoldingRule;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.core.rules.ReheatingRule;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.rules.TimeLimit;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** The holding and reheating check values that come with a log, each with the source it names. */
class HoldingCheckValuesTest {
    /** A check value's log is two or three points; the straight line between them is what it means. */
    private static final double NO_GAP = Double.POSITIVE_INFINITY;

    static Stream<Arguments> held() {
        return withSeries("holding")
                .filter(arguments -> RuleLibrary.builtIn()
                        .rules(TimeLimit.class)
                        .find((String) arguments.get()[1])
                        .isEmpty())
                .filter(arguments -> holdingRule((NamedCsvRecord) arguments.get()[3])
                        .maxMinutes()
                        .isEmpty());
    }

    static Stream<Arguments> reheated() {
        return withSeries("reheating")
                .filter(arguments -> reheatingRule((NamedCsvRecord) arguments.get()[3])
                        .target()
                        .isPresent());
    }

    private static Stream<Arguments> withSeries(String group) {
        return CheckValues.rows("holding.csv").stream()
                .filter(row -> row.getField("group").equals(group))
                .filter(row -> !row.getField("series_min_temp").isEmpty())
                .map(row ->
                        Arguments.of(row.getField("case_id"), row.getField("rule_id"), row.getField("source_id"), row));
    }

    @ParameterizedTest(name = "{0} {1} [{2}]")
    @MethodSource("held")
    void aTemperatureIsKeptOrNot(String id, String ruleId, String source, NamedCsvRecord row) {
        HoldingRule rule = holdingRule(row);
        double limit = rule.limit().orElseThrow().celsius();

        HeldLevel level = HeldLevel.of(CheckValues.trace(row), rule.comparison(), limit, 0, NO_GAP);

        boolean kept = row.getField("expected_result").equals("PASS");
        assertThat(level.judge(rule.comparison(), limit))
                .as(row.getField("why"))
                .isEqualTo(kept ? Verdict.MET : Verdict.NOT_MET);
        if (kept) {
            assertThat(level.breachMillis()).isEmpty();
        } else if (!row.getField("fail_time_min").isEmpty()) {
            assertThat(level.breachMillis().orElseThrow() / 60_000.0)
                    .isCloseTo(CheckValues.number(row, "fail_time_min"), within(0.1));
        }
    }

    @ParameterizedTest(name = "{0} {1} [{2}]")
    @MethodSource("reheated")
    void aReheatReachesItsTargetInTimeOrNot(String id, String ruleId, String source, NamedCsvRecord row) {
        ReheatingRule rule = reheatingRule(row);
        Boundary target = rule.target().orElseThrow();
        Trace trace = CheckValues.trace(row);
        LethalityRow asRow = new LethalityRow(
                target, OptionalInt.empty(), rule.holdSeconds(), rule.holdSeconds() + " s", rule.citation());
        RowJudgement judged = RowJudgement.of(trace, List.of(asRow), 0, NO_GAP);
        Verdict reached = judged.nominallyMet() ? Verdict.MET : Verdict.NOT_MET;
        assertThat(judged.verdict()).isIn(reached, Verdict.NOT_PROVEN);
        Verdict inTime = Verdict.MET;
        if (rule.maxMinutes().isPresent() && rule.from().isPresent()) {
            Bounded minutes = ReheatClock.minutes(trace, rule.from().get().celsius(), target.celsius(), 0);
            inTime = Check.judge(
                    Bounded.exactly(minutes.nominal()),
                    rule.timeComparison(),
                    rule.maxMinutes().getAsDouble());
        }

        boolean kept = row.getField("expected_result").equals("PASS");
        assertThat(reached.and(inTime)).as(row.getField("why")).isEqualTo(kept ? Verdict.MET : Verdict.NOT_MET);
        if (row.getField("fail_stage").equals("1")) {
            assertThat(inTime).isEqualTo(Verdict.NOT_MET);
        } else if (!kept) {
            assertThat(reached).isEqualTo(Verdict.NOT_MET);
        }
    }

    private static HoldingRule holdingRule(NamedCsvRecord row) {
        return RuleLibrary.builtIn()
                .rules(HoldingRule.class)
                .find(CheckValues.ruleId(row))
                .orElseThrow();
    }

    private static ReheatingRule reheatingRule(NamedCsvRecord row) {
        return RuleLibrary.builtIn()
                .rules(ReheatingRule.class)
                .find(CheckValues.ruleId(row))
                .orElseThrow();
    }
}
