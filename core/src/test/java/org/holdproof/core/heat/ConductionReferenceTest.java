package org.holdproof.core.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.holdproof.core.heat.HeatReference.number;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.holdproof.core.heat.Composition.Path;
import org.holdproof.core.heat.MediumSchedule.Segment;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Media that step, ramp and swing, constant and composed properties, against scipy-reference.csv: Chebyshev collocation
 * and SciPy's Radau method, computed by scipy_reference.py beside it. The cooks are invented.
 */
class ConductionReferenceTest {
    /** Of the coarsest march at the core, over all these cooks, in °C. */
    private static final double COARSEST_ERROR = 0.07;

    static Stream<String> cooks() {
        return HeatReference.rows("scipy-cases.csv").stream().map(row -> row.getField("case"));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("cooks")
    void agreesToTheToleranceThroughTheWholeCook(String cook) {
        NamedCsvRecord row = cook(cook);
        List<NamedCsvRecord> reference = HeatReference.rows("scipy-reference.csv").stream()
                .filter(r -> r.getField("case").equals(cook))
                .toList();
        double[] minutes =
                reference.stream().mapToDouble(r -> number(r, "minute")).toArray();

        PieceTemperatures run = Conduction.of(Piece.of(number(row, "thickness_mm"), number(row, "beta")), food(row))
                .run(number(row, "start_C"), schedule(row), minutes);

        double worst = 0;
        for (int i = 0; i < minutes.length; i++) {
            NamedCsvRecord expected = reference.get(i);
            worst = Math.max(worst, Math.abs(run.coreCelsius(i) - number(expected, "core_C")));
            worst = Math.max(worst, Math.abs(run.surfaceCelsius(i) - number(expected, "surface_C")));
            worst = Math.max(worst, Math.abs(run.meanCelsius(i) - number(expected, "mean_C")));
        }
        assertThat(worst).isLessThan(Conduction.DEFAULT_TOLERANCE_CELSIUS);
        assertThat(run.errorCelsius()).isCloseTo(worst, within(0.5 * worst + 1e-4));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("cooks")
    void theErrorFallsWithTheSquareOfTheFineness(String cook) {
        NamedCsvRecord row = cook(cook);
        List<NamedCsvRecord> reference = HeatReference.rows("scipy-reference.csv").stream()
                .filter(r -> r.getField("case").equals(cook))
                .toList();
        double[] minutes =
                reference.stream().mapToDouble(r -> number(r, "minute")).toArray();

        double[] error = new double[6];
        for (int halvings = 0; halvings < error.length; halvings++) {
            double[][] found = Conduction.of(Piece.of(number(row, "thickness_mm"), number(row, "beta")), food(row))
                    .march(number(row, "start_C"), schedule(row), minutes, new double[] {0, 1}, halvings);
            for (int i = 0; i < minutes.length; i++) {
                error[halvings] = Math.max(error[halvings], Math.abs(found[i][0] - number(reference.get(i), "core_C")));
            }
        }
        for (int halvings = 0; halvings < error.length; halvings++) {
            assertThat(error[halvings])
                    .as("halved %d times", halvings)
                    .isLessThan(COARSEST_ERROR / Math.pow(4, halvings));
        }
        if (food(row).isConstant()) {
            assertThat(Math.log(error[0] / error[4]) / Math.log(2) / 4).isCloseTo(2, within(0.05));
        }
    }

    private static NamedCsvRecord cook(String name) {
        return HeatReference.rows("scipy-cases.csv").stream()
                .filter(row -> row.getField("case").equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static MediumSchedule schedule(NamedCsvRecord row) {
        List<Segment> segments = new ArrayList<>();
        for (String text : row.getField("segments").split("\\|", -1)) {
            double[] v = numbers(text);
            segments.add(new Segment(v[0], v[1], v[2], v[3]));
        }
        return MediumSchedule.of(segments);
    }

    private static ThermalProperties food(NamedCsvRecord row) {
        String parts = row.getField("water;protein;fat;ash");
        if (parts.isEmpty()) {
            return ThermalProperties.constant(0.48, 1.3e-7);
        }
        double[] v = numbers(parts);
        return Composition.ofMeat(v[0], v[1], v[2], v[3]).properties(Path.valueOf(row.getField("path")));
    }

    private static double[] numbers(String text) {
        return Arrays.stream(text.split(";", -1))
                .mapToDouble(Double::parseDouble)
                .toArray();
    }
}
