package org.holdproof.core.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.holdproof.core.heat.HeatReference.number;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.holdproof.core.kinetics.LethalRate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The bath-time tables of D. Baldwin, Sous vide cooking: a review (2012) and its companion guide, cell by cell, with the
 * tables' own parameters (parameters.csv of the reference tables, which says what was read and what recalled). The
 * printed times are rounded up: to 1 min below 20, 5 min below 60, 15 min above. reproduction.csv holds, for every cell,
 * what an earlier and independent computation (exact series) gave and by how much the cells that do not come out differ.
 */
class PublishedBathTimesTest {
    private static final double START = 5;
    private static final double CONDUCTIVITY = 0.48;
    private static final double BATH_COEFFICIENT = 95;
    private static final double ICE_COEFFICIENT = 100;
    private static final double ICE_WATER = 0.5;

    private static final List<NamedCsvRecord> CELLS = HeatReference.rows("reproduction.csv");

    private record Organism(double dMinutes, double reference, double z, double logs) {
        double needed() {
            return dMinutes * logs;
        }
    }

    private record Kinetics(double diffusivity, List<Organism> organisms) {}

    private static final Kinetics POULTRY =
            new Kinetics(1.08e-7, List.of(new Organism(5.94, 60, 5.66, 6), new Organism(4.68, 60, 6.45, 7)));

    private static final Map<String, Kinetics> TABLES = Map.of(
            "pasteurization-meat",
            new Kinetics(
                    1.11e-7,
                    List.of(
                            new Organism(19.35, 55, 4.87, 5),
                            new Organism(13.18, 55, 7.58, 6.5),
                            new Organism(12.66, 55, 9.22, 6))),
            "pasteurization-poultry",
            POULTRY,
            "pasteurization-poultry-55C-letter",
            new Kinetics(1.08e-7, List.of(POULTRY.organisms().get(0))),
            "pasteurization-fish-lean",
            new Kinetics(0.995e-7, List.of(new Organism(2.88, 60, 5.59, 6))),
            "pasteurization-fish-fatty",
            new Kinetics(0.995e-7, List.of(new Organism(5.13, 60, 5.68, 6))));

    static Stream<String> pasteurizationCells() {
        return cells(row -> row.getField("table").startsWith("pasteurization"));
    }

    static Stream<String> comeUpAndChillCells() {
        return cells(row -> !row.getField("table").startsWith("pasteurization"));
    }

    private static Stream<String> cells(Predicate<NamedCsvRecord> which) {
        return CELLS.stream().filter(which).map(PublishedBathTimesTest::title);
    }

    private static String title(NamedCsvRecord row) {
        return row.getField("table") + ", " + row.getField("thickness_mm") + " mm, " + row.getField("bath_or_start_C")
                + " °C";
    }

