package org.holdproof.core.assess;

import static org.holdproof.core.batch.Stage.Kind.BATH;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.batch.Moisture;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.course.Accounts;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.kinetics.Traces;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.HoldingRule;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.core.rules.LethalityTable;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;

/** The cases of the FSIS Cooking Guideline 2021 that are told in words, put to the checks as logs. */
final class GuidelineCases {
    private GuidelineCases() {}

    static String answer(String id) {
        return switch (id) {
            case "L094" -> comeUp(Traces.fahrenheit(0, 40, 10, 50, 369, 130, 379, 160, 400, 160));
            case "L095" -> comeUp(Traces.fahrenheit(0, 40, 10, 50, 371, 130, 381, 160, 400, 160));
            case "L096" -> comeUp(twoCooks(300, 160, 300));
            case "L097" -> comeUp(twoCooks(240, 130, 180));
            case "L098" -> humidity(bagged());
            case "L099" -> humidity(steamed());
            case "L100" -> missedRow();
            case "L101" -> Double.toString(Recook.neededLog10(6.5, 3.0));
            case "L102" -> criticalLimit();
            default -> throw new IllegalStateException("a check value nobody tests: " + id);
        };
    }

    /** Two cooks with a night in the cold between them; the band is passed once upward in each, in no time downward. */
    private static Trace twoCooks(double firstMinutes, double firstPeak, double secondMinutes) {
        double second = firstMinutes + 700;
        return Traces.fahrenheit(
                0,
                40,
                10,
                50,
                10 + firstMinutes,
                130,
                20 + firstMinutes,
                firstPeak,
                21 + firstMinutes,
                firstPeak,
                21.001 + firstMinutes,
                40,
                second,
                40,
                second + 1,
                50,
                second + 1 + secondMinutes,
                130,
                second + 10 + secondMinutes,
                160,
                second + 30 + secondMinutes,
                160);
    }

    private static String comeUp(Trace trace) {
        BatchRecord batch =
                Cooks.batch("us-fsis-2021", Cooks.BRISKET, Cooks.stage(BATH, 0, trace.lastMillis() / 60_000.0));
        HoldingRule rule = RuleLibrary.builtIn()
                .rules(HoldingRule.class)
                .find("US-FSIS-CUT")
                .orElseThrow();
        Evidence evidence = Cooks.evidence(batch, 0, trace);
        Check check = new ComeUpCheck(evidence, Accounts.of(evidence)).check().orElseThrow();
        double nominal = check.measured().orElseThrow().nominal();
        if (nominal <= rule.maxMinutes().orElseThrow() + Check.FIGURE_SLACK) {
            return "pass";
        }
        if (check.verdict() == Verdict.NOT_MET) {
            return "an automatic fail";
        }
        return nominal >= 420 - Check.FIGURE_SLACK
                ? "outside the option: 7 h"
                : "outside the option (scientific gap 6), not an automatic fail";
    }

    /** Cooked in the bag, in water, throughout. */
    private static Evidence bagged() {
        Trace trace = Traces.held(TemperatureUnit.FAHRENHEIT.toCelsius(140), 60);
        BatchRecord batch = Cooks.batch(
                "us-fsis-2021", Cooks.BRISKET, Cooks.stage(Stage.Kind.BAG, 0, 0), Cooks.stage(Stage.Kind.BATH, 0, 60));
        return Cooks.evidence(batch, 0, trace);
    }

    /** Smoked to 140 °F for 12 min, with steam for half of the cook. */
    private static Evidence steamed() {
        Trace trace = Traces.held(TemperatureUnit.FAHRENHEIT.toCelsius(140), 180);
        Stage smoke = new Stage(
                Stage.Kind.SMOKE,
                Instant.EPOCH,
                Optional.of(Instant.EPOCH.plusSeconds(180 * 60)),
                OptionalDouble.empty(),
                Optional.of(new Moisture(Moisture.Means.STEAM, OptionalDouble.of(90))),
                "");
        return Cooks.evidence(Cooks.batch("us-fsis-2021", Cooks.BRISKET, smoke), 0, trace);
    }

    private static String humidity(Evidence evidence) {
        Accounts accounts = Accounts.of(evidence);
        Check lethality = new LethalityCheck(evidence, accounts).check();
        Check humidity = new HumidityCheck(evidence, accounts).check(lethality).orElseThrow();
        if (lethality.verdict() != Verdict.MET || humidity.verdict() != Verdict.MET) {
            return "fail";
        }
        return humidity.rule().contains("bag") ? "humidity not needed" : "pass";
    }

    /** The end point of 158 °F was missed, but 154 °F was held for 27 s. */
    private static String missedRow() {
        List<LethalityRow> rows = RuleLibrary.builtIn()
                .rules(LethalityTable.class)
                .find("fsis-2021-meat-6.5-log")
                .orElseThrow()
                .rows();
        Trace trace = Traces.fahrenheit(0, 154, 0.45, 154);
        List<LethalityRow> endPoint =
                rows.stream().filter(row -> row.at().value() == 158).toList();
        boolean missed = RowJudgement.of(trace, endPoint, 0, 5).verdict() == Verdict.NOT_MET;
        RowJudgement judged = RowJudgement.of(trace, rows, 0, 5);
        return missed && judged.verdict() == Verdict.MET && judged.row().at().value() == 154
                ? "pass on another row"
                : "fail";
    }

    /** The lowest whole reading a thermometer good to 1 °F must show to prove 165 °F. */
    private static String criticalLimit() {
        List<LethalityRow> rows = RuleLibrary.builtIn()
                .rules(LethalityTable.class)
                .find("us-food-code-2013-a3")
                .orElseThrow()
                .rows();
        double tolerance = TemperatureUnit.FAHRENHEIT.differenceToCelsius(1);
        for (int fahrenheit = 160; fahrenheit < 180; fahrenheit++) {
            Trace trace = Traces.fahrenheit(0, fahrenheit, 1, fahrenheit);
            if (RowJudgement.of(trace, rows, tolerance, 5).verdict() == Verdict.MET) {
                return Integer.toString(fahrenheit);
            }
        }
        return OptionalDouble.empty().toString();
    }
}
