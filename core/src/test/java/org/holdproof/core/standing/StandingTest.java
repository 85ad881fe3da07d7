package org.holdproof.core.standing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.assess.Cooks;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.core.standing.StandingQuestion.State;
import org.holdproof.core.verdict.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a cook under way is told, on small invented cooks along straight lines. */
class StandingTest {
    private static final String FOOD_CODE = "us-food-code-2022";
    private static final String FSIS = "us-fsis-2021";

    private static Stage stage(Stage.Kind kind, double from, double to) {
        Stage plain = Cooks.stage(kind, from, to);
        return kind.isCook() ? new Stage(kind, plain.from(), plain.to(), OptionalDouble.of(95)) : plain;
    }

    private static Stage open(Stage.Kind kind, double from, double setPointCelsius) {
        return new Stage(
                kind,
                Instant.ofEpochMilli(Math.round(from * 60_000)),
                Optional.empty(),
                OptionalDouble.of(setPointCelsius));
    }

    private static State state(Standing standing, String key) {
        return standing.question(key).orElseThrow().state();
    }

    /** The outlook is right when the readings do stay: proven at the reading it names, and not at the one before. */
    @ParameterizedTest(name = "{0} °C, tolerance {1} °C")
    @CsvSource({"54.5, 0", "55.3, 0.5", "57.0, 0.3", "60.0, 0", "60.9, 1.0", "61.6, 0.2"})
    void theOutlookComesTrue(double celsius, double tolerance) throws Exception {
        List<Stage> stages = List.of(open(Stage.Kind.BATH, 0, celsius + 1));
        GrowingCook arrived = GrowingCook.along(FSIS, tolerance, stages, 0, 5, 200, celsius, 204, celsius);
        Standing standing = arrived.now();
        assertThat(state(standing, "lethality")).isEqualTo(State.NEEDED);
        LethalityOutlook outlook = standing.outlook().orElseThrow();
        int minutes = (int) Math.ceil(outlook.minutesLeft().orElseThrow());
        assertThat(minutes).isPositive();

        GrowingCook stays =
                GrowingCook.along(FSIS, tolerance, stages, 0, 5, 200, celsius, 204, celsius, 204 + minutes, celsius);
        assertThat(state(stays.now(), "lethality")).isEqualTo(State.KEPT);
        assertThat(stays.now().outlook()).isEmpty();
        assertThat(state(stays.after(stays.rows().size() - 1), "lethality")).isEqualTo(State.NEEDED);
    }

    /** FSIS Cooking Guideline 2021, Table 2, 6.5-log column: 130 °F for 112 min. */
    @Test
    void theGoverningRowAndItsTimeAreThePrintedOnes() throws Exception {
        double celsius = TemperatureUnit.FAHRENHEIT.toCelsius(130.5);
        Standing standing = GrowingCook.along(
                        FSIS, 0, List.of(open(Stage.Kind.BATH, 0, 58)), 0, 5, 100, 40, 101, celsius, 113, celsius)
                .now();
        LethalityOutlook outlook = standing.outlook().orElseThrow();
        LethalityRow row = outlook.row().orElseThrow();
        assertThat(row.at().value()).isEqualTo(130);
        assertThat(row.printedTime()).isEqualTo("112 min");
        assertThat(outlook.minutesLeft().orElseThrow()).isCloseTo(100, within(1e-9));
        assertThat(outlook.words()).contains("100 min more", "112 min", "1 Jan 03:33");
        assertThat(outlook.projection()).isEmpty();
    }

    @Test
    void theProbeThatNeedsLongestGoverns() throws Exception {
        List<double[]> rows = new ArrayList<>();
        for (double minute = 0; minute <= 120; minute++) {
            rows.add(new double[] {minute, Math.min(61, 5 + minute), Math.min(56, 5 + minute)});
        }
        Standing standing = new GrowingCook(rows, false, FSIS, 0.2, List.of(open(Stage.Kind.BATH, 0, 62))).now();
        assertThat(standing.outlook().orElseThrow().channel()).isEqualTo("P1");
        assertThat(standing.outlook().orElseThrow().creditedCelsius()).isCloseTo(55.8, within(1e-9));
    }

