package org.holdproof.core.plan;

import static org.assertj.core.api.Assertions.assertThat;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.holdproof.core.batch.Product.Shape;
import org.holdproof.core.batch.Product.Species;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Sixty random plans, half of them smoked, against plans-reference.csv: reckoned by SciPy from the plan's stated
 * assumptions, by plans_reference.py beside it. The cooks are invented.
 */
class SecondReckoningTest {
    /** Straight lines between points, and 0.1 °C near a row: a minute, and three parts in a thousand. */
    private static final double MINUTES = 1;

    private static final double PART = 0.003;

    static Stream<NamedCsvRecord> plans() throws IOException {
        try (CsvReader<NamedCsvRecord> reader = CsvReader.builder()
                .ofNamedCsvRecord(new InputStreamReader(
                        Objects.requireNonNull(
                                SecondReckoningTest.class.getResourceAsStream("/plan/plans-reference.csv"),
                                "plans-reference.csv"),
                        StandardCharsets.UTF_8))) {
            List<NamedCsvRecord> rows = reader.stream().toList();
            return rows.stream();
        } catch (UncheckedIOException unread) {
            throw unread.getCause();
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("plans")
    void bothComeToTheSameMinutes(NamedCsvRecord row) {
        PlannedCook bathed = PlannedCooks.cook(
                Species.BEEF,
                Shape.valueOf(row.getField("shape")),
                number(row, "thickness_mm"),
                number(row, "bath_C"),
                PlannedCooks.authority("us-food-code-2022"));
        PlannedCook started = PlannedCooks.from(bathed, number(row, "start_C"));
        PlannedCook cook = row.getField("smoke_air_C").isEmpty()
                ? started
                : PlannedCooks.smoked(started, number(row, "smoke_air_C"), number(row, "smoke_min"));
        CookSimulation simulation = new CookSimulation(cook, PlannedCooks.heat(cook));
        Pasteurization rule = Pasteurization.of(cook.authority(), cook.species(), cook.form(), cook.fatPercent())
                .orElseThrow();

        assertSame(rule.safeMinute(simulation.asPlanned()).orElseThrow(), number(row, "planned_min"));
        assertSame(rule.safeMinute(simulation.slowest()).orElseThrow(), number(row, "worst_min"));
    }

    private static void assertSame(double found, double expected) {
        assertThat(Math.abs(found - expected))
                .as("%.2f against %.2f min", found, expected)
                .isLessThanOrEqualTo(MINUTES + PART * expected);
    }

    private static double number(NamedCsvRecord row, String field) {
        return Double.parseDouble(row.getField(field));
    }
}
