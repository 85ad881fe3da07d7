package org.holdproof.core.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.holdproof.core.heat.HeatReference.number;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.holdproof.core.heat.MediumSchedule.Segment;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Bare meat against smoke-reference.csv: Chebyshev collocation and SciPy's Radau method, computed by smoke_reference.py
 * beside it. The cooks are invented.
 */
class DryingReferenceTest {
    static Stream<String> cooks() {
        return HeatReference.rows("smoke-cases.csv").stream().map(row -> row.getField("case"));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("cooks")
    void agreesToTheToleranceThroughTheWholeCook(String cook) {
        List<NamedCsvRecord> reference = reference(cook);
        double[] minutes = minutes(reference);

        PieceTemperatures run = conduction(row(cook)).run(number(row(cook), "start_C"), schedule(cook), minutes);

        double worst = 0;
        for (int i = 0; i < minutes.length; i++) {
            NamedCsvRecord expected = reference.get(i);
            worst = Math.max(worst, Math.abs(run.coreCelsius(i) - number(expected, "core_C")));
            worst = Math.max(worst, Math.abs(run.surfaceCelsius(i) - number(expected, "surface_C")));
            worst = Math.max(worst, Math.abs(run.meanCelsius(i) - number(expected, "mean_C")));
            assertThat(run.waterLost(i)).isCloseTo(number(expected, "water_kg_m2"), within(1e-3));
        }
        assertThat(worst).isLessThan(Conduction.DEFAULT_TOLERANCE_CELSIUS);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("cooks")
    void theErrorFallsWithTheSquareOfTheFineness(String cook) {
        List<NamedCsvRecord> reference = reference(cook);
        double[] minutes = minutes(reference);
        double[] core = new double[4];
        double[] water = new double[4];
        for (int halvings = 0; halvings < core.length; halvings++) {
            double[][] found = conduction(row(cook))
                    .march(number(row(cook), "start_C"), schedule(cook), minutes, new double[] {0}, halvings);
            for (int i = 0; i < minutes.length; i++) {
                core[halvings] = Math.max(core[halvings], Math.abs(found[i][0] - number(reference.get(i), "core_C")));
                water[halvings] =
                        Math.max(water[halvings], Math.abs(found[i][2] - number(reference.get(i), "water_kg_m2")));
            }
        }
        assertThat(order(core)).as("core %s", Arrays.toString(core)).isCloseTo(2, within(0.25));
        assertThat(order(water)).as("water %s", Arrays.toString(water)).isCloseTo(2, within(0.4));
    }

    /** Over three halvings. */
    private static double order(double[] errors) {
        return Math.log(errors[0] / errors[3]) / Math.log(2) / 3;
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("cooks")
    void whatOneStepLeavesTheNextBeginsFrom(String cook) {
        MediumSchedule whole = schedule(cook);
        List<Segment> segments = segments(cook);
        double first = segments.get(0).minutes();
        double end = whole.endMinutes();
        Conduction conduction = conduction(row(cook));
        double start = number(row(cook), "start_C");

        PieceTemperatures through = conduction.run(start, whole, new double[] {first, first + (end - first) / 2, end});
        PieceTemperatures before = conduction.run(start, MediumSchedule.of(segments.get(0)), new double[] {first});
        if (segments.size() > 1) {
            PieceTemperatures after =
                    conduction.run(before.end(), MediumSchedule.of(segments.subList(1, segments.size())), new double[] {
                        (end - first) / 2, end - first
                    });
            assertThat(after.coreCelsius(0)).isCloseTo(through.coreCelsius(1), within(0.03));
            assertThat(after.coreCelsius(1)).isCloseTo(through.coreCelsius(2), within(0.03));
            assertThat(after.waterLost(1)).isCloseTo(through.waterLost(2), within(2e-3));
        }
        assertThat(before.end().coreCelsius()).isEqualTo(before.coreCelsius(0));
        assertThat(before.end().surfaceCelsius()).isEqualTo(before.surfaceCelsius(0));
        assertThat(before.end().waterLost()).isEqualTo(before.waterLost(0));
    }

    /** The same bits as before meat could dry: dry-path.csv was recorded then, in hexadecimal. */
    @Test
    void withoutBareMeatNothingHasChanged() {
        for (int number = 0; number < 3; number++) {
            String cook = String.valueOf(number);
            List<NamedCsvRecord> recorded = HeatReference.rows("dry-path.csv").stream()
                    .filter(row -> row.getField("case").equals(cook))
                    .toList();
            PieceTemperatures run = DRY_PATH.get(number).run(4, DRY_MEDIA.get(number), minutes(recorded));
            for (int i = 0; i < recorded.size(); i++) {
                assertThat(run.coreCelsius(i)).isEqualTo(number(recorded.get(i), "core"));
                assertThat(run.surfaceCelsius(i)).isEqualTo(number(recorded.get(i), "surface"));
                assertThat(run.meanCelsius(i)).isEqualTo(number(recorded.get(i), "mean"));
                assertThat(run.waterLost(i)).isZero();
            }
        }
    }

    private static final ThermalProperties LEAN = ThermalProperties.constant(0.48, 1.3e-7);
    private static final List<Conduction> DRY_PATH = List.of(
            Conduction.of(Piece.of(60, 0), LEAN),
            Conduction.of(Piece.of(90, 1), LEAN),
            Conduction.of(
                    Piece.of(45, 1), Composition.ofMeat(55.2, 16.9, 26.5, 0.8).properties(Composition.Path.SERIES)));
    private static final List<MediumSchedule> DRY_MEDIA = List.of(
            MediumSchedule.of(
                    Segment.hold(240, 110, 18),
                    Segment.hold(20, 22, 7),
                    Segment.hold(600, 57, 95),
                    Segment.hold(240, 0.5, 105)),
            MediumSchedule.of(
                    new Segment(30, 20, 110, 15),
                    Segment.hold(300, 110, 15),
                    Segment.hold(400, 68.3, Double.POSITIVE_INFINITY)),
            MediumSchedule.of(Segment.hold(60, 12, 7), new Segment(200, 60, 64, 300), Segment.hold(200, 2, 105)));

    private static NamedCsvRecord row(String name) {
        return HeatReference.rows("smoke-cases.csv").stream()
                .filter(row -> row.getField("case").equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static List<NamedCsvRecord> reference(String cook) {
        return HeatReference.rows("smoke-reference.csv").stream()
                .filter(row -> row.getField("case").equals(cook))
                .toList();
    }

    private static double[] minutes(List<NamedCsvRecord> rows) {
        return rows.stream().mapToDouble(row -> number(row, "minute")).toArray();
    }

    private static Conduction conduction(NamedCsvRecord row) {
        return Conduction.of(
                Piece.of(number(row, "thickness_mm"), number(row, "beta")),
                ThermalProperties.constant(0.48, number(row, "alpha")));
    }

    private static MediumSchedule schedule(String cook) {
        return MediumSchedule.of(segments(cook));
    }

    private static List<Segment> segments(String cook) {
        List<Segment> segments = new ArrayList<>();
        for (String text : row(cook).getField("segments").split("\\|", -1)) {
            double[] v = Arrays.stream(text.replace("inf", "Infinity").split(";", -1))
                    .mapToDouble(Double::parseDouble)
                    .toArray();
            segments.add(
                    v.length == 4
                            ? new Segment(v[0], v[1], v[2], v[3])
                            : Segment.bare(v[0], v[1], v[2], Exposure.of(v[3], v[4], v[5], new Wetness(v[6], v[7]))));
        }
        return segments;
    }
}
