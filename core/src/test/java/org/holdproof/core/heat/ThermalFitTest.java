package org.holdproof.core.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.holdproof.core.log.Trace;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Fits of made-up logs whose truth is known; seeds in the names. */
class ThermalFitTest {
    private static final double BETA = 0.28;
    private static final double DIFFUSIVITY = 1.3e-7;
    private static final double START = 5;
    private static final double BATH = 60;

    /** A log read every minute until the core is half a degree below the bath. */
    private static Trace log(double thickness, double h, double noise, long seed) {
        double[] all = SyntheticLog.minutes(900, 1);
        double[] core = Conduction.of(
                        Piece.of(thickness, BETA),
                        ThermalProperties.constant(ThermalFit.ASSUMED_CONDUCTIVITY, DIFFUSIVITY))
                .within(0.002)
                .runAt(0, START, MediumSchedule.held(BATH, h), all);
        int count = 0;
        while (core[count] < BATH - 0.5) {
            count++;
        }
        double[] minutes = SyntheticLog.minutes(count, 1);
        double[] read = Arrays.copyOf(core, count);
        return SyntheticLog.trace("core", minutes, SyntheticLog.noisy(read, noise, 0, new SplittableRandom(seed)));
    }

    private static Trace bath(int count) {
        return SyntheticLog.trace("bath", SyntheticLog.minutes(count, 1), SyntheticLog.held(BATH, count));
    }

    private static ThermalFit fit(double thickness, Trace core) throws UnfitLogException {
        return ThermalFit.of(Piece.of(thickness, BETA), START, SyntheticLog.ZERO, core, bath(core.size()));
    }

    @ParameterizedTest(name = "{0} mm, h {1}")
    @CsvSource({"25, 95", "50, 95", "50, 400"})
    void theTruthLiesWithinTheLimitsAboutAsOftenAsTheyPromise(double thickness, double h) throws UnfitLogException {
        int logs = 100;
        int diffusivityInside = 0;
        int coefficientInside = 0;
        int decayInside = 0;
        double eigenvalue = FirstMode.of(BETA, h * thickness / 2000 / ThermalFit.ASSUMED_CONDUCTIVITY)
                .eigenvalue();
        double decay = 60 * DIFFUSIVITY * Math.pow(eigenvalue / (thickness / 2000), 2);
        for (long seed = 1; seed <= logs; seed++) {
            ThermalFit fit = fit(thickness, log(thickness, h, 0.2, seed));
            diffusivityInside += fit.diffusivity().covers(DIFFUSIVITY) ? 1 : 0;
            coefficientInside += fit.surfaceCoefficient().covers(h) ? 1 : 0;
            decayInside += fit.decayPerMinute().covers(decay) ? 1 : 0;
        }
        // 95 of 100 promised; fewer than 88 or more than 99.9 has a chance below 0.5 % (binomial)
        assertThat(diffusivityInside).isBetween(88, 100);
        assertThat(coefficientInside).isBetween(88, 100);
        assertThat(decayInside).isBetween(88, 100);
    }

    /**
     * Spread of the fitted figures at 0.2 °C of noise, one-minute readings, from an earlier and independent computation
     * (exact series, linearised): percent standard deviation of α, of h and of the decay rate.
     */
    @ParameterizedTest(name = "{0} mm, h {1}")
    @CsvSource({"25, 95, 1.9, 4, 0.29", "25, 400, 3.9, 25, 0.36", "50, 95, 1.2, 4, 0.20", "75, 95, 1.0, 5, 0.14"})
    void theLimitsAreAsWideAsTheNoiseMakesThem(double thickness, double h, double sdAlpha, double sdH, double sdDecay)
            throws UnfitLogException {
        ThermalFit fit = fit(thickness, log(thickness, h, 0.2, 1));

        double scale = 0.2 / fit.residualCelsius();
        assertThat(scale * percentDeviation(fit.diffusivity())).isCloseTo(sdAlpha, within(0.3 * sdAlpha));
        assertThat(scale * percentDeviation(fit.decayPerMinute())).isCloseTo(sdDecay, within(0.3 * sdDecay));
        assertThat(scale * percentDeviation(fit.surfaceCoefficient())).isCloseTo(sdH, within(0.5 * sdH));
        assertThat(fit.correlation()).isBetween(-1.0, -0.98);
    }

