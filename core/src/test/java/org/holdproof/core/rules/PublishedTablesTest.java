package org.holdproof.core.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.holdproof.core.CheckValues;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.Source.How;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Every published cell is in the library, and the printed tables keep their laws. */
class PublishedTablesTest {
    private static final RuleLibrary LIBRARY = RuleLibrary.builtIn();

    /** Rows a document prints: temperatures, times fat columns where it has them. */
    @ParameterizedTest(name = "{0} has {1} cells")
    @CsvSource({
        // FSIS Cooking Guideline 2021 (Revised Appendix A), Tables 2 and 6: 130 to 160 °F
        "fsis-2021-meat-6.5-log, 31",
        "fsis-2021-meat-7-log, 31",
        "fsis-2021-meat-5-log, 31",
        // the same, Tables 3 and 4: 136 to 165 °F, 1 to 12 % fat; page 36: the longer of the two
        "fsis-2021-chicken-7-log, 360",
        "fsis-2021-turkey-7-log, 360",
        "fsis-2021-other-poultry-7-log, 360",
        // 9 CFR 318.23(b)(1): 151 to 157 °F
        "us-9-cfr-318.23-patties, 7",
        // 3 CCR 910.11(a)(1): 130 to 145 °F
        "us-1983-beef-california, 16",
        // FDA Food Code 3-401.11(B), editions from 2001; the 1999 edition
        "us-food-code-roasts, 17",
        "us-food-code-roasts-before-2001, 9",
        // FDA Food Code 2017 and 2013, 3-401.11(A)(1) to (3), 3-401.12, 3-401.13
        "us-food-code-a1, 1",
        "us-food-code-a2, 4",
        "us-food-code-a3, 1",
        "us-food-code-2013-a1, 1",
        "us-food-code-2013-a2, 4",
        "us-food-code-2013-a3, 1",
        "us-food-code-microwave, 1",
        "us-food-code-plant-food, 1",
        // 1 NYCRR 271-2.10: 130 to 158 °F
        "us-ny-271-2.10-roasts, 29",
        // CFIA 2018, Table 1: 54.4 to 71.1 °C
        "ca-cfia-table-1-6.5-log, 31",
        // UK FSA for caterers; ACMSF 2007; Chilled Food Association 2006: 80 to 100 °C
        "uk-rounded, 5",
        "uk-acmsf-2007-burgers, 4",
        "uk-90c-10min, 21",
        // FDA Fish and Fishery Products Guidance, 4th ed., Tables A-3 and A-4 (from memory)
        "us-fda-fish-a-3, 23",
        "us-fda-fish-a-4, 16",
        // MPI 2020; Tararua checklist; AS 4696; Hong Kong CFS; FSAI 2018; SFELC
        "nz-mpi-2020, 3",
        "nz-council-before-2017, 3",
        "au-as-4696-cooking, 1",
        "hk-cfs-cooking, 4",
        "ie-fsai-burgers, 1",
        "uk-sfelc-burgers, 1",
        // Ontario meat plant guidelines, appendix 1, Table 2: 57.8 to 62.2 °C, 1 to 12 % fat
        "ca-cfia-table-2-poultry-7-log, 108",
        // FSIS Cooking Guideline 2021, page 39
        "fsis-2021-poultry-older-uncured, 1",
        "fsis-2021-poultry-older-cured, 1",
        // FSANZ fact sheet; BfR and DIN 10536; Hygienecode 2016; Danish hygiene guidance 27.1
        "au-fsanz-75, 1",
        "de-72c-2min, 1",
        "nl-hygienecode-75c, 1",
        "dk-75c, 1",
        // AESAN 2021
        "es-aesan-meat, 1",
        "es-aesan-poultry, 1",
        "es-aesan-fish, 1",
        "es-aesan-stuffed, 1",
        "es-aesan-molluscs, 1",
        "es-aesan-egg, 1",
        "es-aesan-egg-at-once, 1",
        "es-aesan-plant-food, 1",
        // Japan: notification 370 of 1959, manual of 2017; Korean school catering plan
        "jp-specified-heated, 9",
        "jp-heated-63c-30min, 1",
        "jp-75c-1min, 7",
        "jp-shellfish, 1",
        "kr-75c-1min, 1",
        "kr-shellfish, 1",
        // New Brunswick Regulation 2009-138; O. Reg. 74/04 (revoked)
        "ca-nb-roasts, 1",
        "ca-nb-ground, 1",
        "ca-nb-poultry, 1",
        "ca-nb-whole-poultry, 1",
        "ca-on-562-whole-poultry, 1",
        "ca-on-562-poultry, 1",
        "ca-on-562-ground, 1",
    })
    void hasEveryPublishedCell(String id, int cells) {
        assertThat(LIBRARY.rules(LethalityTable.class).find(id).orElseThrow().rows())
                .hasSize(cells);
    }