    @Test
    void belowTheLowestRowNothingIsCreditedAndTheRateIsAProjectionOnly() throws Exception {
        Standing rising = GrowingCook.along(FSIS, 0.5, List.of(open(Stage.Kind.BATH, 0, 60)), 0, 5, 240, 45)
                .now();
        LethalityOutlook outlook = rising.outlook().orElseThrow();
        assertThat(outlook.row()).isEmpty();
        assertThat(outlook.minutesLeft()).isEmpty();
        assertThat(outlook.words()).contains("no time is long enough", "Projection only", "or later");
        LethalityOutlook.Projection line = outlook.projection().orElseThrow();
        assertThat(line.celsiusAnHour()).isCloseTo(10, within(1e-9));
        double level = TemperatureUnit.FAHRENHEIT.toCelsius(130) + 0.5;
        assertThat(line.reachesMillis() / 60_000.0).isCloseTo(240 + (level - 45) * 6, within(1e-3));

        Standing low = GrowingCook.along(FSIS, 0.5, List.of(open(Stage.Kind.BATH, 0, 50)), 0, 5, 240, 45)
                .now();
        assertThat(low.outlook().orElseThrow().projection()).isEmpty();
        assertThat(low.outlook().orElseThrow().words()).contains("set point is 122.0 °F");
    }

    @Test
    void aProbeThatFellSilentIsCreditedNothing() throws Exception {
        GrowingCook cook = GrowingCook.along(FSIS, 0, List.of(open(Stage.Kind.BATH, 0, 60)), 0, 5, 100, 60, 103, 60);
        Standing standing = Standing.of(
                cook.log(cook.rows().size()),
                cook.record(),
                cook.profile(),
                GrowingCook.LIBRARY,
                Math.round(130 * 60_000.0));
        assertThat(standing.outlook().orElseThrow().minutesLeft()).isEmpty();
        assertThat(standing.outlook().orElseThrow().words()).contains("no reading for 27 min");
    }

    /** Food Code 2022 3-501.14(A): 135 to 70 °F in 2 h, to 41 °F in 6 h in all. */
    @Test
    void theCoolingClocksRunFromTheFirstFall() throws Exception {
        List<Stage> stages = List.of(
                stage(Stage.Kind.BATH, 0, 300), stage(Stage.Kind.CHILL, 300, 800), open(Stage.Kind.STORE, 800, 2));
        double upper = TemperatureUnit.FAHRENHEIT.toCelsius(135);
        GrowingCook cook =
                GrowingCook.along(FOOD_CODE, 0, stages, 0, 5, 100, 65, 300, 65, 310, upper, 430, 28, 440, 27, 800, 20);

        Standing early = cook.after(355 + 1);
        assertThat(early.underWay().orElseThrow().kind()).isEqualTo(Stage.Kind.CHILL);
        assertThat(state(early, "lethality")).isEqualTo(State.PROVEN);
        assertThat(state(early, "cooling.1")).isEqualTo(State.NEEDED);
        assertThat(early.clocks()).extracting(RunningClock::check).containsExactly("cooling.1", "cooling.2");
        RunningClock first = early.clocks().get(0);
        assertThat(first.usedMinutes().nominal()).isCloseTo(45, within(0.01));
        assertThat(first.minutesLeft()).isCloseTo(75, within(1e-6));
        assertThat(first.provableUntilMillis()).isEqualTo(430 * 60_000L);
        assertThat(first.words()).contains("70 °F (21.11 °C) by 1 Jan 07:10", "75 min left of 120 min");
        assertThat(early.clocks().get(1).minutesLeft()).isCloseTo(first.minutesLeft() + 240, within(1e-9));
        assertThat(early.verdict()).isEqualTo(Verdict.NOT_PROVEN);

        Standing hot = cook.after(305 + 1);
        assertThat(hot.clocks()).isEmpty();
        assertThat(hot.question("cooling.1")).isEmpty();

        Standing late = cook.after(440 + 1);
        assertThat(state(late, "cooling.1")).isEqualTo(State.LOST);
        assertThat(state(late, "cooling.2")).isEqualTo(State.NEEDED);
        assertThat(late.verdict()).isEqualTo(Verdict.NOT_MET);
        List<Remedy> remedies = Remedies.of(late, GrowingCook.LIBRARY);
        assertThat(remedies).hasSize(1);
        assertThat(remedies.get(0).text()).contains("reheat to 165 °F/15 s and restart once, or discard");
        assertThat(remedies.get(0).citation().orElseThrow().text()).contains("3-501.14(A)");
        assertThat(remedies.get(0).clock().orElseThrow().check()).isEqualTo("cooling.2");
    }

