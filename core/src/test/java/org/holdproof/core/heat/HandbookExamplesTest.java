package org.holdproof.core.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.holdproof.core.heat.HeatReference.number;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.List;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Worked examples of heat-transfer textbooks: handbook-cases.csv, whose {@code source_id} leads to the shipped
 * sources.json and whose {@code how} says whether the figure was read or recalled. Each is compared with the exact series
 * at the precision that was recorded, and with the printed answer: at the printed precision where the book is exact,
 * otherwise at the measured difference (in percent of the printed answer), because charts, one-term formulas and slips
 * of the books' own explain it.
 */
class HandbookExamplesTest {

    static List<String> solvedExactly() {
        return ids("exact_series");
    }

    static List<String> answeredInPrint() {
        return ids("published");
    }

    private static List<String> ids(String field) {
        return HeatReference.rows("handbook-cases.csv").stream()
                .filter(row -> !row.getField(field).isEmpty())
                .map(row -> row.getField("id") + ": " + row.getField("problem") + " [" + row.getField("source_id")
                        + ", " + row.getField("how") + "]")
                .toList();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("solvedExactly")
    void agreesWithTheExactSeries(String example) {
        NamedCsvRecord row = row(example);

        assertThat(answer(row)).isCloseTo(number(row, "exact_series"), within(number(row, "exact_rounding")));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("answeredInPrint")
    void standsToThePrintedAnswerAsMeasured(String example) {
        NamedCsvRecord row = row(example);

        double published = number(row, "published");
        double answer = answer(row);
        if (row.getField("off_percent").isEmpty()) {
            assertThat(answer).isCloseTo(published, within(number(row, "published_rounding")));
        } else {
            assertThat(100 * (answer / published - 1)).isCloseTo(number(row, "off_percent"), within(0.06));
        }
    }

    private static NamedCsvRecord row(String example) {
        String id = example.substring(0, example.indexOf(':'));
        return HeatReference.rows("handbook-cases.csv").stream()
                .filter(row -> row.getField("id").equals(id))
                .findFirst()
                .orElseThrow();
    }

    private static double answer(NamedCsvRecord row) {
        double given = number(row, "given");
        return switch (row.getField("asked")) {
            case "time to reach" -> inUnit(row, minutesTo(given, number(row, "h"), row));
            case "temperature after" -> celsiusAt(number(row, "place"), given, number(row, "h"), row);
            case "h so that it reaches after 165 min" -> root(h -> celsiusAt(0, 165, h, row) - given, 10, 1000);
            case "h so that the surface is at -1 when it reaches" ->
                root(h -> celsiusAt(1, minutesTo(given, h, row), h, row) + 1, 1, 100);
            case "depth at 0 C after" ->
                root(depth -> celsiusAt(1 - depth / 4, given, Double.POSITIVE_INFINITY, row), 0.01, 2);
            default -> throw new IllegalArgumentException(row.getField("asked"));
        };
    }

    private static double inUnit(NamedCsvRecord row, double minutes) {
        return switch (row.getField("unit")) {
            case "s" -> minutes * 60;
            case "h" -> minutes / 60;
            default -> minutes;
        };
    }

    private static double minutesTo(double celsius, double h, NamedCsvRecord row) {
        double place = number(row, "place");
        return root(minutes -> celsiusAt(place, minutes, h, row) - celsius, 1e-3, 5000);
    }

    private static double celsiusAt(double place, double minutes, double h, NamedCsvRecord row) {
        return Conduction.of(
                        Piece.of(1000 * number(row, "thickness_m"), number(row, "beta")),
                        ThermalProperties.constant(number(row, "k"), number(row, "alpha")))
                .within(row.getField("how").equals("computed") ? 4e-5 : 2e-4)
                .runAt(place, number(row, "start_C"), MediumSchedule.held(number(row, "medium_C"), h), new double[] {
                    minutes
                })[0];
    }

    private static double root(UnivariateFunction f, double low, double high) {
        return new BrentSolver(1e-6, 1e-9).solve(100, f, low, high);
    }
}