    @Test
    void holdsNoTableBeyondThoseCounted() {
        assertThat(LIBRARY.rules(LethalityTable.class).all()).hasSize(59);
    }

    @ParameterizedTest(name = "{0}, {1} {2}, fat {3}: {4}")
    @CsvSource({
        // FSIS 2021 Table 2, 6.5 and 7 log; page 68 names the 154 °F row
        "fsis-2021-meat-6.5-log, 130, F, , 112 min, 6720",
        "fsis-2021-meat-7-log, 130, F, , 121 min, 7260",
        "fsis-2021-meat-6.5-log, 154, F, , 27 s, 27",
        "fsis-2021-meat-6.5-log, 158, F, , 0 s, 0",
        // FSIS 2021 Table 6
        "fsis-2021-meat-5-log, 155, F, , 17 s, 17",
        // FSIS 2021 Table 3
        "fsis-2021-chicken-7-log, 136, F, 12, 81.4 min, 4884",
        "fsis-2021-chicken-7-log, 160, F, 12, 16.9 s, 16.9",
        "fsis-2021-chicken-7-log, 162, F, 6, 0 s, 0",
        "fsis-2021-chicken-7-log, 162, F, 7, 9.6 s, 9.6",
        // FSIS 2021 Table 4
        "fsis-2021-turkey-7-log, 136, F, 12, 70.8 min, 4248",
        "fsis-2021-turkey-7-log, 164, F, 1, 11.1 s, 11.1",
        // Food Code 2017 3-401.11(A)(2) and (3): printed below a second
        "us-food-code-a2, 158, F, , <1 s, 1",
        "us-food-code-a3, 165, F, , <1 s, 1",
        // Food Code 2013 3-401.11(A)(2)
        "us-food-code-2013-a2, 155, F, , 15 s, 15",
        // CFIA Table 1: the Celsius governs
        "ca-cfia-table-1-6.5-log, 54.4, C, , 112 min, 6720",
        "ca-cfia-table-1-6.5-log, 70, C, , <10 s, 10",
        // 3 CCR 910.11
        "us-1983-beef-california, 145, F, , instantly, 0",
        // Chilled Food Association 2006
        "uk-90c-10min, 80, C, , 129 min, 7740",
        "uk-90c-10min, 91, C, , 7.9 min, 474",
        // CFIA Table 1 as the Ontario guideline copies it: the rows the agency's page lacks
        "ca-cfia-table-1-6.5-log, 60.6, C, , 9 min, 540",
        "ca-cfia-table-1-6.5-log, 61.1, C, , 8 min, 480",
        "ca-cfia-table-1-6.5-log, 61.7, C, , 6 min, 360",
        "ca-cfia-table-1-6.5-log, 62.2, C, , 5 min, 300",
        "ca-cfia-table-1-6.5-log, 62.8, C, , 4 min, 240",
        // Ontario meat plant guidelines, Table 2: the ends of each row
        "ca-cfia-table-2-poultry-7-log, 57.8, C, 1, 63.3 min, 3798",
        "ca-cfia-table-2-poultry-7-log, 57.8, C, 12, 81.4 min, 4884",
        "ca-cfia-table-2-poultry-7-log, 58.3, C, 1, 50.1 min, 3006",
        "ca-cfia-table-2-poultry-7-log, 58.3, C, 12, 65.5 min, 3930",
        "ca-cfia-table-2-poultry-7-log, 58.9, C, 1, 39.7 min, 2382",
        "ca-cfia-table-2-poultry-7-log, 58.9, C, 12, 52.9 min, 3174",
        "ca-cfia-table-2-poultry-7-log, 59.4, C, 1, 31.6 min, 1896",
        "ca-cfia-table-2-poultry-7-log, 59.4, C, 12, 43 min, 2580",
        "ca-cfia-table-2-poultry-7-log, 60, C, 1, 25.2 min, 1512",
        "ca-cfia-table-2-poultry-7-log, 60, C, 12, 35 min, 2100",
        "ca-cfia-table-2-poultry-7-log, 60.6, C, 1, 20.1 min, 1206",
        "ca-cfia-table-2-poultry-7-log, 60.6, C, 12, 28.7 min, 1722",
        "ca-cfia-table-2-poultry-7-log, 61.1, C, 1, 16.1 min, 966",
        "ca-cfia-table-2-poultry-7-log, 61.1, C, 12, 23.5 min, 1410",
        "ca-cfia-table-2-poultry-7-log, 61.7, C, 1, 13 min, 780",
        "ca-cfia-table-2-poultry-7-log, 61.7, C, 12, 19.3 min, 1158",
        "ca-cfia-table-2-poultry-7-log, 62.2, C, 1, 10.4 min, 624",
        "ca-cfia-table-2-poultry-7-log, 62.2, C, 12, 15.9 min, 954",
        // notification 370 of 1959, specified heated meat products, as quoted
        "jp-specified-heated, 55, C, , 97 min, 5820",
        "jp-specified-heated, 56, C, , 64 min, 3840",
        "jp-specified-heated, 57, C, , 43 min, 2580",
        "jp-specified-heated, 58, C, , 28 min, 1680",
        "jp-specified-heated, 59, C, , 19 min, 1140",
        "jp-specified-heated, 60, C, , 12 min, 720",
        "jp-specified-heated, 61, C, , 9 min, 540",
        "jp-specified-heated, 62, C, , 6 min, 360",
        "jp-specified-heated, 63, C, , at once, 0",
        // the ministry's answer on 75 °C for 1 min, as quoted
        "jp-75c-1min, 65, C, , 15 min, 900",
        "jp-75c-1min, 66, C, , 11 min, 660",
        "jp-75c-1min, 67, C, , 8 min, 480",
        "jp-75c-1min, 68, C, , 5 min, 300",
        "jp-75c-1min, 69, C, , 4 min, 240",
        "jp-75c-1min, 70, C, , 3 min, 180",
    })
    void printsTheCellAsPublished(
            String id, double temperature, String unit, Integer fat, String printed, double seconds) {
        LethalityRow row = row(id, temperature, fat == null ? OptionalDouble.empty() : OptionalDouble.of(fat));

        assertThat(row.at().unit().symbol()).isEqualTo("°" + unit);
        assertThat(row.printedTime()).isEqualTo(printed);
        assertThat(row.seconds()).isEqualTo(seconds);
    }

