package org.holdproof.core.kinetics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.LongStream;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class LethalRateTest {
    private static final double NONE_BELOW = Double.NEGATIVE_INFINITY;
    private static final double NO_CAP = Double.POSITIVE_INFINITY;

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 200);
    }

    /** Independent reference: Legendre-Gauss quadrature of Apache Commons Math 3.6.1, each smooth piece by itself. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theClosedFormIsTheIntegral(long seed) {
        Random random = new Random(seed);
        double reference = 50 + 80 * random.nextDouble();
        double z = 4 + 10 * random.nextDouble();
        double floor = random.nextBoolean() ? NONE_BELOW : 45 + 20 * random.nextDouble();
        double cap = random.nextBoolean() ? NO_CAP : 66 + 20 * random.nextDouble();
        double from = 40 + 60 * random.nextDouble();
        double to = random.nextInt(5) == 0 ? from + 0.01 + 0.1 * random.nextDouble() : 40 + 60 * random.nextDouble();
        double minutes = 0.1 + 200 * random.nextDouble();
        LethalRate rate = new LethalRate(reference, z, floor, cap);

        double low = Math.min(from, to);
        double high = Math.max(from, to);
        double expected = piece(rate, low, Math.min(high, cap), high - low, floor) * minutes
                + (high > cap ? rate.at(cap) * (high - Math.max(low, cap)) / (high - low) * minutes : 0);

        assertThat(rate.equivalentMinutes(from, to, minutes)).isCloseTo(expected, within(1e-9 * Math.max(1, expected)));
    }

    private static double piece(LethalRate rate, double low, double high, double rise, double floor) {
        double from = Math.max(low, floor);
        if (from >= high) {
            return 0;
        }
        return new IterativeLegendreGaussIntegrator(20, 1e-13, 1e-13).integrate(100_000, rate::at, from, high) / rise;
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void cuttingALineInTwoChangesNothing(long seed) {
        Random random = new Random(seed);
        LethalRate rate = new LethalRate(60, 5.56, 54.4, 70);
        double from = 45 + 35 * random.nextDouble();
        double to = 45 + 35 * random.nextDouble();
        double share = random.nextDouble();
        double middle = from + share * (to - from);

        double whole = rate.equivalentMinutes(from, to, 90);
        double parts =
                rate.equivalentMinutes(from, middle, 90 * share) + rate.equivalentMinutes(middle, to, 90 * (1 - share));

        assertThat(parts).isCloseTo(whole, within(1e-9 * Math.max(1, whole)));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void hotterOrLongerIsNeverWorthLess(long seed) {
        Random random = new Random(seed);
        LethalRate rate = new LethalRate(60, 6, 54.4, 72);
        double from = 40 + 40 * random.nextDouble();
        double to = 40 + 40 * random.nextDouble();
        double minutes = 100 * random.nextDouble();
        double value = rate.equivalentMinutes(from, to, minutes);

        assertThat(rate.equivalentMinutes(from + random.nextDouble(), to, minutes))
                .isGreaterThanOrEqualTo(value);
        assertThat(rate.equivalentMinutes(from, to + random.nextDouble(), minutes))
                .isGreaterThanOrEqualTo(value);
        assertThat(rate.equivalentMinutes(from, to, minutes + random.nextDouble()))
                .isGreaterThanOrEqualTo(value);
        assertThat(rate.equivalentMinutes(to, from, minutes)).isEqualTo(value);
    }

    /** Where the rise is too small for quadrature to resolve, the mean rate lies between the two ends'. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void aTinyRiseLosesNoDigits(long seed) {
        Random random = new Random(seed);
        LethalRate rate = new LethalRate(60, 5.56, 40, 90);
        double from = 45 + 40 * random.nextDouble();
        double to = from + Math.pow(10, -2 - 12 * random.nextDouble());

        assertThat(rate.equivalentMinutes(from, to, 1))
                .isBetween(rate.at(from) * (1 - 1e-12), rate.at(to) * (1 + 1e-12));
    }

    @Test
    void nothingBelowTheFloorAndNoMoreThanTheCap() {
        LethalRate rate = new LethalRate(60, 10, 54, 70);

        assertThat(rate.at(53.999)).isZero();
        assertThat(rate.at(54)).isCloseTo(Math.pow(10, -0.6), within(1e-12));
        assertThat(rate.at(95)).isEqualTo(rate.at(70));
        assertThat(rate.equivalentMinutes(40, 53, 1000)).isZero();
        assertThat(rate.equivalentMinutes(80, 90, 3)).isCloseTo(30, within(1e-9));
    }
}
