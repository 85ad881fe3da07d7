package org.holdproof.core.heat;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.holdproof.core.heat.MediumSchedule.Segment;
import org.holdproof.core.log.Trace;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Steps no core can make, on made-up cores drawn with the seeds each test names. */
class CoreStepsTest {
    private static final double HOT = 62;

    /** A core from the cold through a hot bath into ice water, with noise and a logger's last digit. */
    private static double[] core(
            SplittableRandom random, double thickness, double interval, int readings, double noise) {
        MediumSchedule waters = MediumSchedule.of(
                Segment.hold(interval * readings / 2, HOT, 400), Segment.hold(interval * readings, 0, 400));
        double[] real = Conduction.of(
                        Piece.of(thickness * (0.95 + 0.1 * random.nextDouble()), 0.28 * random.nextDouble()),
                        ThermalProperties.constant(0.5, (1.0 + 0.6 * random.nextDouble()) * 1e-7))
                .runAt(0.2 * random.nextDouble(), 5, waters, SyntheticLog.minutes(readings, interval));
        return SyntheticLog.noisy(real, noise, 0.1, random);
    }

    private static CoreSteps steps(Trace core, double thickness) {
        return new CoreSteps(core, new Piece(thickness, 0, 0.28), HOT, 0);
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void noCoreIsCaughtAndNothingOfItLostHoweverThinOrNoisy(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int log = 0; log < 40; log++) {
            double thickness = 10 + random.nextInt(90);
            double interval = new double[] {0.5, 1, 5}[random.nextInt(3)];
            double noise = random.nextBoolean() ? 0.1 : 0.4;
            Trace core = SyntheticLog.trace(
                    "core", SyntheticLog.minutes(400, interval), core(random, thickness, interval, 400, noise));
            CoreSteps steps = steps(core, thickness);
            assertThat(steps.impossibleRise()).isEmpty();
            assertThat(steps.impossibleFall(5)).isEmpty();
            int lowered = 0;
            for (int i = 0; i < core.size(); i++) {
                assertThat(steps.credited().celsius(i)).isLessThanOrEqualTo(core.celsius(i));
                lowered += steps.credited().celsius(i) < core.celsius(i) ? 1 : 0;
            }
            // what noise alone may cost
            assertThat(lowered).isLessThanOrEqualTo(core.size() / 100);
        }
    }

    @Test
    void oneOrTwoStraysAreCreditedNothing() {
        SplittableRandom random = new SplittableRandom(5);
        double[] celsius = core(random, 60, 1, 400, 0.1);
        celsius[120] = 76;
        celsius[150] = 74;
        celsius[151] = 75;
        Trace core = SyntheticLog.trace("core", SyntheticLog.minutes(400, 1), celsius);
        CoreSteps steps = steps(core, 60);
        assertThat(steps.impossibleRise()).isEmpty();
        for (int i : new int[] {120, 150, 151}) {
            assertThat(steps.credited().celsius(i)).isLessThan(62.5);
        }
        assertThat(steps.credited().celsius(119)).isEqualTo(celsius[119]);
    }

    @Test
    void aJumpThatStaysIsSeenAtItsFirstReading() {
        SplittableRandom random = new SplittableRandom(6);
        double[] celsius = core(random, 80, 1, 400, 0.1);
        for (int i = 60; i < 200; i++) {
            celsius[i] = 61.8;
        }
        Trace core = SyntheticLog.trace("core", SyntheticLog.minutes(400, 1), celsius);
        assertThat(steps(core, 80).impossibleRise().orElseThrow())
                .isBetween(SyntheticLog.ZERO + 60 * 60_000L, SyntheticLog.ZERO + 61 * 60_000L);
    }

    @Test
    void aFallIntoTheIceIsSeenUnlessItIsTakenBack() {
        SplittableRandom random = new SplittableRandom(7);
        double[] moved = core(random, 60, 1, 400, 0.1);
        double[] out = moved.clone();
        for (int i = 200; i < 400; i++) {
            moved[i] = 0.4;
        }
        for (int i = 200; i < 210; i++) {
            out[i] = 22;
        }
        double[] minutes = SyntheticLog.minutes(400, 1);
        assertThat(steps(SyntheticLog.trace("core", minutes, moved), 60).impossibleFall(5))
                .isPresent();
        assertThat(steps(SyntheticLog.trace("core", minutes, out), 60).impossibleFall(5))
                .isEmpty();
    }
}