    private static LethalityRow row(String id, double temperature, OptionalDouble fat) {
        return LIBRARY.rules(LethalityTable.class).find(id).orElseThrow().rowsFor(fat).stream()
                .filter(row -> row.at().value() == temperature)
                .findFirst()
                .orElseThrow();
    }

    /** FSIS 2021 Tables 2 and 6, cell by cell, as transcribed for the one-line check of their times. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("meatCells")
    void hasTheMeatCell(String name, String table, double fahrenheit, double seconds, double creditedLog10) {
        LethalityRow row = row(table, fahrenheit, OptionalDouble.empty());
        ThermalDeath line =
                LIBRARY.rules(ThermalDeath.class).find("salmonella-meat").orElseThrow();

        assertThat(row.seconds()).isEqualTo(seconds);
        double credited = seconds
                / 60
                / line.dMinutes()
                * Math.pow(10, (row.at().celsius() - line.referenceCelsius()) / line.zCelsius());
        assertThat(credited).isCloseTo(creditedLog10, Offset.offset(0.001));
    }

    static Stream<Arguments> meatCells() {
        return CheckValues.rows("meat-rows-under-one-line.csv").stream().map(csv -> {
            double nominal = Double.parseDouble(csv.getField("nominal_log10"));
            String table = "fsis-2021-meat-" + (nominal == 6.5 ? "6.5" : Long.toString((long) nominal)) + "-log";
            return Arguments.of(
                    table + " at " + csv.getField("temp_f") + " °F",
                    table,
                    Double.parseDouble(csv.getField("temp_f")),
                    Double.parseDouble(csv.getField("time_s")),
                    Double.parseDouble(csv.getField("log10_under_d17_231min_at_130f_z10f")));
        });
    }

    /** The longer of the two published cells, FSIS 2021 page 36. */
    @Test
    void otherPoultryTakesTheLongerOfChickenAndTurkey() {
        List<LethalityRow> chicken = LIBRARY.rules(LethalityTable.class)
                .find("fsis-2021-chicken-7-log")
                .orElseThrow()
                .rows();
        List<LethalityRow> turkey = LIBRARY.rules(LethalityTable.class)
                .find("fsis-2021-turkey-7-log")
                .orElseThrow()
                .rows();
        List<LethalityRow> other = LIBRARY.rules(LethalityTable.class)
                .find("fsis-2021-other-poultry-7-log")
                .orElseThrow()
                .rows();
        for (int i = 0; i < other.size(); i++) {
            assertThat(other.get(i).at())
                    .isEqualTo(chicken.get(i).at())
                    .isEqualTo(turkey.get(i).at());
            assertThat(other.get(i).seconds())
                    .as("%s, %s %% fat", other.get(i).at().text(), other.get(i).fatPercent())
                    .isEqualTo(Math.max(chicken.get(i).seconds(), turkey.get(i).seconds()));
            assertThat(other.get(i).citation().how()).isEqualTo(How.DERIVED);
        }
    }

