package org.holdproof.core.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static org.holdproof.core.heat.HeatReference.number;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.stream.Stream;
import org.holdproof.core.heat.Composition.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Properties from composition after Choi and Okos (1986): thermal-properties.csv of the reference tables. */
class CompositionTest {

    static Stream<String> foods() {
        return computed().map(CompositionTest::title);
    }

    private static Stream<NamedCsvRecord> computed() {
        return HeatReference.shipped("thermal-properties.csv").stream()
                .filter(row -> row.getField("record").equals("computed from composition"));
    }

    private static String title(NamedCsvRecord row) {
        return row.getField("food") + " at " + row.getField("temperature_C") + " °C";
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("foods")
    void agreesWithTheValuesComputedBesideTheCoefficients(String food) {
        NamedCsvRecord row =
                computed().filter(r -> title(r).equals(food)).findFirst().orElseThrow();
        Composition composition = Composition.ofMeat(
                number(row, "water_pct"), number(row, "protein_pct"), number(row, "fat_pct"), number(row, "ash_pct"));
        double celsius = number(row, "temperature_C");
        ThermalProperties parallel = composition.properties(Path.PARALLEL);
        ThermalProperties series = composition.properties(Path.SERIES);

        String[] conductivity = row.getField("k_W_mK").split("[( )]+", -1);
        assertThat(parallel.conductivity(celsius)).isCloseTo(Double.parseDouble(conductivity[0]), within(0.00051));
        assertThat(series.conductivity(celsius)).isCloseTo(Double.parseDouble(conductivity[2]), within(0.00051));
        String[] diffusivity = row.getField("alpha_1e-7_m2_s").split("[( )]+", -1);
        assertThat(1e7 * parallel.diffusivity(celsius)).isCloseTo(Double.parseDouble(diffusivity[0]), within(0.0051));
        assertThat(1e7 * series.diffusivity(celsius)).isCloseTo(Double.parseDouble(diffusivity[2]), within(0.0051));
        assertThat(parallel.heatCapacity(celsius))
                .isCloseTo(
                        number(row, "rho_kg_m3") * number(row, "cp_J_kgK"),
                        within(0.51 * (number(row, "rho_kg_m3") + number(row, "cp_J_kgK"))));
    }

    /** Water at 60 °C: 0.654 W/(m K), 983 kg/m³, 4185 J/(kg K), saturated water tables (from memory); Choi–Okos ±2 %. */
    @Test
    void pureWaterComesOutAsWater() {
        ThermalProperties water = new Composition(100, 0, 0, 0, 0, 0).properties(Path.PARALLEL);

        assertThat(water.conductivity(60)).isCloseTo(0.654, within(0.02 * 0.654));
        assertThat(water.heatCapacity(60)).isCloseTo(983 * 4185.0, within(0.02 * 983 * 4185));
    }

    @Test
    void partsThatDoNotMakeAWholeAreRefused() {
        assertThatIllegalArgumentException().isThrownBy(() -> Composition.ofMeat(50, 20, 5, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> Composition.ofMeat(105, -5, 0, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> Composition.ofMeat(Double.NaN, 20, 5, 1));
    }
}
