package org.holdproof.core.assess;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.batch.Instrument;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.course.Accounts;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.log.Trace;
import org.holdproof.core.verdict.Caution;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Records good and bad enough to be judged; invented. Minutes count from 1970-01-01T00:00Z. */
class RecordChecksTest {

    private static Trace readAt(double... minutes) {
        long[] millis = new long[minutes.length];
        double[] celsius = new double[minutes.length];
        for (int i = 0; i < minutes.length; i++) {
            millis[i] = Math.round(minutes[i] * 60_000);
            celsius[i] = 60;
        }
        return new Trace("core", millis, celsius);
    }

    private static double[] every(double interval, double from, double to) {
        double[] minutes = new double[(int) Math.round((to - from) / interval) + 1];
        for (int i = 0; i < minutes.length; i++) {
            minutes[i] = from + i * interval;
        }
        return minutes;
    }

    private static double[] both(double[] one, double[] other) {
        double[] both = new double[one.length + other.length];
        System.arraycopy(one, 0, both, 0, one.length);
        System.arraycopy(other, 0, both, one.length, other.length);
        return both;
    }

    private static Check check(Trace trace, String id, Stage... stages) {
        BatchRecord batch = Cooks.batch("us-fsis-2021", Cooks.BRISKET, stages);
        Evidence evidence = Cooks.evidence(batch, 0.5, trace);
        return new RecordChecks(evidence, Accounts.of(evidence))
                .checks().stream()
                        .filter(found -> found.id().equals(id))
                        .findFirst()
                        .orElseThrow();
    }

    private static final Stage BATH = Cooks.stage(Stage.Kind.BATH, 0, 600);

    @Test
    void theLongestIntervalDecidesNotTheUsualOne() {
        Check hole = check(readAt(both(every(1, 0, 200), every(1, 326, 600))), "record.interval", BATH);
        assertThat(hole.verdict()).isEqualTo(Verdict.NOT_PROVEN);
        assertThat(hole.measured().orElseThrow().worst()).isEqualTo(126);
        assertThat(hole.why()).contains("126 min", "03:20", "05:26");
        assertThat(check(readAt(every(30, 0, 600)), "record.interval", BATH).verdict())
                .isEqualTo(Verdict.MET);
    }

    @Test
    void aHoleInAStoreIsNotAskedForAndOneBetweenBathAndChillIs() {
        double[] cook = every(1, 0, 600);
        Stage chill = Cooks.stage(Stage.Kind.CHILL, 660, 900);
        Check between = check(readAt(both(cook, every(1, 660, 900))), "record.interval", BATH, chill);
        assertThat(between.verdict()).isEqualTo(Verdict.NOT_PROVEN);
        Check stored = check(
                readAt(both(cook, every(1, 660, 900))),
                "record.interval",
                BATH,
                Cooks.stage(Stage.Kind.STORE, 600, 900));
        assertThat(stored.verdict()).isEqualTo(Verdict.MET);
    }

    @Test
    void aReadingJustOutsideAStageCoversItsEdge() {
        Trace slow = readAt(every(10, -5, 605));
        assertThat(check(slow, "record.coverage", BATH).verdict()).isEqualTo(Verdict.MET);
        Trace late = readAt(every(1, 7, 600));
        assertThat(check(late, "record.coverage", BATH).verdict()).isEqualTo(Verdict.NOT_PROVEN);
    }

    private static Evidence checked(String authority, LocalDate date, double reading, double tolerance) {
        BatchRecord plain = Cooks.batch(authority, Cooks.BRISKET, BATH);
        Instrument instrument = new Instrument(
                "T",
                tolerance,
                Optional.of(new Instrument.InstrumentCheck(
                        date, Instrument.Method.ICE_POINT, reading, OptionalDouble.empty(), OptionalDouble.empty())),
                OptionalDouble.empty());
        BatchRecord batch = new BatchRecord(
                plain.batch(),
                plain.kitchen(),
                plain.authority(),
                plain.product(),
                instrument,
                plain.columns(),
                plain.log(),
                plain.stages(),
                plain.roles());
        return Cooks.evidence(batch, tolerance, readAt(every(1, 0, 600)));
    }

    /** 1 °C: Food Code 4-203.11 and Standard 3.2.2; 2 °F: 10 NYCRR 14-4.91; elsewhere this program's own. */
    @ParameterizedTest(name = "{0}: {1} °C off")
    @CsvSource({
        "us-food-code-2022, 1.0, MET",
        "us-food-code-2022, 1.05, NOT_PROVEN",
        "us-new-york, 1.1, MET",
        "us-new-york, 1.2, NOT_PROVEN",
        "us-fsis-2021, -1.0, MET",
        "us-fsis-2021, -6, NOT_PROVEN",
        "uk-england-wales-ni, 3, NOT_PROVEN",
        "new-zealand, 3, NOT_PROVEN"
    })
    void anErrorBeyondWhatCanBePutRightProvesNothing(String authority, double error, Verdict expected) {
        Evidence evidence = checked(authority, LocalDate.of(1969, 12, 20), error, 0.5);
        assertThat(ThermometerCheck.worst(evidence).verdict()).isEqualTo(expected);
    }

    @ParameterizedTest(name = "checked {0}")
    @CsvSource({
        "1970-01-01, MET",
        "1970-01-02, NOT_PROVEN",
        "2031-01-01, NOT_PROVEN",
        "1969-01-01, MET",
        "1968-12-30, NOT_PROVEN"
    })
    void aCheckAfterTheCookOrYearsBeforeItIsNone(LocalDate date, Verdict expected) {
        for (String authority : List.of("us-fsis-2021", "us-food-code-2022", "hong-kong-cfs", "canada-cfia")) {
            assertThat(ThermometerCheck.worst(checked(authority, date, 0, 0.5)).verdict())
                    .as(authority)
                    .isEqualTo(expected);
        }
    }

    @Test
    void aToleranceOfNoneIsDoubted() {
        LocalDate date = LocalDate.of(1969, 12, 20);
        assertThat(ThermometerCheck.allCautions(checked("us-fsis-2021", date, 0, 0)))
                .extracting(Caution::id)
                .contains("instrument.tolerance");
        assertThat(ThermometerCheck.allCautions(checked("us-fsis-2021", date, 0, 0.1)))
                .extracting(Caution::id)
                .doesNotContain("instrument.tolerance");
    }
}