    @Test
    void theCoolingClockRunsBeforeTheChillHasBegun() throws Exception {
        List<Stage> stages = List.of(stage(Stage.Kind.BATH, 0, 300), stage(Stage.Kind.CHILL, 400, 800));
        Standing standing = GrowingCook.along(FOOD_CODE, 0, stages, 0, 5, 100, 65, 300, 65, 350, 50)
                .now();
        assertThat(standing.underWay()).isEmpty();
        assertThat(standing.isOver()).isFalse();
        assertThat(standing.clocks()).extracting(RunningClock::check).containsExactly("cooling.1", "cooling.2");
        assertThat(standing.clocks().get(0).usedMinutes().worst()).isBetween(20.0, 30.0);
    }

    @Test
    void aStageKeptInTheChillCountsOnceTheChillIsOver() throws Exception {
        List<Stage> stages = List.of(stage(Stage.Kind.BATH, 0, 300), stage(Stage.Kind.CHILL, 300, 500));
        GrowingCook cook = GrowingCook.along(FOOD_CODE, 0, stages, 0, 5, 100, 65, 300, 65, 360, 20, 450, 4, 500, 3);
        assertThat(state(cook.after(400), "cooling.1")).isEqualTo(State.KEPT);
        assertThat(state(cook.after(400), "cooling.2")).isEqualTo(State.NEEDED);
        assertThat(cook.after(480).verdict()).isEqualTo(Verdict.MET);
        Standing end = cook.now();
        assertThat(end.isOver()).isTrue();
        assertThat(state(end, "cooling.1")).isEqualTo(State.PROVEN);
        assertThat(state(end, "record.end")).isEqualTo(State.NEEDED);
    }

    /** FSIS Cooking Guideline 2021, page 24: at most 6 h between 50 and 130 °F while heating. */
    @Test
    void theComeUpClockCountsTimeInTheBand() throws Exception {
        List<Stage> stages = List.of(open(Stage.Kind.SMOKE, 0, 90));
        GrowingCook cook = GrowingCook.along(FSIS, 0, stages, 0, 10, 300, 40, 500, 50);
        RunningClock clock = cook.after(201).clocks().get(0);
        assertThat(clock.check()).isEqualTo("come-up");
        assertThat(clock.usedMinutes().nominal()).isCloseTo(200, within(1e-6));
        assertThat(clock.minutesLeft()).isCloseTo(160, within(1e-6));
        assertThat(clock.provableUntilMillis()).isEqualTo(360 * 60_000L);
        assertThat(state(cook.after(201), "come-up")).isEqualTo(State.KEPT);

        Standing past = cook.now();
        assertThat(state(past, "come-up")).isEqualTo(State.LOST);
        assertThat(Remedies.of(past, GrowingCook.LIBRARY))
                .anySatisfy(remedy -> {
                    assertThat(remedy.text()).contains("S. aureus ≥3 log needs enterotoxin test");
                    assertThat(remedy.citation().orElseThrow().section()).isEqualTo("pages 70-72");
                })
                .anySatisfy(remedy -> assertThat(remedy.text()).contains("149 °F"));
    }

    @Test
    void aHotHoldShowsItsMarginUntilItIsLost() throws Exception {
        List<Stage> stages = List.of(stage(Stage.Kind.BATH, 0, 300), stage(Stage.Kind.HOT_HOLD, 300, 500));
        GrowingCook cook = GrowingCook.along(FOOD_CODE, 0.5, stages, 0, 5, 100, 65, 300, 65, 340, 61, 460, 50);
        Standing held = cook.after(340 + 1);
        assertThat(state(held, "hot-hold")).isEqualTo(State.KEPT);
        assertThat(held.question("hot-hold").orElseThrow().words()).contains("P0 reads 141.8 °F", "10.9 °F inside");
        assertThat(state(cook.now(), "hot-hold")).isEqualTo(State.LOST);
    }

