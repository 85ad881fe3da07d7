package org.holdproof.core.heat.smoke;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.holdproof.core.heat.Conduction;
import org.holdproof.core.heat.Exposure;
import org.holdproof.core.heat.MediumSchedule;
import org.holdproof.core.heat.MediumSchedule.Segment;
import org.holdproof.core.heat.Piece;
import org.holdproof.core.heat.ThermalProperties;
import org.holdproof.core.heat.Wetness;
import org.holdproof.core.log.Trace;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Where three published logs stall, and that no invented piece that never dries is called stalled. */
class StallTest {
    @ParameterizedTest(name = "{0}")
    @CsvSource({
        // core, air, last minute, called at h, core then, core at the end
        "LOG1-A, LOG1-AIR, 390, 3.9, 71.4, 73.0",
        "LOG1-B, LOG1-AIR, 390, 3.9, 66.9, 69.8",
        "LOG2-P, LOG2-AIR, 415, 5.5, 67.0, 69.0"
    })
    void isCalledOnTheLogs(String core, String air, int last, double hours, double celsius, double end) {
        Trace cores = SmokerLogs.everyMinute(core, last);
        Stall stall = Stall.firstIn(cores, SmokerLogs.everyMinute(air, last)).orElseThrow();

        assertThat(stall.atMillis() / 3.6e6).isCloseTo(hours, within(0.05));
        assertThat(stall.coreCelsius()).isCloseTo(celsius, within(0.05));
        assertThat(stall.risePerHour()).isLessThan(2);
        assertThat(cores.celsius(last)).isCloseTo(end, within(0.05));
    }

    @Test
    void sixtyPiecesThatNeverDryAreNeverCalled() {
        for (int seed = 1; seed <= 60; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            Exposure wrapped = Exposure.of(random.nextDouble(6, 20), 0.3, 0, Wetness.NONE);
            Trace core = core(random, wrapped);
            assertThat(Stall.firstIn(core, air(core))).as("seed %d", seed).isEmpty();
        }
    }

    /** The rule is careful: of cooks after the product's own surface half never stall so hard that it calls them. */
    @Test
    void aboutHalfOfSixtyPiecesThatDryAreCalled() {
        int called = 0;
        for (int seed = 1; seed <= 60; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            Trace core = core(random, SmokerSurface.at(random.nextDouble(-0.5, 0.5)));
            called += Stall.firstIn(core, air(core)).isPresent() ? 1 : 0;
        }
        assertThat(called).isBetween(20, 40);
    }

    @Test
    void aCoreBelow50OrAirNearItIsNoStall() {
        assertThat(Stall.now(flat(49), airAt(flat(49), 110))).isEmpty();
        assertThat(Stall.now(flat(60), airAt(flat(60), 110))).isPresent();
        assertThat(Stall.now(flat(60), airAt(flat(60), 79))).isEmpty();
    }

    private static Trace flat(double celsius) {
        long[] millis = IntStream.rangeClosed(0, 60).mapToLong(i -> i * 60_000L).toArray();
        return new Trace(
                "core",
                millis,
                IntStream.rangeClosed(0, 60).mapToDouble(i -> celsius).toArray());
    }

    /** Sixteen hours at 102 to 125 °C, a piece of 50 to 120 mm, readings every minute with a scatter of 0.2 °C. */
    private static Trace core(SplittableRandom random, Exposure surface) {
        Piece piece = Piece.of(random.nextDouble(50, 120), random.nextDouble(0.25, 1.25));
        double air = random.nextDouble(102, 125);
        double[] minutes = IntStream.rangeClosed(0, 960).asDoubleStream().toArray();
        double[] core = Conduction.of(piece, ThermalProperties.constant(0.48, random.nextDouble(1.1e-7, 1.5e-7)))
                .within(1)
                .run(random.nextDouble(2, 8), MediumSchedule.of(Segment.bare(960, air, air, surface)), minutes)
                .coreCelsius();
        for (int i = 0; i < core.length; i++) {
            core[i] += 0.2 * random.nextGaussian();
        }
        return new Trace(
                "core",
                IntStream.rangeClosed(0, 960).mapToLong(i -> i * 60_000L).toArray(),
                core);
    }

    private static Trace air(Trace core) {
        return airAt(core, 110);
    }

    private static Trace airAt(Trace core, double celsius) {
        long[] millis = IntStream.range(0, core.size()).mapToLong(core::millis).toArray();
        return new Trace(
                "air",
                millis,
                IntStream.range(0, core.size()).mapToDouble(i -> celsius).toArray());
    }
}
