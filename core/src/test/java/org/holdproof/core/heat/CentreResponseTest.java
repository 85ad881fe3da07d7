package org.holdproof.core.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.holdproof.core.heat.MediumSchedule.Segment;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The modes against tables of Bessel zeros, against the series in closed form and against the march on a grid. */
class CentreResponseTest {

    /**
     * After a jump, long enough that one mode is left: slab 4/π and π/2, cylinder 1.60197 and 2.404826 (Abramowitz and
     * Stegun 1964, table 9.5; the factor 2/(z J₁(z)) with J₁(2.404826) = 0.519147), sphere 2 and π.
     */
    @ParameterizedTest(name = "shape factor {0}")
    @CsvSource({"0, 1.2732395447, 1.5707963268", "1, 1.6019746970, 2.4048255577", "2, 2, 3.1415926536"})
    void theLastModeLeftIsTheTabulatedOne(double shapeFactor, double weight, double zero) {
        double[] at = {100, 150};
        double[] left =
                CentreResponse.of(shapeFactor).follow(0, MediumSchedule.held(1, Double.POSITIVE_INFINITY), 0.01, at);

        for (int i = 0; i < at.length; i++) {
            assertThat(1 - left[i]).isCloseTo(weight * Math.exp(-zero * zero * 0.01 * at[i]), within(1e-9));
        }
    }

    /** A slab at Fo 0.2 and 0.1, its series summed by hand: 0.7723 and 0.9493 of the gap are left. */
    @Test
    void aSlabFollowsItsSeries() {
        double[] at = {10, 20};
        double[] found = CentreResponse.of(0).follow(1, MediumSchedule.held(0, Double.POSITIVE_INFINITY), 0.01, at);

        for (int i = 0; i < at.length; i++) {
            double fourier = 0.01 * at[i];
            double sum = 0;
            for (int n = 0; n < 50; n++) {
                double z = (n + 0.5) * Math.PI;
                sum += 2 * (n % 2 == 0 ? 1 : -1) / z * Math.exp(-z * z * fourier);
            }
            assertThat(found[i]).isCloseTo(sum, within(1e-9));
        }
        assertThat(found[0]).isCloseTo(0.9493, within(5e-5));
        assertThat(found[1]).isCloseTo(0.7723, within(5e-5));
    }

    /** The steepest a slab's centre gets, from the image series' single term: the peak of x e^(−x²) / (√π Fo) · 2. */
    @Test
    void theSteepestAnswerOfASlabIsThatOfItsImages() {
        double largest = 0;
        for (double fourier = 0.01; fourier < 0.3; fourier += 1e-5) {
            double rate = 0;
            for (int image = 0; image < 4; image++) {
                double way = 2 * image + 1;
                rate += (image % 2 == 0 ? 1 : -1)
                        * way
                        * Math.exp(-way * way / (4 * fourier))
                        / (Math.sqrt(Math.PI) * Math.pow(fourier, 1.5));
            }
            largest = Math.max(largest, rate);
        }
        assertThat(CentreResponse.of(0).steepest()).isCloseTo(largest, within(2e-4 * largest));
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void theModesAgreeWithTheMarch(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double shapeFactor = new double[] {0, 0.28, 1, 1.25, 2}[random.nextInt(5)];
        double thickness = 10 + random.nextInt(110);
        double interval = 1 + random.nextInt(5);
        Segment[] segments = new Segment[60];
        double medium = 20;
        for (int i = 0; i < segments.length; i++) {
            double to = random.nextInt(6) == 0 ? random.nextInt(100) : medium + random.nextInt(5) - 2;
            boolean jump = random.nextInt(12) == 0;
            segments[i] = new Segment(interval, jump ? to : medium, to, Double.POSITIVE_INFINITY);
            medium = to;
        }
        MediumSchedule schedule = MediumSchedule.of(segments);
        double[] at = SyntheticLog.minutes(segments.length, interval);
        double[] march = Conduction.of(Piece.of(thickness, shapeFactor), ThermalProperties.constant(0.5, 1.6e-7))
                .runAt(0, 5, schedule, at);
        double half = thickness / 2000;
        double[] modes = CentreResponse.of(shapeFactor).follow(5, schedule, 1.6e-7 * 60 / (half * half), at);

        for (int i = 0; i < at.length; i++) {
            assertThat(modes[i])
                    .as("minute %s", at[i])
                    .isCloseTo(march[i], within(Conduction.DEFAULT_TOLERANCE_CELSIUS));
        }
    }
}
