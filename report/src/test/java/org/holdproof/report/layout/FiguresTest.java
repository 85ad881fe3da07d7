package org.holdproof.report.layout;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Comparison;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.verdict.Check;
import org.junit.jupiter.api.Test;

/** Invented figures; conversions by the definition °F = 1.8 °C + 32. */
class FiguresTest {
    private static final List<TemperatureUnit> BOTH = List.of(TemperatureUnit.FAHRENHEIT, TemperatureUnit.CELSIUS);
    private final Figures figures = new Figures(new Degrees(BOTH));

    @Test
    void aFigureNeverLooksEqualToTheLimitItMisses() {
        Check late = check("cooling.1", new Bounded(120.04, 120.04, 120.04), Comparison.AT_MOST, 120, "min");
        assertThat(figures.measured(late)).containsExactly("120.04 min");
        assertThat(figures.margin(late)).isEqualTo("−0.04 min");
        Check exact = check("cooling.1", Bounded.exactly(120), Comparison.AT_MOST, 120, "min");
        assertThat(figures.measured(exact)).containsExactly("120 min");
        assertThat(figures.margin(exact)).isEqualTo("0 min");
    }

    @Test
    void durationsShareAUnit() {
        Check held = check("lethality", new Bounded(107, 113.2, 119), Comparison.AT_LEAST, 112, "min");
        assertThat(figures.measured(held)).containsExactly("worst 107 min", "nominal 113.2 min", "best 119 min");
        assertThat(figures.limit(held)).isEqualTo("at least 112 min");
        assertThat(figures.margin(held)).isEqualTo("−5 min");
    }

    @Test
    void durationsAreSaidAsAPersonSaysThemAndTheLimitWithThem() {
        Check late = check("cooling.1", new Bounded(188, 181.8, 175), Comparison.AT_MOST, 120, "min");
        assertThat(figures.measured(late)).containsExactly("worst 3 h 8 min", "nominal 3 h 2 min", "best 2 h 55 min");
        assertThat(figures.limit(late)).isEqualTo("at most 2 h");
        Check short34 =
                check("lethality", new Bounded(40 / 60.0, 45 / 60.0, 50 / 60.0), Comparison.AT_LEAST, 34 / 60.0, "min");
        assertThat(figures.limit(short34)).isEqualTo("at least 34 s");
        Check barely = check("cooling.2", new Bounded(360.3, 360.2, 360.1), Comparison.AT_MOST, 360, "min");
        assertThat(figures.measured(barely)).containsExactly("worst 360.3 min", "nominal 360.2 min", "best 360.1 min");
        assertThat(figures.limit(barely)).isEqualTo("at most 360 min");
    }

    @Test
    void temperaturesComeInBothScalesAndTheLimitAsPrinted() {
        Check hot = check("hot-hold", new Bounded(134.1, 135, 135.9), Comparison.AT_LEAST, 135, "°F");
        assertThat(figures.measured(hot))
                .containsExactly("worst 134.1", "nominal 135.0", "best 135.9 °F (56.7 · 57.2 · 57.7 °C)");
        assertThat(figures.limit(hot)).isEqualTo("at least 135 °F (57.22 °C)");
        assertThat(figures.margin(hot)).isEqualTo("−0.9 °F");
    }

    @Test
    void anEndNobodyCanBoundSaysSo() {
        Check open =
                check("cooling.2", new Bounded(Double.POSITIVE_INFINITY, 371, 350), Comparison.AT_MOST, 360, "min");
        assertThat(figures.measured(open))
                .containsExactly("worst not bounded", "nominal 6 h 11 min", "best 5 h 50 min");
        assertThat(figures.margin(open)).isEqualTo("no bound");
    }

    @Test
    void aThermometersErrorIsADifference() {
        Check error = check("instrument", Bounded.exactly(0.5), Comparison.AT_MOST, 1, "°C");
        assertThat(figures.measured(error)).containsExactly("0.90 °F (0.50 °C)");
        assertThat(figures.limit(error)).isEqualTo("at most 1.80 °F (1.00 °C)");
    }

    @Test
    void aBoundaryIsPrintedAsItsRulePrintsIt() {
        Degrees celsiusFirst = new Degrees(List.of(TemperatureUnit.CELSIUS, TemperatureUnit.FAHRENHEIT));
        assertThat(celsiusFirst.printed(new Boundary(130, TemperatureUnit.FAHRENHEIT)))
                .isEqualTo("130 °F (54.44 °C)");
        assertThat(celsiusFirst.printed(new Boundary(54.4, TemperatureUnit.CELSIUS)))
                .isEqualTo("54.4 °C (129.92 °F)");
        assertThat(new Degrees(List.of(TemperatureUnit.CELSIUS)).text(63)).isEqualTo("63.0 °C");
    }

    @Test
    void zeroHasNoSign() {
        assertThat(Figures.number(-0.04, 1)).isEqualTo("0.0");
        assertThat(Figures.number(-0.06, 1)).isEqualTo("−0.1");
    }

    private static Check check(String id, Bounded figure, Comparison comparison, double limit, String unit) {
        return Check.of(id, "a question")
                .required("a rule")
                .verdict(Check.judge(figure, comparison, limit))
                .measured(figure)
                .limit(limit)
                .comparison(comparison)
                .unit(unit)
                .why("a reason")
                .build();
    }
}
