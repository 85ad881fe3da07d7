package org.holdproof.core.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalLong;
import java.util.Random;
import java.util.stream.LongStream;
import org.holdproof.core.kinetics.Traces;
import org.holdproof.core.log.Trace;
import org.holdproof.core.measure.CoolingClock.Events;
import org.holdproof.core.measure.CoolingClock.StageTime;
import org.holdproof.core.rules.CoolingRule;
import org.holdproof.core.rules.RuleLibrary;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class CoolingClockTest {
    private static final CoolingRule TOTAL =
            RuleLibrary.builtIn().rules(CoolingRule.class).find("US-FDA-COOL-A").orElseThrow();
    private static final CoolingRule DWELL =
            RuleLibrary.builtIn().rules(CoolingRule.class).find("US-FSIS-B1").orElseThrow();

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 200);
    }

    /** A fall from hot to cold with noise, read at uneven times, some of them gaps. */
    private static Trace fall(Random random) {
        int size = 10 + random.nextInt(200);
        long[] millis = new long[size];
        double[] celsius = new double[size];
        double tau = 30 + random.nextInt(120);
        for (int i = 0; i < size; i++) {
            long step = random.nextInt(25) == 0 ? random.nextInt(3_600_000) : 30_000 + random.nextInt(300_000);
            millis[i] = i == 0 ? 0 : millis[i - 1] + 1 + step;
            double minutes = millis[i] / 60_000.0;
            celsius[i] = Math.round((1 + 65 * Math.exp(-minutes / tau) + random.nextGaussian() * 0.4) * 10) / 10.0;
        }
        return new Trace("core", millis, celsius);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theIntervalSpansTheStraightLine(long seed) {
        Random random = new Random(seed);
        Trace trace = fall(random);
        double tolerance = random.nextDouble();
        for (CoolingRule rule : List.of(TOTAL, DWELL)) {
            List<StageTime> bounds =
                    CoolingClock.bounding(trace, tolerance, Events.NONE).time(rule);
            List<StageTime> straight = CoolingClock.straight(trace, Double.POSITIVE_INFINITY, Events.NONE)
                    .time(rule);
            for (int i = 0; i < bounds.size(); i++) {
                assertThat(bounds.get(i).shortestMinutes())
                        .isLessThanOrEqualTo(straight.get(i).shortestMinutes() + 1e-6);
                assertThat(bounds.get(i).longestMinutes())
                        .isGreaterThanOrEqualTo(straight.get(i).longestMinutes() - 1e-6);
            }
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void aWiderToleranceNeverNarrowsTheInterval(long seed) {
        Random random = new Random(seed);
        Trace trace = fall(random);
        for (CoolingRule rule : List.of(TOTAL, DWELL)) {
            List<StageTime> narrow =
                    CoolingClock.bounding(trace, 0.2, Events.NONE).time(rule);
            List<StageTime> wide =
                    CoolingClock.bounding(trace, 0.9, Events.NONE).time(rule);
            for (int i = 0; i < narrow.size(); i++) {
                assertThat(wide.get(i).shortestMinutes())
                        .isLessThanOrEqualTo(narrow.get(i).shortestMinutes() + 1e-9);
                assertThat(wide.get(i).longestMinutes())
                        .isGreaterThanOrEqualTo(narrow.get(i).longestMinutes() - 1e-9);
            }
        }
    }

    /** More readings on the same straight lines say nothing new to the clock that draws them. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void readingsOnTheStraightLineChangeNothing(long seed) {
        Random random = new Random(seed);
        Trace trace = fall(random);
        Trace denser = denser(trace);
        for (CoolingRule rule : List.of(TOTAL, DWELL)) {
            List<StageTime> once = CoolingClock.straight(trace, Double.POSITIVE_INFINITY, Events.NONE)
                    .time(rule);
            List<StageTime> twice = CoolingClock.straight(denser, Double.POSITIVE_INFINITY, Events.NONE)
                    .time(rule);
            for (int i = 0; i < once.size(); i++) {
                assertThat(twice.get(i).shortestMinutes()).isCloseTo(once.get(i).shortestMinutes(), within(1e-4));
            }
        }
    }

    private static Trace denser(Trace trace) {
        int size = trace.size() * 2 - 1;
        long[] millis = new long[size];
        double[] celsius = new double[size];
        for (int i = 0; i < trace.size(); i++) {
            millis[2 * i] = trace.millis(i);
            celsius[2 * i] = trace.celsius(i);
            if (i + 1 < trace.size()) {
                millis[2 * i + 1] = (trace.millis(i) + trace.millis(i + 1)) / 2;
                double share = (millis[2 * i + 1] - trace.millis(i)) / (double) (trace.millis(i + 1) - trace.millis(i));
                celsius[2 * i + 1] = trace.celsius(i) + share * (trace.celsius(i + 1) - trace.celsius(i));
            }
        }
        return new Trace("core", millis, celsius);
    }

    @Test
    void aRecordedEndOfHeatingStartsTheClockOfALowBath() {
        Trace trace = Traces.fahrenheit(0, 131, 60, 80, 100, 65, 240, 40, 300, 39);
        List<StageTime> unknown = CoolingClock.bounding(trace, 0, Events.NONE).time(TOTAL);
        List<StageTime> recorded = CoolingClock.bounding(
                        trace, 0, new Events(OptionalLong.of(-10 * 60_000), OptionalLong.empty()))
                .time(TOTAL);

        assertThat(unknown.get(0).longestMinutes()).isInfinite();
        assertThat(unknown.get(0).startLogged()).isFalse();
        assertThat(recorded.get(0).longestMinutes()).isCloseTo(110, within(1e-9));
        assertThat(recorded.get(1).longestMinutes()).isCloseTo(250, within(1e-9));
    }
}