    private static double percentDeviation(ConfidenceInterval interval) {
        return 100 * (interval.high() - interval.low()) / 2 / 1.96 / interval.estimate();
    }

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 20);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theFirstHalfPredictsTheSecond(long seed) throws UnfitLogException {
        SplittableRandom random = new SplittableRandom(seed);
        double thickness = 25 + 50 * random.nextDouble();
        double h = 95 + 300 * random.nextDouble();
        Trace whole = log(thickness, h, 0.2, seed);
        int half = whole.size() / 2;
        Trace first = whole.between(whole.firstMillis(), whole.millis(half));

        ThermalFit fit = fit(thickness, first);

        double[] minutes = SyntheticLog.minutes(whole.size(), 1);
        PieceTemperatures predicted =
                fit.predict(Piece.of(thickness, BETA), START, MediumSchedule.held(BATH, h), minutes);
        double squares = 0;
        for (int i = half; i < whole.size(); i++) {
            squares += Math.pow(predicted.coreCelsius(i) - whole.celsius(i), 2);
        }
        assertThat(Math.sqrt(squares / (whole.size() - half)))
                .as("noise is 0.2 °C")
                .isLessThan(0.4);
    }

    @Test
    void aBathThatSagsIsFollowed() throws UnfitLogException {
        int count = 200;
        double[] minutes = SyntheticLog.minutes(count, 1);
        double[] bath = new double[count];
        for (int i = 0; i < count; i++) {
            bath[i] = BATH - 8 * Math.exp(-i / 20.0);
        }
        Trace medium = SyntheticLog.trace("bath", minutes, bath);
        double[] core = Conduction.of(Piece.of(50, BETA), ThermalProperties.constant(0.48, DIFFUSIVITY))
                .within(0.002)
                .runAt(0, START, MediumSchedule.logged(medium, SyntheticLog.ZERO, 95), minutes);

        ThermalFit fit = ThermalFit.of(
                Piece.of(50, BETA),
                START,
                SyntheticLog.ZERO,
                SyntheticLog.trace("core", minutes, SyntheticLog.noisy(core, 0.1, 0, new SplittableRandom(7))),
                medium);

        assertThat(fit.diffusivity().covers(DIFFUSIVITY)).isTrue();
        assertThat(fit.surfaceCoefficient().covers(95)).isTrue();
    }

    /** Only α/R² is in the log: known α and unknown thickness is the same fit read the other way. */
    @Test
    void withADiffusivityGivenTheFitIsOfTheThickness() throws UnfitLogException {
        Trace core = log(50, 95, 0.1, 3);
        ThermalFit fit = ThermalFit.of(Piece.of(60, BETA), START, SyntheticLog.ZERO, core, bath(core.size()));

        assertThat(fit.diffusivity().estimate()).isCloseTo(DIFFUSIVITY * 1.44, within(0.05e-7));
        assertThat(fit.thicknessMillimetres(DIFFUSIVITY).estimate()).isCloseTo(50, within(1.0));
        assertThat(fit.thicknessMillimetres(DIFFUSIVITY).covers(50)).isTrue();
    }

    @Test
    void logsThatCannotTellAreRefusedWithTheReason() {
        Trace core = log(50, 95, 0.1, 3);
        Trace medium = bath(core.size());
        Piece piece = Piece.of(50, BETA);
        long zero = SyntheticLog.ZERO;

        assertThatThrownBy(() -> ThermalFit.of(piece, START, zero, core.between(zero, zero + 300_000), medium))
                .isInstanceOf(UnfitLogException.class)
                .hasMessage("a fit needs at least 12 core readings after the piece went in; there are 5");
        assertThatThrownBy(() -> ThermalFit.of(piece, START, zero, core.between(zero, zero + 1_500_000), medium))
                .isInstanceOf(UnfitLogException.class)
                .hasMessageContaining("a fit needs at least 50 %");
        assertThatThrownBy(() -> ThermalFit.of(piece, 55, zero, core, medium))
                .isInstanceOf(UnfitLogException.class)
                .hasMessageContaining("less than 10 °C apart");
        assertThatThrownBy(() -> ThermalFit.of(piece, START, zero, core, medium.between(0, 1)))
                .isInstanceOf(UnfitLogException.class)
                .hasMessageContaining("the bath was not logged");
    }
}
