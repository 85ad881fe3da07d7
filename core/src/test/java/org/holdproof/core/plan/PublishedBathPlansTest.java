package org.holdproof.core.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.holdproof.core.batch.Product.Shape;
import org.holdproof.core.batch.Product.Species;
import org.holdproof.core.rules.Citation;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.rules.Source.How;
import org.holdproof.core.rules.ThermalDeath;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Plans against the bath-time tables of D. Baldwin, Sous vide cooking: a review (2012) and its companion guide. Only the
 * cells of shape factor 0.28, which is the planner's roast, and only the planner's own figures: the tables are rounded
 * up to 1 min below 20, 5 min below 60, 15 min above. Kinetics as in parameters.csv of the reference tables.
 */
class PublishedBathPlansTest {
    private record Printed(Species species, List<ThermalDeath> organisms) {}

    private static final Map<String, Printed> TABLES = Map.of(
            "pasteurization-meat",
            new Printed(
                    Species.BEEF,
                    List.of(death(19.35, 55, 4.87, 5), death(13.18, 55, 7.58, 6.5), death(12.66, 55, 9.22, 6))),
            "pasteurization-poultry",
            new Printed(Species.CHICKEN, List.of(death(5.94, 60, 5.66, 6), death(4.68, 60, 6.45, 7))),
            "pasteurization-fish-lean",
            new Printed(Species.FISH, List.of(death(2.88, 60, 5.59, 6))),
            "pasteurization-fish-fatty",
            new Printed(Species.FISH, List.of(death(5.13, 60, 5.68, 6))));

    private static ThermalDeath death(double d, double reference, double z, double logs) {
        Citation any =
                RuleLibrary.builtIn().rules(ThermalDeath.class).all().get(0).citation();
        Citation citation = new Citation(any.source(), "D. Baldwin 2012", "tables", How.MEMORY, "");
        return new ThermalDeath(
                "test", "test", "test organism", d, reference, z, 0, 100, OptionalDouble.of(logs), citation);
    }

    static Stream<NamedCsvRecord> cellsOfRoasts() {
        return rows().stream()
                .filter(row -> TABLES.containsKey(row.getField("table")))
                .filter(row -> row.getField("beta_used").equals("0.28"))
                .filter(row -> row.getField("within_rounding").equals("yes"));
    }

    @ParameterizedTest
    @MethodSource("cellsOfRoasts")
    void thePlanGivesThePrintedTime(NamedCsvRecord cell) {
        Printed table = Objects.requireNonNull(TABLES.get(cell.getField("table")));
        double minutes = table.organisms().stream()
                .mapToDouble(death -> safeMinute(table.species(), death, cell))
                .max()
                .orElseThrow();

        assertThat(minutes).isCloseTo(number(cell, "computed_min"), within(0.15));
        assertThat(roundedUp(minutes)).isEqualTo(number(cell, "published_min"));
    }

    private static double safeMinute(Species species, ThermalDeath death, NamedCsvRecord cell) {
        PlannedCook cook = PlannedCooks.cook(
                species,
                Shape.ROAST,
                number(cell, "thickness_mm"),
                number(cell, "bath_or_start_C"),
                PlannedCooks.asking(death));
        return PlannedCooks.plan(cook).safeMinute();
    }

    static Stream<NamedCsvRecord> chillCells() {
        return rows().stream()
                .filter(row -> row.getField("table").startsWith("cooling-ice-water"))
                .filter(row -> row.getField("within_rounding").equals("yes"));
    }

    /** One printed time stands for starts of 55 to 80 °C; the table was reckoned with 1.1e-7 m²/s, the plan with 1.11. */
    @ParameterizedTest
    @MethodSource("chillCells")
    void theChillTakesThePrintedTime(NamedCsvRecord cell) {
        Shape shape =
                switch (cell.getField("beta_used")) {
                    case "0.0" -> Shape.SLAB;
                    case "0.7" -> Shape.CYLINDER;
                    default -> Shape.SPHERE;
                };
        PlannedCook cook = PlannedCooks.cook(
                Species.BEEF, shape, number(cell, "thickness_mm"), 60, PlannedCooks.authority("us-food-code-2022"));
        HeatFigures heat = PlannedCooks.heat(cook);
        CookSimulation simulation = new CookSimulation(cook, heat);
        double low = ChillPlan.of(cook, heat, simulation, 55).core().fallsTo(5).orElseThrow();
        double high = ChillPlan.of(cook, heat, simulation, 80).core().fallsTo(5).orElseThrow();

        double slack = 0.02 * high;
        assertThat(number(cell, "published_min")).isBetween(roundedDown(low - slack), roundedUp(high + slack));
    }

    private static double number(NamedCsvRecord row, String field) {
        return Double.parseDouble(row.getField(field));
    }

    private static double grain(double minutes) {
        if (minutes < 20) {
            return 1;
        }
        return minutes < 60 ? 5 : 15;
    }

    private static double roundedUp(double minutes) {
        return Math.ceil(minutes / grain(minutes)) * grain(minutes);
    }

    private static double roundedDown(double minutes) {
        return Math.floor(minutes / grain(minutes)) * grain(minutes);
    }

    private static List<NamedCsvRecord> rows() {
        InputStream stream = Objects.requireNonNull(
                PublishedBathPlansTest.class.getResourceAsStream("/heat/reproduction.csv"), "reproduction.csv");
        try (CsvReader<NamedCsvRecord> reader =
                CsvReader.builder().ofNamedCsvRecord(new InputStreamReader(stream, StandardCharsets.UTF_8))) {
            return reader.stream().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