    static Stream<LethalityTable> tables() {
        return LIBRARY.rules(LethalityTable.class).all().stream();
    }

    /** Physics, and every document here: hotter never takes longer. */
    @ParameterizedTest
    @MethodSource("tables")
    void timesNeverRiseWithTemperature(LethalityTable table) {
        Set<Integer> columns =
                table.rows().stream().map(row -> row.fatPercent().orElse(-1)).collect(Collectors.toSet());
        for (int column : columns) {
            List<LethalityRow> rows = table.rows().stream()
                    .filter(row -> row.fatPercent().orElse(-1) == column)
                    .toList();
            for (int i = 1; i < rows.size(); i++) {
                assertThat(rows.get(i).at().value())
                        .isGreaterThan(rows.get(i - 1).at().value());
                assertThat(rows.get(i).seconds())
                        .as("%s at %s", table.id(), rows.get(i).at().text())
                        .isLessThanOrEqualTo(rows.get(i - 1).seconds());
            }
        }
    }

    /** The slips of the prints themselves, each read in its document, are all the library allows. */
    @Test
    void onlyThePrintsOwnSlipsAreAllowed() throws UnreadableInputException {
        RuleLibrary library = RuleLibrary.fromArchive(LIBRARY.archive());
        Set<String> slips = new HashSet<>();
        for (LethalityTable table : library.rules(LethalityTable.class).all()) {
            for (LethalityRow row : table.rows()) {
                Matcher printed = Pattern.compile("[Pp]rinted ([0-9.]+ °[CF]); ")
                        .matcher(row.citation().note());
                if (printed.find()) {
                    slips.add(row.at().text() + " as " + printed.group(1));
                }
            }
        }
        // FSIS 2021 Tables 2, 3, 4 and 6 and 3 CCR 910.11; 1 NYCRR 271-2.10 in whole degrees; FDA A-3 (memory)
        assertThat(slips)
                .containsExactlyInAnyOrder(
                        "137 °F as 58.4 °C", "139 °F as 59.5 °C", "139 °F as 60 °C", "83 °C as 182 °F");
    }

