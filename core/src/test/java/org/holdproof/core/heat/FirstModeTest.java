package org.holdproof.core.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.holdproof.core.heat.HeatReference.number;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Against eigenvalues.csv: the one-term coefficients of slab, cylinder and sphere as printed in Çengel, Heat and Mass
 * Transfer, Table 4-2 (read; Biot 0.01 to 10, four decimals), and values computed with Bessel functions to eight decimals
 * for all shape factors and Biot numbers up to infinity.
 */
class FirstModeTest {

    static Stream<String> printed() {
        return all().filter(row -> !row.getField("zeta1_published").isEmpty()).map(FirstModeTest::title);
    }

    static Stream<String> computed() {
        return all().map(FirstModeTest::title);
    }

    private static Stream<NamedCsvRecord> all() {
        return HeatReference.rows("eigenvalues.csv").stream();
    }

    private static String title(NamedCsvRecord row) {
        return "β " + row.getField("beta") + ", Bi " + row.getField("Bi");
    }

    private static NamedCsvRecord row(String title) {
        return all().filter(row -> title(row).equals(title)).findFirst().orElseThrow();
    }

    private static FirstMode mode(NamedCsvRecord row) {
        double biot = row.getField("Bi").equals("inf") ? Double.POSITIVE_INFINITY : number(row, "Bi");
        return FirstMode.of(number(row, "beta"), biot);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("printed")
    void agreesWithThePrintedTable(String title) {
        NamedCsvRecord row = row(title);

        assertThat(mode(row).eigenvalue()).isCloseTo(number(row, "zeta1_published"), within(0.000101));
        assertThat(mode(row).weight()).isCloseTo(number(row, "C1_published"), within(0.000101));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("computed")
    void agreesWithTheBesselFunctions(String title) {
        NamedCsvRecord row = row(title);

        assertThat(mode(row).eigenvalue()).isCloseTo(number(row, "zeta1_computed"), within(6e-9));
        assertThat(mode(row).weight()).isCloseTo(number(row, "C1_computed"), within(6e-9));
    }
}
