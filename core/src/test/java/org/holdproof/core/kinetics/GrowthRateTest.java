package org.holdproof.core.kinetics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.holdproof.core.rules.GrowthModel;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class GrowthRateTest {
    static LongStream seeds() {
        return LongStream.rangeClosed(1, 150);
    }

    private static GrowthRate random(Random random) {
        List<GrowthModel> models = new ArrayList<>();
        int count = 1 + random.nextInt(3);
        for (int i = 0; i < count; i++) {
            models.add(GrowthModels.random(random));
        }
        return GrowthRate.fastestOf(models);
    }

    /** Independent reference: Legendre-Gauss quadrature of Apache Commons Math 3.6.1, inside the growth range. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theGrowthAlongALineIsTheIntegral(long seed) {
        Random random = new Random(seed);
        GrowthModel model = GrowthModels.random(random);
        GrowthRate rate = GrowthRate.of(model);
        double from = 60 * random.nextDouble();
        double to = 60 * random.nextDouble();
        double minutes = 1 + 600 * random.nextDouble();
        double low = Math.max(model.minCelsius(), Math.min(from, to));
        double high = Math.min(model.maxCelsius(), Math.max(from, to));
        double expected = high <= low
                ? 0
                : new IterativeLegendreGaussIntegrator(20, 1e-12, 1e-12).integrate(1_000_000, rate::at, low, high)
                        / Math.abs(to - from)
                        * minutes
                        / 60;

        assertThat(rate.alongLine(from, to, minutes)).isCloseTo(expected, within(1e-9 * Math.max(1, expected)));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void cuttingALineInTwoOrTurningItRoundChangesNothing(long seed) {
        Random random = new Random(seed);
        GrowthRate rate = random(random);
        double from = 60 * random.nextDouble();
        double to = 60 * random.nextDouble();
        double share = random.nextDouble();
        double middle = from + share * (to - from);

        double whole = rate.alongLine(from, to, 90);
        double parts = rate.alongLine(from, middle, 90 * share) + rate.alongLine(middle, to, 90 * (1 - share));

        assertThat(parts).isCloseTo(whole, within(1e-9 * Math.max(1, whole)));
        assertThat(rate.alongLine(to, from, 90)).isEqualTo(whole);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theFastestAndTheSlowestBoundEveryTemperatureBetween(long seed) {
        Random random = new Random(seed);
        GrowthRate rate = random(random);
        double low = 55 * random.nextDouble();
        double high = low + 20 * random.nextDouble() * random.nextDouble();
        double fastest = 0;
        double slowest = Double.POSITIVE_INFINITY;
        int steps = 20_000;
        for (int i = 0; i <= steps; i++) {
            double at = rate.at(low + (high - low) * i / steps);
            fastest = Math.max(fastest, at);
            slowest = Math.min(slowest, at);
        }

        // the largest slope is far below 1e4 an hour for each °C of a step
        assertThat(rate.fastest(low, high))
                .isGreaterThanOrEqualTo(fastest - 1e-12)
                .isCloseTo(fastest, within(1e-2));
        assertThat(rate.slowest(low, high)).isLessThanOrEqualTo(slowest + 1e-12).isCloseTo(slowest, within(1e-2));
        assertThat(rate.fastest()).isGreaterThanOrEqualTo(rate.fastest(low, high) - 1e-12);
        assertThat(rate.alongLine(low, high, 60))
                .isBetween(rate.slowest(low, high) - 1e-9, rate.fastest(low, high) + 1e-9);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void nothingGrowsOutsideTheRangeAndFastestAtTheOptimum(long seed) {
        Random random = new Random(seed);
        GrowthModel model = GrowthModels.random(random);
        GrowthRate rate = GrowthRate.of(model);
        double beyond = 40 * random.nextDouble();

        assertThat(rate.at(model.minCelsius() - beyond)).isZero();
        assertThat(rate.at(model.minCelsius())).isZero();
        assertThat(rate.at(model.maxCelsius())).isZero();
        assertThat(rate.at(model.maxCelsius() + beyond)).isZero();
        assertThat(rate.alongLine(model.maxCelsius() + beyond, model.maxCelsius(), 600))
                .isZero();
        assertThat(rate.alongLine(model.minCelsius() - beyond, model.minCelsius(), 600))
                .isZero();
        assertThat(rate.at(model.optimumCelsius())).isCloseTo(model.optimumLnPerHour(), within(1e-12));
        assertThat(rate.fastest()).isEqualTo(model.optimumLnPerHour());
        double inside = model.minCelsius() + random.nextDouble() * (model.maxCelsius() - model.minCelsius());
        assertThat(rate.at(inside)).isBetween(0.0, model.optimumLnPerHour() * (1 + 1e-12));
    }

    /** Where the rise is too small for quadrature to resolve, the mean rate lies between the two ends'. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void aTinyRiseLosesNoDigits(long seed) {
        Random random = new Random(seed);
        GrowthRate rate = GrowthRate.of(GrowthModels.of(8.8, 46.4, 51.5, 6.06));
        double from = 10 + 36 * random.nextDouble();
        double to = from + Math.pow(10, -2 - 12 * random.nextDouble());

        assertThat(rate.alongLine(from, to, 60)).isBetween(rate.at(from) * (1 - 1e-12), rate.at(to) * (1 + 1e-12));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theFastestOfSeveralIsNeverSlowerThanAnyOfThem(long seed) {
        Random random = new Random(seed);
        GrowthModel one = GrowthModels.random(random);
        GrowthModel other = GrowthModels.random(random);
        GrowthRate both = GrowthRate.fastestOf(List.of(one, other));
        double from = 60 * random.nextDouble();
        double to = 60 * random.nextDouble();
        double first = GrowthRate.of(one).alongLine(from, to, 60);
        double second = GrowthRate.of(other).alongLine(from, to, 60);

        assertThat(both.alongLine(from, to, 60))
                .isGreaterThanOrEqualTo(Math.max(first, second) - 1e-9)
                .isLessThanOrEqualTo(first + second + 1e-9);
    }

    @Test
    void refusesCardinalTemperaturesTheEquationHasAPoleBetween() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> GrowthModels.of(10, 25, 50, 1))
                .withMessageContaining("upper half");
        assertThatIllegalArgumentException().isThrownBy(() -> GrowthRate.fastestOf(List.of()));
    }
}
