package org.holdproof.core.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.holdproof.core.CheckValues;
import org.holdproof.core.batch.Product.Form;
import org.holdproof.core.batch.Product.Species;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** The values of check-values/second-reading.csv: figures published elsewhere, against the rows and lines held here. */
class SecondReadingTest {
    private static final RuleLibrary LIBRARY = RuleLibrary.builtIn();

    private static Stream<NamedCsvRecord> rows(String topic) {
        return CheckValues.rows("second-reading.csv").stream()
                .filter(row -> row.getField("topic").equals(topic));
    }

    static Stream<Arguments> equivalents() {
        return rows("equivalents")
                .map(row -> Arguments.of(row.getField("id"), Double.parseDouble(row.getField("value")), half(row)));
    }

    /** Half of the last digit printed. */
    private static double half(NamedCsvRecord row) {
        String value = row.getField("value");
        int point = value.indexOf('.');
        return 0.5 * Math.pow(10, point < 0 ? 0 : point - value.length() + 1);
    }

    /** Delegated Regulation (EU) 2020/687, Annex VII: an animal virus in poultry, whose four times obey one z. */
    @ParameterizedTest(name = "{0}: {1} s")
    @MethodSource("equivalents")
    void oneZGivesAllPublishedEquivalents(String id, double seconds, double half) {
        double celsius = Double.parseDouble(id.substring(id.indexOf(':') + 1));
        Citation citation = LIBRARY.rules(ThermalDeath.class).all().get(0).citation();
        ThermalDeath line = new ThermalDeath(
                "virus",
                "An animal virus in poultry",
                "a virus",
                507 / 60.0,
                60,
                4.635,
                60,
                80,
                OptionalDouble.empty(),
                citation);

        double minutes = line.dMinutes() * Math.pow(10, (line.referenceCelsius() - celsius) / line.zCelsius());

        assertThat(minutes * 60).isCloseTo(seconds, within(half));
    }

    /** The regression the papers print, from the end points they print, within the 2 and 5 % that leaves. */
    @ParameterizedTest(name = "{0}: z {1} °C")
    @CsvSource({
        // J. Food Protection 69:1080 (2006); printed z from seven temperatures, here from two
        "ec-patties, 5.2, 2",
        "sal-patties, 6.0, 2",
        "lm-patties, 6.1, 2",
        // J. Food Protection 48:743 (1985): 0.7 s at 74.4 °C against 0.9 s at 71.7 °C shows a tail
        "lm-milk, 6.3, 5",
    })
    void theEndPointsGiveThePrintedZ(String food, double printed, double percent) {
        List<DeathTime> times = LIBRARY.rules(DeathTime.class).all().stream()
                .filter(time -> time.id().startsWith(food))
                .sorted(Comparator.comparingDouble(DeathTime::celsius))
                .toList();
        DeathTime cold = times.get(0);
        DeathTime hot = times.get(times.size() - 1);

        double z = (hot.celsius() - cold.celsius()) / Math.log10(cold.lowMinutes() / hot.lowMinutes());

        assertThat(z).isCloseTo(printed, within(printed * percent / 100));
        assertThat(cold.lowZCelsius()).hasValue(printed);
    }

    /** J. Food Protection 55:211 (1992): z 5.0 °C over the straight part, from 54.4 °C. */
    @Test
    void lobsterIsStraightFrom54() {
        SimpleRegression line = new SimpleRegression();
        LIBRARY.rules(DeathTime.class).all().stream()
                .filter(time -> time.id().startsWith("lm-lobster") && time.celsius() >= 54.4)
                .forEach(time -> line.addData(time.celsius(), Math.log10(time.lowMinutes())));

        assertThat(line.getN()).isEqualTo(4);
        assertThat(-1 / line.getSlope()).isCloseTo(5.0, within(0.15));
    }

    /** Notification 370 of 1959: least squares over its rows from 55 to 62 °C. */
    @Test
    void theJapaneseTableHasItsZ() {
        SimpleRegression line = new SimpleRegression();
        LIBRARY.rules(LethalityTable.class).require("jp-specified-heated").rows().stream()
                .filter(row -> row.seconds() > 0)
                .forEach(row -> line.addData(row.at().value(), Math.log10(row.seconds())));
        double published = rows("table fit")
                .mapToDouble(row -> Double.parseDouble(row.getField("value")))
                .findFirst()
                .orElseThrow();

        assertThat(line.getN()).isEqualTo(8);
        assertThat(-1 / line.getSlope()).isCloseTo(published, within(0.05));
    }

    /** Toronto Public Health: hamburgers of beef at 54.4 °C for 112 min. */
    @Test
    void ontarioAcceptsTheMeatTableForHamburgers() {
        LethalityRow row = LIBRARY.profile("canada-ontario")
                .orElseThrow()
                .lethalityFor(Species.BEEF, Form.PATTIES)
                .orElseThrow()
                .rowsFor(OptionalDouble.empty())
                .get(0);

        assertThat(rows("row equals row").findFirst().orElseThrow().getField("value"))
                .startsWith(row.at().value() + "/" + row.printedTime());
    }

    /** Int. J. Food Microbiol. 110:85 (2006), cured ham: no uncured model's range is narrower. */
    @Test
    void theModelsReachBeyondCuredHam() {
        double[] cured = rows("growth limits")
                .flatMap(row -> Arrays.stream(row.getField("value").split(" and ", -1)))
                .mapToDouble(Double::parseDouble)
                .toArray();

        assertThat(LIBRARY.rules(GrowthModel.class).all())
                .filteredOn(model -> model.organism().equals("C. perfringens"))
                .isNotEmpty()
                .allSatisfy(model -> {
                    assertThat(model.minCelsius()).isLessThanOrEqualTo(cured[0]);
                    assertThat(model.maxCelsius()).isGreaterThanOrEqualTo(cured[1]);
                });
    }

    /** Appl. Environ. Microbiol. 66:223-229 (2000), Table 5: what the fact says is what its sixteen rows say. */
    @Test
    void theFactOnSporesCountsItsRows() {
        List<String> reductions = rows("spores in bagged products")
                .map(row -> row.getField("value"))
                .toList();
        long none = reductions.stream()
                .filter(value -> value.equals("NE") || (!value.startsWith(">") && Double.parseDouble(value) <= 0.5))
                .count();
        long six = reductions.stream()
                .filter(value -> !value.equals("NE") && Double.parseDouble(value.replace(">", "")) >= 6)
                .count();

        assertThat(LIBRARY.rules(GrowthFact.class).require("F29").statement())
                .contains("Of " + reductions.size() + " chilled", none + " got at most 0.5 log", six + " got 6 log");
    }
}