    /** Food Code 2022 3-403.11: 165 °F for 15 s within 2 h from 41 °F. */
    @Test
    void aReheatHasATargetToReachAndAClock() throws Exception {
        List<Stage> stages = List.of(
                stage(Stage.Kind.BATH, 0, 300), stage(Stage.Kind.CHILL, 300, 480), open(Stage.Kind.REHEAT, 500, 90));
        GrowingCook cook = GrowingCook.along(
                FOOD_CODE, 0, stages, 0, 5, 100, 65, 300, 65, 360, 20, 420, 3, 500, 3, 510, 5, 650, 70, 690, 78);
        Standing early = cook.after(561);
        assertThat(state(early, "reheat.target")).isEqualTo(State.NEEDED);
        assertThat(state(early, "reheat.time")).isEqualTo(State.NEEDED);
        RunningClock clock = early.clocks().get(0);
        assertThat(clock.check()).isEqualTo("reheat.time");
        assertThat(clock.provableUntilMillis()).isEqualTo(630 * 60_000L);
        assertThat(state(cook.now(), "reheat.target")).isEqualTo(State.PROVEN);
        // a whole roast may be reheated by its own table, which has no clock (3-403.11(E))
        assertThat(cook.now().question("reheat.time")).isEmpty();
    }

    @Test
    void inStoreTheUseByRuns() throws Exception {
        List<Stage> stages = List.of(
                stage(Stage.Kind.BATH, 0, 300), stage(Stage.Kind.CHILL, 300, 480), open(Stage.Kind.STORE, 480, 2));
        GrowingCook cook =
                GrowingCook.along(FOOD_CODE, 0, stages, 0, 5, 100, 65, 300, 65, 360, 20, 420, 4, 480, 3, 600, 3);
        Standing stored = cook.now();
        assertThat(stored.verdict()).isEqualTo(Verdict.MET);
        assertThat(state(stored, "use-by")).isEqualTo(State.KEPT);
        assertThat(stored.question("use-by").orElseThrow().words()).contains("Use by 7 January 1970");
        assertThat(state(stored, "cold-store")).isEqualTo(State.KEPT);
        assertThat(state(stored, "cooling.2")).isEqualTo(State.PROVEN);
    }

    @ParameterizedTest
    @ValueSource(strings = {FOOD_CODE, FSIS, "uk-england-wales-ni", "canada-ontario"})
    void aCookTooColdIsOpenUntilItEndsAndThenLost(String authority) throws Exception {
        List<Stage> stages = List.of(stage(Stage.Kind.BATH, 0, 300), stage(Stage.Kind.CHILL, 300, 500));
        GrowingCook cook = GrowingCook.along(authority, 0, stages, 0, 5, 100, 50, 300, 50, 400, 4, 500, 3);
        assertThat(state(cook.after(250), "lethality")).isEqualTo(State.NEEDED);
        assertThat(state(cook.after(320), "lethality")).isEqualTo(State.LOST);
        assertThat(Remedies.of(cook.after(320), GrowingCook.LIBRARY))
                .filteredOn(remedy -> remedy.check().equals("lethality"))
                .singleElement()
                .satisfies(remedy -> assertThat(remedy.text())
                        .contains(authority.equals(FSIS) ? "another row of the same table" : "no corrective action"));
        assertThat(Remedies.of(cook.whole(), GrowingCook.LIBRARY)).isNotEmpty();
    }

    @Test
    void beforeTheFirstStageNothingIsClaimed() throws Exception {
        Standing standing = GrowingCook.along(FSIS, 0, List.of(stage(Stage.Kind.BATH, 100, 300)), 0, 5, 60, 5)
                .now();
        assertThat(standing.verdict()).isEqualTo(Verdict.NOT_PROVEN);
        assertThat(standing.isOver()).isFalse();
        assertThat(standing.clocks()).isEmpty();
        assertThat(standing.questions(State.PROVEN))
                .extracting(StandingQuestion::key)
                .containsExactly("instrument");
    }

    /** Hours at 27 °C in a bath that failed are cooling, whatever the stage is called. */
    @Test
    void aBathThatDiesStartsTheCoolingClockFromTheReadings() throws Exception {
        List<Stage> stages = List.of(open(Stage.Kind.BATH, 0, 66));
        GrowingCook cook = GrowingCook.along(FOOD_CODE, 0.2, stages, 0, 5, 100, 65, 300, 65, 480, 30, 700, 27);

        Standing cooling = cook.after(400);
        assertThat(cooling.verdict()).isEqualTo(Verdict.NOT_PROVEN);
        assertThat(cooling.clocks()).extracting(RunningClock::check).contains("cooling.1", "cooling.2");
        assertThat(cooling.question("medium").orElseThrow().words())
                .contains("though the bath is set to", "see whether the bath runs");
        assertThat(cooling.question("probe-place")).isEmpty();

        Standing lost = cook.now();
        assertThat(lost.verdict()).isEqualTo(Verdict.NOT_MET);
        assertThat(state(lost, "cooling.1")).isEqualTo(State.LOST);
        assertThat(cook.after(280).question("medium")).isEmpty();
        assertThat(cook.after(280).clocks()).isEmpty();
    }

