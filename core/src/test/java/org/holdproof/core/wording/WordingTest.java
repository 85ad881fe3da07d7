package org.holdproof.core.wording;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Comparison;
import org.holdproof.core.quantity.TemperatureUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WordingTest {
    private static final Wording FAHRENHEIT_FIRST =
            new Wording(List.of(TemperatureUnit.FAHRENHEIT, TemperatureUnit.CELSIUS), ZoneOffset.UTC);

    @ParameterizedTest
    @CsvSource({
        "0, 0 s",
        "0.5666666666666667, 34 s",
        "1.5, 90 s",
        "2, 2 min",
        "112, 112 min",
        "112.25, 112.3 min",
        "179.94, 179.9 min",
        "180, 3 h",
        "359, 5 h 59 min",
        "Infinity, no bound"
    })
    void aDurationIsSaidInTheUnitThatSuitsIt(double minutes, String words) {
        assertThat(Wording.minutes(minutes)).isEqualTo(words);
    }

    @ParameterizedTest
    @CsvSource({
        "175, 188, between 2 h 55 min and 3 h 8 min",
        "188, 175, between 2 h 55 min and 3 h 8 min",
        "0.5, 40, between 0.5 min and 40 min",
        "5, Infinity, between 5 min and no bound",
        "7, 7, 7 min"
    })
    void twoDurationsOfOneSentenceShareAUnit(double one, double other, String words) {
        assertThat(Wording.between(one, other)).isEqualTo(words);
    }

    @Test
    void aCheckIsOneLine() {
        Headline headline = new Headline(FAHRENHEIT_FIRST);

        assertThat(headline.of(
                        "Cooled in time, stage 1",
                        Optional.of(new Bounded(104, 100, 95)),
                        Comparison.AT_MOST,
                        OptionalDouble.of(120),
                        Optional.of("min")))
                .isEqualTo("Cooled in time, stage 1: 95 min to 104 min (at most 120 min)");
        assertThat(headline.of(
                        "Held hot enough",
                        Optional.of(new Bounded(60, 60, 60)),
                        Comparison.AT_LEAST,
                        OptionalDouble.of(57.5),
                        Optional.of("°C")))
                .isEqualTo("Held hot enough: 140.0 °F (60.0 °C) (at least 135.5 °F (57.5 °C))");
        assertThat(headline.of(
                        "Core pasteurized",
                        Optional.empty(),
                        Comparison.AT_LEAST,
                        OptionalDouble.empty(),
                        Optional.empty()))
                .isEqualTo("Core pasteurized");
    }
}
