package org.holdproof.core.assess;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.course.Accounts;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.kinetics.Traces;
import org.holdproof.core.log.Trace;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Food Code 3-501.19: 240 min from 135 °F or above, or from 41 °F or below, marked. Invented logs. */
class TimeOnlyCheckTest {

    @ParameterizedTest(name = "{0} °F, {1} min, mark {2}, tolerance {3}: {4}")
    @CsvSource({
        "140, 240, 18:00, 0, MET",
        "140, 241, 18:00, 0, NOT_MET",
        "130, 60, 18:00, 0, NOT_MET",
        "140, 60, '', 0, NOT_MET",
        "40, 240, 18:00, 0, MET",
        "135.5, 60, 18:00, 0.5, NOT_PROVEN",
    })
    void countsFromTheRightTemperature(
            double startFahrenheit, double minutes, String mark, double tolerance, Verdict verdict) {
        assertThat(check(startFahrenheit, minutes, mark, tolerance).verdict()).isEqualTo(verdict);
    }

    private static Check check(double startFahrenheit, double minutes, String mark, double tolerance) {
        Stage out = new Stage(
                Stage.Kind.TIME_ONLY,
                Instant.EPOCH.plusSeconds(6000),
                Optional.of(Instant.EPOCH.plusSeconds(6000 + Math.round(minutes * 60))),
                OptionalDouble.empty(),
                Optional.empty(),
                mark);
        BatchRecord batch = Cooks.batch("us-food-code-2022", Cooks.BRISKET, Cooks.stage(Stage.Kind.BATH, 0, 100), out);
        Evidence evidence = Cooks.evidence(batch, tolerance, everyFewMinutes(startFahrenheit, minutes));
        return new TimeOnlyCheck(evidence, Accounts.of(evidence)).check().orElseThrow();
    }

    /** A cook to the starting temperature, and that temperature while the food is out, read every five minutes. */
    private static Trace everyFewMinutes(double startFahrenheit, double minutes) {
        List<Double> points = new ArrayList<>();
        for (double minute = 0; minute < 100; minute += 5) {
            points.addAll(List.of(minute, 150 + minute / 100 * (startFahrenheit - 150)));
        }
        for (double minute = 100; minute < 100 + minutes; minute += 5) {
            points.addAll(List.of(minute, startFahrenheit));
        }
        points.addAll(List.of(100 + minutes, startFahrenheit));
        return Traces.fahrenheit(
                points.stream().mapToDouble(Double::doubleValue).toArray());
    }
}