    @Test
    void aLoggedBathThatDiesIsNamedWithItsSetPoint() throws Exception {
        List<double[]> rows = new ArrayList<>();
        for (double minute = 0; minute <= 400; minute++) {
            double bath = minute < 300 ? 66 : Math.max(22, 66 - (minute - 300) / 2);
            rows.add(new double[] {minute, Math.min(5 + minute, minute < 310 ? 65 : bath + 1), bath});
        }
        GrowingCook cook = new GrowingCook(rows, true, FOOD_CODE, 0.2, List.of(open(Stage.Kind.BATH, 0, 66)));
        assertThat(cook.now().question("medium").orElseThrow().words())
                .contains("71.6 °F (22.0 °C), 79.2 °F", "below its set point", "since 1 Jan 05:07", "not at fault");
        assertThat(cook.now().question("probe-place")).isEmpty();
        assertThat(cook.after(310).question("medium")).isEmpty();
    }

    /** Food Code 2022 3-501.14(A): 135 to 70 °F in 2 h. */
    @Test
    void aChillThatIsTooSlowIsSaidBeforeItsLimitIsLost() throws Exception {
        List<Stage> stages = List.of(stage(Stage.Kind.BATH, 0, 300), open(Stage.Kind.CHILL, 300, 2));
        double upper = TemperatureUnit.FAHRENHEIT.toCelsius(135);
        GrowingCook cook = GrowingCook.along(FOOD_CODE, 0, stages, 0, 5, 100, 65, 300, 65, 310, upper, 500, upper - 30);
        RunningClock clock = cook.after(351).clocks().get(0);
        assertThat(clock.isExpectedLate()).isTrue();
        double needed = upper - TemperatureUnit.FAHRENHEIT.toCelsius(70);
        assertThat(clock.soonestMillis().orElseThrow() / 60_000.0).isCloseTo(310 + needed / 30 * 190, within(0.01));
        assertThat(clock.words()).contains("At its present pace it is there at", "too late");

        GrowingCook fast = GrowingCook.along(FOOD_CODE, 0, stages, 0, 5, 100, 65, 300, 65, 310, upper, 400, 20);
        assertThat(fast.after(351).clocks().get(0).isExpectedLate()).isFalse();
    }

    @Test
    void aComeUpThatWillNotMakeItsDeadlineIsSaidAhead() throws Exception {
        GrowingCook cook = GrowingCook.along(FSIS, 0, List.of(open(Stage.Kind.SMOKE, 0, 90)), 0, 10, 300, 40, 500, 50);
        RunningClock clock = cook.after(251).clocks().get(0);
        assertThat(clock.isExpectedLate()).isTrue();
        assertThat(clock.words()).contains("at the soonest", "too late");
    }

    @Test
    void whatACoreStillNeedsIsSaidOnlyWhileItStays() throws Exception {
        GrowingCook cook = GrowingCook.along(FSIS, 0, List.of(open(Stage.Kind.BATH, 0, 60)), 0, 5, 100, 56, 140, 55);
        String words = cook.now().outlook().orElseThrow().words();
        assertThat(words).contains("falls", "before the").doesNotContain("more there proves");
    }

    @Test
    void aRiseThatQuickensIsNotDrawnOn() throws Exception {
        List<double[]> rows = new ArrayList<>();
        for (double minute = 0; minute <= 120; minute++) {
            rows.add(new double[] {minute, 5 + minute * minute / 400});
        }
        Standing standing = new GrowingCook(rows, false, FSIS, 0.2, List.of(open(Stage.Kind.BATH, 0, 62))).now();
        assertThat(standing.outlook().orElseThrow().projection()).isEmpty();
        assertThat(standing.outlook().orElseThrow().words()).doesNotContain("or later");
    }
}
