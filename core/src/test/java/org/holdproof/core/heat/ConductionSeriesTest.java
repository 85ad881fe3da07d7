package org.holdproof.core.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.holdproof.core.heat.HeatReference.number;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Against the exact series over Biot 0.1 to 100 and Fourier 0.02 to 5, slab to sphere: series-reference.csv, computed
 * with mpmath at 40 digits by series_reference.py beside it.
 */
class ConductionSeriesTest {
    private static final double START = 5;
    private static final double BATH = 60;
    private static final double CONDUCTIVITY = 0.48;
    private static final double DIFFUSIVITY = 1.3e-7;
    private static final double THICKNESS = 50;

    record Case(double beta, double biot, double fourier, double centre, double surface, double mean) {
        double minutes() {
            double half = THICKNESS / 2000;
            return fourier * half * half / DIFFUSIVITY / 60;
        }

        double[] exact() {
            return new double[] {celsius(centre), celsius(surface), celsius(mean)};
        }

        private static double celsius(double theta) {
            return BATH + (START - BATH) * theta;
        }

        Conduction conduction() {
            return Conduction.of(Piece.of(THICKNESS, beta), ThermalProperties.constant(CONDUCTIVITY, DIFFUSIVITY));
        }

        MediumSchedule bath() {
            return MediumSchedule.held(BATH, biot * CONDUCTIVITY / (THICKNESS / 2000));
        }
    }

    static List<Case> cases() {
        return HeatReference.rows("series-reference.csv").stream()
                .map(ConductionSeriesTest::read)
                .toList();
    }

    private static Case read(NamedCsvRecord row) {
        return new Case(
                number(row, "beta"),
                number(row, "biot"),
                number(row, "fourier"),
                number(row, "theta_centre"),
                number(row, "theta_surface"),
                number(row, "theta_mean"));
    }

    @ParameterizedTest
    @MethodSource("cases")
    void aRunKeepsItsPromiseOfTwoHundredthsOfADegree(Case c) {
        PieceTemperatures run = c.conduction().run(START, c.bath(), new double[] {c.minutes()});

        double[] exact = c.exact();
        double[] found = {run.coreCelsius(0), run.surfaceCelsius(0), run.meanCelsius(0)};
        assertThat(run.errorCelsius()).isLessThanOrEqualTo(Conduction.DEFAULT_TOLERANCE_CELSIUS);
        for (int i = 0; i < exact.length; i++) {
            assertThat(found[i]).isCloseTo(exact[i], within(Conduction.DEFAULT_TOLERANCE_CELSIUS));
            assertThat(Math.abs(found[i] - exact[i]))
                    .as("the stated error covers the true one")
                    .isLessThanOrEqualTo(1.1 * run.errorCelsius() + 1e-4);
        }
    }

    @ParameterizedTest
    @MethodSource("cases")
    void aTighterToleranceIsKeptToo(Case c) {
        PieceTemperatures run = c.conduction().within(0.0005).run(START, c.bath(), new double[] {c.minutes()});

        assertThat(run.coreCelsius(0)).isCloseTo(c.exact()[0], within(0.0005));
        assertThat(run.surfaceCelsius(0)).isCloseTo(c.exact()[1], within(0.0005));
        assertThat(run.meanCelsius(0)).isCloseTo(c.exact()[2], within(0.0005));
    }

    @Test
    void halvingGridAndStepQuartersTheError() {
        double[] error = new double[5];
        for (Case c : cases()) {
            double[] exact = c.exact();
            for (int halvings = 0; halvings < error.length; halvings++) {
                double[] found = c.conduction()
                        .march(START, c.bath(), new double[] {c.minutes()}, new double[] {0, 1}, halvings)[0];
                for (int i = 0; i < exact.length; i++) {
                    error[halvings] = Math.max(error[halvings], Math.abs(found[i] - exact[i]));
                }
            }
        }
        assertThat(Stream.of(1, 2, 3, 4).map(i -> Math.log(error[i - 1] / error[i]) / Math.log(2)))
                .as("order of convergence over %d cases", cases().size())
                .allSatisfy(order -> assertThat(order).isCloseTo(2, within(0.05)));
    }
}