    @ParameterizedTest
    @MethodSource("tables")
    void citesKnownSources(LethalityTable table) {
        assertThat(LIBRARY.sources()).contains(table.citation().source());
        assertThat(table.citation().document()).isNotBlank();
        for (LethalityRow row : table.rows()) {
            assertThat(LIBRARY.sources()).contains(row.citation().source());
        }
    }

    /** 9 CFR 318.23: only the 151 and 155 °F rows were read; all of CFIA Table 1 was, five rows in a copy. */
    @Test
    void marksRowsFromMemory() {
        assertThat(memoryRows("us-9-cfr-318.23-patties")).containsExactly(152.0, 153.0, 154.0, 156.0, 157.0);
        assertThat(memoryRows("ca-cfia-table-1-6.5-log")).isEmpty();
        assertThat(memoryRows("us-fda-fish-a-3")).hasSize(23);
        assertThat(memoryRows("us-fda-fish-a-4")).hasSize(16);
        assertThat(memoryRows("fsis-2021-meat-6.5-log")).isEmpty();
        assertThat(row("us-9-cfr-318.23-patties", 157, OptionalDouble.empty())
                        .citation()
                        .text())
                .endsWith("(from memory, unconfirmed)");
    }

    private static List<Double> memoryRows(String id) {
        return LIBRARY.rules(LethalityTable.class).find(id).orElseThrow().rows().stream()
                .filter(row -> row.citation().how() == How.MEMORY)
                .map(row -> row.at().value())
                .toList();
    }

    /** The lookups of the check values: a row at or below the temperature, for its time. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("lookups")
    void answersTheLookup(String name, String table, TemperatureUnit unit, double value, double seconds, boolean met) {
        double celsius = unit.toCelsius(value);
        boolean any =
                LIBRARY.rules(LethalityTable.class).find(table).orElseThrow().rowsFor(OptionalDouble.empty()).stream()
                        .anyMatch(row -> row.at().celsius() <= celsius + TemperatureUnit.SLACK_CELSIUS
                                && row.seconds() <= seconds);

        assertThat(any).isEqualTo(met);
    }

    private static final Map<String, String> TABLE_OF_RULE = Map.ofEntries(
            Map.entry("FSIS 2021 Table 2, 6.5 log", "fsis-2021-meat-6.5-log"),
            Map.entry("FSIS 2021 Table 2, 6.5 log (Fahrenheit governs)", "fsis-2021-meat-6.5-log"),
            Map.entry("FSIS 2021 Table 2, 7.0 log", "fsis-2021-meat-7-log"),
            Map.entry("FSIS 2021 Table 6, 5 log", "fsis-2021-meat-5-log"),
            Map.entry("FSIS 2021 Table 3, 7 log", "fsis-2021-chicken-7-log"),
            Map.entry("CFIA Table 1, 6.5 log (Celsius governs)", "ca-cfia-table-1-6.5-log"),
            Map.entry("FDA Food Code 2017 3-401.11(A)(2)", "us-food-code-a2"),
            Map.entry("FDA Food Code 2013 3-401.11(A)(2)", "us-food-code-2013-a2"),
            Map.entry("FDA Food Code 2013 3-401.11(B)", "us-food-code-roasts"),
            Map.entry("FDA Food Code 1999 3-401.11(B)", "us-food-code-roasts-before-2001"),
            Map.entry("NY 1 NYCRR 271-2.10", "us-ny-271-2.10-roasts"),
            Map.entry("9 CFR 318.23(b)", "us-9-cfr-318.23-patties"),
            Map.entry("UK rounded set", "uk-rounded"));

    static Stream<Arguments> lookups() {
        return CheckValues.rows("lethality.csv").stream()
                .filter(csv -> csv.getField("kind").equals("table_lookup"))
                .map(csv -> Arguments.of(
                        csv.getField("case_id") + " " + csv.getField("rule_or_model"),
                        Objects.requireNonNull(TABLE_OF_RULE.get(csv.getField("rule_or_model"))),
                        csv.getField("input_temp_unit").equals("F")
                                ? TemperatureUnit.FAHRENHEIT
                                : TemperatureUnit.CELSIUS,
                        Double.parseDouble(csv.getField("input_temp_value")),
                        Double.parseDouble(csv.getField("input_time_s")),
                        csv.getField("expected_value").equals("pass")));
    }

    /** 2 min at 70 °C and z 7.5 °C, as FSAI 2018 states them, give every time computed from them. */
    @Test
    void drawsTheListeriaLine() {
        ThermalDeath line =
                LIBRARY.rules(ThermalDeath.class).find("listeria-70c-2min").orElseThrow();
        CheckValues.rows("equivalents-70c-2min-z7.5.csv").forEach(csv -> {
            double celsius = Double.parseDouble(csv.getField("temp_c"));
            double needed = line.targetLog10().orElseThrow()
                    * line.dMinutes()
                    * Math.pow(10, (line.referenceCelsius() - celsius) / line.zCelsius());
            assertThat(needed).isCloseTo(Double.parseDouble(csv.getField("time_source_value")), Offset.offset(0.0006));
            assertThat(celsius).isBetween(line.floorCelsius(), line.capCelsius());
        });
    }