    private static NamedCsvRecord row(String title) {
        return CELLS.stream()
                .filter(row -> title(row).equals(title))
                .findFirst()
                .orElseThrow();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("pasteurizationCells")
    void pasteurizationTimeComesOutAsPrintedOrAsMuchOffAsMeasured(String cell) {
        NamedCsvRecord row = row(cell);
        double minutes = pasteurizationMinutes(row);

        assertThat(minutes).isCloseTo(number(row, "computed_min"), within(0.11));
        double published = number(row, "published_min");
        if (row.getField("within_rounding").equals("yes")) {
            assertThat(roundedUp(minutes)).isEqualTo(published);
        } else {
            assertThat(roundedUp(minutes)).isNotEqualTo(published);
            assertThat(beyondRounding(minutes, published))
                    .isCloseTo(number(row, "error_min_beyond_rounding"), within(0.11));
        }
    }

    /** Columns: slab-like β 0, cylinder-like 0.70, sphere-like 1.25; one printed time stands for every bath or start. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("comeUpAndChillCells")
    void comeUpAndChillTimesLieInTheBandTheBathsSpanOrAsMuchOffAsMeasured(String cell) {
        NamedCsvRecord row = row(cell);
        boolean heating = row.getField("table").startsWith("heating");
        double low = heating ? comeUpMinutes(row, 45) : chillMinutes(row, 55);
        double middle = heating ? comeUpMinutes(row, 60) : chillMinutes(row, 65);
        double high = heating ? comeUpMinutes(row, 80) : chillMinutes(row, 80);

        assertThat(middle).isCloseTo(number(row, "computed_min"), within(0.11));
        String[] band = row.getField("computed_rounded_or_band").split("\\.\\.", -1);
        assertThat(low).isCloseTo(Double.parseDouble(band[0]), within(0.11));
        assertThat(high).isCloseTo(Double.parseDouble(band[1]), within(0.11));
        double published = number(row, "published_min");
        if (row.getField("within_rounding").equals("yes")) {
            assertThat(published).isBetween(roundedDown(low), roundedUp(high));
        } else {
            assertThat(roundedDown(low) - published).isCloseTo(number(row, "error_min_beyond_rounding"), within(0.11));
        }
    }

    @Test
    void thisManyCellsComeOutExactly() {
        Map<String, Long> exact = pasteurizationCells()
                .map(PublishedBathTimesTest::row)
                .filter(row -> roundedUp(pasteurizationMinutes(row)) == number(row, "published_min"))
                .collect(Collectors.groupingBy(row -> row.getField("table"), Collectors.counting()));

        assertThat(exact)
                .containsEntry("pasteurization-meat", 162L)
                .containsEntry("pasteurization-poultry", 115L)
                .containsEntry("pasteurization-fish-lean", 82L)
                .containsEntry("pasteurization-fish-fatty", 75L)
                .containsEntry("pasteurization-poultry-55C-letter", 11L);
    }

    /** The reproduction's published times are those of the tables shipped with the product. */
    @Test
    void theShippedTablesHoldTheSameTimes() {
        for (String table : TABLES.keySet()) {
            Map<String, Double> shipped = HeatReference.shipped("published-tables/" + table + ".csv").stream()
                    .collect(Collectors.toMap(
                            row -> row.getField("thickness_mm") + "/" + row.getField("bath_C"),
                            row -> number(row, "published_min")));
            Map<String, Double> reproduced = CELLS.stream()
                    .filter(row -> row.getField("table").equals(table))
                    .collect(Collectors.toMap(
                            row -> row.getField("thickness_mm") + "/" + row.getField("bath_or_start_C"),
                            row -> number(row, "published_min")));
            assertThat(shipped).isEqualTo(reproduced);
        }
    }

    private static double pasteurizationMinutes(NamedCsvRecord row) {
        Kinetics kinetics = Objects.requireNonNull(TABLES.get(row.getField("table")));
        double bath = number(row, "bath_or_start_C");
        double[] minutes = everyHalfMinute(number(row, "published_min") * 1.2 + 20);
        double[] core = Conduction.of(
                        Piece.of(number(row, "thickness_mm"), number(row, "beta_used")),
                        ThermalProperties.constant(CONDUCTIVITY, kinetics.diffusivity()))
                .within(0.004)
                .runAt(0, START, MediumSchedule.held(bath, BATH_COEFFICIENT), minutes);
        return kinetics.organisms().stream()
                .mapToDouble(organism -> minutesToKill(organism, minutes, core))
                .max()
                .orElseThrow();
    }

    private static double minutesToKill(Organism organism, double[] minutes, double[] core) {
        LethalRate rate =
                new LethalRate(organism.reference(), organism.z(), Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
        double done = 0;
        for (int i = 1; i < core.length; i++) {
            double length = minutes[i] - minutes[i - 1];
            double step = rate.equivalentMinutes(core[i - 1], core[i], length);
            if (done + step >= organism.needed()) {
                return minutes[i - 1] + length * (organism.needed() - done) / step;
            }
            done += step;
        }
        throw new IllegalStateException("not killed within " + minutes[minutes.length - 1] + " min");
    }

    private static double comeUpMinutes(NamedCsvRecord row, double bath) {
        return run(row, 1.4e-7, START, bath, BATH_COEFFICIENT)
                .minuteCoreReaches(bath - 0.5)
                .orElseThrow();
    }

    private static double chillMinutes(NamedCsvRecord row, double start) {
        return run(row, 1.1e-7, start, ICE_WATER, ICE_COEFFICIENT)
                .minuteCoreReaches(5)
                .orElseThrow();
    }

    private static PieceTemperatures run(
            NamedCsvRecord row, double diffusivity, double start, double medium, double coefficient) {
        return Conduction.of(
                        Piece.of(number(row, "thickness_mm"), number(row, "beta_used")),
                        ThermalProperties.constant(CONDUCTIVITY, diffusivity))
                .within(0.01)
                .run(
                        start,
                        MediumSchedule.held(medium, coefficient),
                        everyHalfMinute(number(row, "published_min") * 1.4 + 20));
    }

    private static double[] everyHalfMinute(double until) {
        return IntStream.rangeClosed(0, (int) Math.ceil(until * 2))
                .mapToDouble(i -> i / 2.0)
                .toArray();
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

    /** By how much the computed time lies outside every time that would have been printed as this one. */
    private static double beyondRounding(double minutes, double published) {
        double shortest = published - grain(published - 1e-9);
        return minutes > published ? minutes - published : shortest - minutes;
    }
}
