package org.holdproof.core.kinetics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.holdproof.core.CheckValues;
import org.holdproof.core.log.Trace;
import org.holdproof.core.rules.DeathTime;
import org.holdproof.core.rules.GrowthModel;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.rules.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every row of check-values/microbiology.csv at the tolerance stated there; each row names its source. */
class GrowthCheckValuesTest {
    private static final RuleLibrary LIBRARY = RuleLibrary.builtIn();
    private static final double CEILING = 9;
    /** The figures worked out beforehand took steps of a minute. */
    private static final double STEPPING = 0.005;

    static Stream<NamedCsvRecord> rows() {
        return CheckValues.rows("microbiology.csv").stream();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("rows")
    void isAsPublished(NamedCsvRecord row) {
        double[] actual = figures(row);
        double[] expected = numbers(row.getField("expected"));
        assertThat(actual).hasSameSizeAs(expected);
        for (int i = 0; i < actual.length; i++) {
            compare(row, actual[i], expected[i]);
        }
        if (!row.getField("computed").isEmpty()) {
            double computed = CheckValues.number(row, "computed");
            assertThat(actual[0]).isCloseTo(computed, within(STEPPING * Math.max(1, computed)));
        }
    }

    private static void compare(NamedCsvRecord row, double actual, double expected) {
        double room =
                switch (row.getField("tolerance_is")) {
                    case "percent" -> CheckValues.number(row, "tolerance") / 100 * expected;
                    case "absolute" -> CheckValues.number(row, "tolerance") + 1e-12;
                    default -> Double.NaN;
                };
        switch (row.getField("comparison")) {
            case "equal" -> assertThat(actual).isCloseTo(expected, within(room));
            // the screen must not fall short of what was measured or of the published model
            case "at-least" -> assertThat(actual).isGreaterThanOrEqualTo(expected);
            case "up-to-0.8-above" -> assertThat(actual).isBetween(expected, expected + 0.8);
            // a known limit: the model falls short of this measurement, and its caveat says so
            case "below" -> assertThat(actual).isLessThan(expected);
            // the paper contradicts itself
            case "disagrees" -> assertThat(actual).isNotCloseTo(expected, within(room));
            default -> throw new IllegalArgumentException(row.getField("comparison"));
        }
    }

    private static double[] figures(NamedCsvRecord row) {
        double[] celsius = numbers(row.getField("at_celsius"));
        String[] ids = row.getField("model_ids").split(";", -1);
        return switch (row.getField("quantity")) {
            case "rate-ln" -> rates(ids, celsius);
            case "rate-log10" -> new double[] {rates(ids, celsius)[0] / Math.log(10)};
            case "doubling-minutes" -> new double[] {Math.log(2) / rates(ids, celsius)[0] * 60};
            case "increase-log10" -> new double[] {increase(row, ids[0])};
            case "fit-squares" -> new double[] {squaresOfTheFit(ids[0], row)};
            case "z-celsius" -> new double[] {-1 / regression(ids).getSlope()};
            case "regressed-minutes-6.5-log" ->
                new double[] {6.5 * Math.pow(10, regression(ids).predict(celsius[0]))};
            case "cautious-minutes-4-log" ->
                new double[] {4 / SlowestDeath.vegetative(LIBRARY).log10PerMinute(celsius[0])};
            case "cautious-minutes-6-log" ->
                new double[] {6 / SlowestDeath.vegetative(LIBRARY).log10PerMinute(celsius[0])};
            case "toxin-days" -> new double[] {Math.pow(10, 0.65 + 2.74 / celsius[0])};
            default -> throw new IllegalArgumentException(row.getField("quantity"));
        };
    }

    private static double[] rates(String[] ids, double[] celsius) {
        double[] rates = new double[celsius.length];
        for (int i = 0; i < celsius.length; i++) {
            rates[i] = rate(ids[ids.length == 1 ? 0 : i]).at(celsius[i]);
        }
        return rates;
    }

    private static GrowthRate rate(String id) {
        return GrowthRate.of(LIBRARY.rules(GrowthModel.class).find(id).orElseThrow());
    }

    private static double increase(NamedCsvRecord row, String id) {
        double start = CheckValues.number(row, "start_log10");
        GrowthState state = row.getField("q0").isEmpty()
                ? GrowthState.withoutLag(start)
                : GrowthState.withLag(start, CheckValues.number(row, "q0"));
        double potential = GrowthScreen.potential(trace(row), rate(id), 0, 30).nominal();
        return state.after(potential, CEILING).log10PerGram() - start;
    }

    private static Trace trace(NamedCsvRecord row) {
        double[] pairs = Arrays.stream(row.getField("hours_celsius").split("[;:]", -1))
                .mapToDouble(Double::parseDouble)
                .toArray();
        if (row.getField("shape").equals("linear")) {
            for (int i = 0; i < pairs.length; i += 2) {
                pairs[i] *= 60;
            }
            return Traces.celsius(pairs);
        }
        int minutes = (int) Math.round(pairs[2] * 60);
        double[] falling = new double[2 * minutes + 2];
        for (int i = 0; i <= minutes; i++) {
            falling[2 * i] = i;
            falling[2 * i + 1] = pairs[1] * Math.pow(pairs[3] / pairs[1], (double) i / minutes);
        }
        return Traces.celsius(falling);
    }

    /**
     * Sum of squares between the square roots of the 21 printed rates and of the model's. The published sum belongs to
     * rates of more digits than the three decimals printed: what that rounding can do to it is taken off the difference.
     */
    private static double squaresOfTheFit(String id, NamedCsvRecord row) {
        List<NamedCsvRecord> printed = rows().filter(
                        found -> found.getField("quantity").equals("rate-log10")
                                && found.getField("comparison").equals("equal"))
                .toList();
        assertThat(printed).hasSize(21);
        double sum = 0;
        double rounding = 0;
        for (NamedCsvRecord found : printed) {
            double root = Math.sqrt(rate(id).at(CheckValues.number(found, "at_celsius")) / Math.log(10));
            double rate = CheckValues.number(found, "expected");
            double off = Math.sqrt(rate) - root;
            double unseen = Math.sqrt(rate + 0.0005) - Math.sqrt(rate);
            sum += off * off;
            rounding += 2 * Math.abs(off) * unseen + unseen * unseen;
        }
        double published = CheckValues.number(row, "expected");
        double beyond = Math.max(0, Math.abs(sum - published) - rounding);
        return published + Math.copySign(beyond, sum - published);
    }

    private static SimpleRegression regression(String... ids) {
        SimpleRegression line = new SimpleRegression();
        for (String id : ids) {
            DeathTime time = LIBRARY.rules(DeathTime.class).all().stream()
                    .filter(found -> found.id().equals(id))
                    .findFirst()
                    .orElseThrow();
            line.addData(time.celsius(), Math.log10((time.lowMinutes() + time.highMinutes()) / 2));
        }
        return line;
    }

    private static double[] numbers(String cells) {
        return cells.isEmpty()
                ? new double[0]
                : Arrays.stream(cells.split(";", -1))
                        .mapToDouble(Double::parseDouble)
                        .toArray();
    }

    @Test
    void everyRowNamesASource() throws IOException {
        String own;
        try (InputStream in = Objects.requireNonNull(
                CheckValues.class.getResourceAsStream("/check-values/microbiology-sources.json"))) {
            own = new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
        String known =
                LIBRARY.sources().stream().map(Source::id).collect(Collectors.joining("\" \"", "\"", "\"")) + own;

        assertThat(rows().filter(row -> !row.getField("how").equals("computed")))
                .isNotEmpty()
                .allSatisfy(row -> assertThat(known).contains("\"" + row.getField("source_id") + "\""));
    }

    /** Growth limits printed by FDA (1992) and ICMSF (1996): no model grows far outside them. */
    @Test
    void theModelsKeepNearThePublishedLimitsOfGrowth() {
        assertThat(LIBRARY.rules(GrowthModel.class).all()).hasSize(5).allSatisfy(model -> {
            List<GrowthModel> one = List.of(model);
            double[] limits =
                    switch (model.organism()) {
                        case "C. perfringens" -> new double[] {10, 52};
                        case "Salmonella" -> new double[] {6.5, 47};
                        default -> new double[] {7, 48};
                    };
            assertThat(one.get(0).minCelsius()).isCloseTo(limits[0], within(1.5));
            assertThat(one.get(0).maxCelsius()).isCloseTo(limits[1], within(2.1));
        });
    }
}