    /** Lines through the poultry rows credit no row more than the 7 log its document gives it. */
    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "salmonella-chicken-12-fat-low, fsis-2021-chicken-7-log, 136, 145",
        "salmonella-chicken-12-fat-high, fsis-2021-chicken-7-log, 155, 161",
        "salmonella-turkey-12-fat-low, fsis-2021-turkey-7-log, 136, 145",
        "salmonella-turkey-12-fat-high, fsis-2021-turkey-7-log, 155, 164",
    })
    void poultryLinesNeverFlatter(String line, String table, double low, double high) {
        ThermalDeath death = LIBRARY.rules(ThermalDeath.class).find(line).orElseThrow();
        assertThat(death.floorCelsius()).isEqualTo(TemperatureUnit.FAHRENHEIT.toCelsius(low));
        assertThat(death.capCelsius()).isEqualTo(TemperatureUnit.FAHRENHEIT.toCelsius(high));
        for (LethalityRow row :
                LIBRARY.rules(LethalityTable.class).find(table).orElseThrow().rowsFor(OptionalDouble.of(12))) {
            if (row.at().value() >= low && row.at().value() <= high) {
                double credited = row.seconds()
                        / 60
                        / death.dMinutes()
                        * Math.pow(10, (row.at().celsius() - death.referenceCelsius()) / death.zCelsius());
                assertThat(credited).as(row.at().text()).isBetween(6.5, 7.001);
            }
        }
    }

    /** Every rule a cooling, holding or other check value names is in the library. */
    @Test
    void knowsEveryRuleOfTheHoldingCheckValues() {
        Set<String> ids = CheckValues.rows("holding.csv").stream()
                .map(csv -> csv.getField("rule_id"))
                .collect(Collectors.toSet());

        assertThat(ids).hasSizeGreaterThan(50).allSatisfy(id -> assertThat(
                        LIBRARY.rules(CoolingRule.class).find(id).isPresent()
                                || LIBRARY.rules(HoldingRule.class).find(id).isPresent()
                                || LIBRARY.rules(ReheatingRule.class).find(id).isPresent()
                                || LIBRARY.rules(TimeLimit.class).find(id).isPresent()
                                || LIBRARY.rules(ShelfLifeRule.class).find(id).isPresent()
                                || LIBRARY.rules(WrittenRule.class).find(id).isPresent())
                .isTrue());
    }
}
