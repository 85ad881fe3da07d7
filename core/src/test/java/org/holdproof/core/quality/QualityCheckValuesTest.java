package org.holdproof.core.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.holdproof.core.quantity.Predicted;
import org.holdproof.core.rules.QualityFact;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Published values (each row names its source) and values of an independent implementation of the same equations in
 * NumPy, each at the tolerance its row states.
 */
class QualityCheckValuesTest {
    private static final QualityModels MODELS = QualityModels.builtIn();
    private static final double GAS_CONSTANT = 8.314462618e-3;

    /** A row, shown by its id and quantity. */
    record Row(String id, String quantity, String inputs, double value, double low, double high) {
        @Override
        public String toString() {
            return id + " " + quantity;
        }

        double number(int index) {
            String[] parts = inputs.split(";", -1);
            return Double.parseDouble(parts[index].replaceAll("[^0-9.]", ""));
        }

        String word(int index) {
            return inputs.split(";", -1)[index].strip();
        }
    }

    static List<NamedCsvRecord> rows(String file) {
        String path = "/quality/" + file;
        try (CsvReader<NamedCsvRecord> reader = CsvReader.builder()
                .ofNamedCsvRecord(new InputStreamReader(
                        Objects.requireNonNull(QualityCheckValuesTest.class.getResourceAsStream(path), path),
                        StandardCharsets.UTF_8))) {
            return reader.stream().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static Stream<Row> all() {
        return rows("check-values.csv").stream()
                .map(row -> new Row(
                        row.getField("check_id"),
                        row.getField("quantity"),
                        row.getField("inputs"),
                        Double.parseDouble(row.getField("value")),
                        Double.parseDouble(row.getField("accept_low")),
                        Double.parseDouble(row.getField("accept_high"))));
    }

    @Test
    void noRowIsLeftOut() {
        assertThat(all()).hasSize(115);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("all")
    void reckonedWithinTheRowsTolerance(Row row) {
        assertThat(reckoned(row)).isBetween(row.low(), row.high());
    }

    private static double reckoned(Row row) {
        return switch (row.id().charAt(0) == 'P' ? row.id() : row.id().substring(0, 3)) {
            case "G-L" -> set(row.word(0)).percent(Histories.held(row.number(1), row.number(2)), 0);
            case "G-R" -> set(row.word(0)).percent(Histories.ramp(row.number(1), 1), 0);
            case "G-K" -> rate(row.word(0), row.word(1)).at(row.number(2));
            case "G-E" -> equalHours(row.number(0), row.number(1));
            case "G-W" -> waterHeld(row.number(0));
            case "P01" -> Math.log(2) / rate("central", "sarcoplasmic+collagen").at(58);
            case "P02" -> midPeak("actin");
            case "P03" -> peak("sarcoplasmic+collagen", 5);
            case "P04", "P05" -> MODELS.central().percent(Histories.ramp(85, 0.45), 0);
            case "P06" -> MODELS.central().percent(Histories.ramp(71.1, 1), 0);
            case "P07" -> MODELS.central().percent(Histories.bath(35, 55, 5), 35);
            case "P08" -> MODELS.central().percent(Histories.bath(35, 55, 1.67), 35);
            case "P09" -> 100 * (0.745 - waterHeld(90));
            case "P10" -> DryingSlab.smoked(75, 99, 11, 0.02, 15, 40).coreCelsius();
            case "P11", "P12" ->
                PublishedLossesTest.reckoned(row.id().equals("P11") ? "cl20" : "cl21")
                        .central();
            case "P13" -> myoglobinHalfTime();
            case "P14" -> tendonDenatures(0.69);
            case "P15" -> (number(fact("co11").value()) + number(fact("co12").value())) / 2;
            default -> throw new AssertionError("no test for " + row.id());
        };
    }

    private static LeanLoss set(String words) {
        return switch (words.replace("set ", "")) {
            case "low" -> MODELS.low();
            case "central" -> MODELS.central();
            case "high" -> MODELS.high();
            default -> throw new AssertionError(words);
        };
    }

    private static ArrheniusRate rate(String set, String protein) {
        int index = Arrays.asList("myosin", "sarcoplasmic+collagen", "actin").indexOf(protein);
        return set(set).proteins().get(index).rate();
    }

    private static double equalHours(double energy, double celsius) {
        return 1 / new ArrheniusRate(1, 93, energy).at(celsius);
    }

    /** Where a rate peaks while warming at so many °C a minute: {@code k = Ea b / (R T²)} (Kissinger 1957, from memory). */
    private static double peak(String protein, double celsiusPerMinute) {
        ArrheniusRate rate = rate("central", protein);
        return new BrentSolver(1e-6)
                .solve(
                        200,
                        celsius -> Math.log(rate.at(celsius)
                                * GAS_CONSTANT
                                * Math.pow(celsius + 273.15, 2)
                                / (rate.kilojoulesPerMole() * celsiusPerMinute)),
                        30,
                        100);
    }

    private static double midPeak(String protein) {
        return (peak(protein, 5) + peak(protein, 10)) / 2;
    }

    private static QualityFact fact(String id) {
        return MODELS.tables().fact(id).orElseThrow();
    }

    private static double number(String text) {
        return Double.parseDouble(text);
    }

    private static double waterHeld(double celsius) {
        double[] a = Arrays.stream(fact("wh01").value().split(";", -1))
                .mapToDouble(Double::parseDouble)
                .toArray();
        return a[0] - a[1] / (1 + a[2] * Math.exp(-a[3] * (celsius - a[4])));
    }

    private static double myoglobinHalfTime() {
        String[] words = fact("cr01").value().split("[ ,]+", -1);
        double rate = number(words[1]) * Math.exp(-number(words[4]) / GAS_CONSTANT / (60 + 273.15));
        return Math.log(2) / rate;
    }

    private static double tendonDenatures(double waterFraction) {
        String[] words = fact("co02").quantity().split(" ", -1);
        return 1 / (number(words[2]) * waterFraction + number(words[5])) - 273.15;
    }

    /** The ranges of evaporation shipped as parameters: 8 h at 110 °C, 75 mm. */
    @Test
    void evaporationBeforeTheBagIsThatOfADryingSlab() {
        Predicted range = MODELS.range("evaporated-before-bag");

        assertThat(DryingSlab.smoked(75, 110, 8, 0.02, 10, 50).evaporatedPercent())
                .isCloseTo(range.low(), within(0.03));
        assertThat(DryingSlab.smoked(75, 110, 8, 0.04, 12, 40).evaporatedPercent())
                .isCloseTo(range.central(), within(0.03));
        assertThat(DryingSlab.smoked(75, 110, 8, 0.08, 15, 30).evaporatedPercent())
                .isCloseTo(range.high(), within(0.03));
    }
}
