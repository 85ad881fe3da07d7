package org.holdproof.core.kinetics;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import org.holdproof.core.log.Trace;
import org.holdproof.core.rules.RuleLibrary;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class GrowthRangeTest {
    private static final RuleLibrary LIBRARY = RuleLibrary.builtIn();

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 100);
    }

    @ParameterizedTest(name = "{0} to {1}: {2}")
    @CsvSource({
        "0, 0, no growth",
        "0, 0.2, less than half a log",
        "0.3, 0.49999, less than half a log",
        "0.1, 0.5, anything from less than half a log to half a log",
        "0.5, 0.5, half a log",
        "0.2, 1.2, anything from less than half a log to 1.5 logs",
        "0.7, 0.9, 0.5 to 1 log",
        "1, 1, 1 log",
        "1.4999, 1.5001, 1 to 2 logs",
        "1.76, 3.91, 1.5 to 4 logs",
        "7.99999, 8, 7.5 to 8 logs",
        "7.9999999999, 8, 8 logs",
    })
    void roundsOutwardsToHalves(double low, double high, String words) {
        assertThat(HalfLogs.range(low, high)).isEqualTo(words);
    }

    /** Whole and half logs only: no text ever carries another decimal. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void noTextCarriesAFinerFigure(long seed) {
        Random random = new Random(seed);
        Trace trace = Traces.random(random, 0, 60);
        GrowthScreen.of(trace, GrowthChoice.forUnknownSpecies(LIBRARY), random.nextDouble(), 5, random.nextBoolean())
                .forEach(range -> assertThat(range.text() + range.caveat())
                        .doesNotContainPattern("[0-9]\\.[0-46-9]")
                        .doesNotContainPattern("[0-9]\\.[0-9][0-9]"));
    }

    private static List<GrowthRange> beef(Trace trace, boolean cooked) {
        return GrowthScreen.of(trace, GrowthChoice.forSpecies(LIBRARY, "beef"), 0, 1000, cooked);
    }

    /** A cool exactly at 1.5 h and 5 h: 1.6 to 1.8 log with lag is what the model gives there; printed in halves. */
    @Test
    void saysWhatItIsAndWhatItIsNot() {
        GrowthRange range = GrowthScreen.of(
                        Cooling.exactlyAtTheLimits(), GrowthChoice.forSpecies(LIBRARY, "beef"), 0, 5, true)
                .get(0);

        assertThat(range.text())
                .isEqualTo(
                        "C. perfringens: modelled growth 1.5 to 4 logs (with a lag, from memory, unconfirmed, and without one).");
        assertThat(range.caveat())
                .startsWith("A worst-case screen for uncured meat: with lag it gives 1.5 to 2 logs on a cool exactly at"
                        + " 1.5 h and 5 h")
                .contains("It assumes 1 log10 CFU/g at the start and at most 9 log10 CFU/g.")
                .endsWith("it cannot clear or condemn a lot, and it never overrides the legal schedule, either way.");
        assertThat(range.modelId()).isEqualTo("cp-bb");
    }

    /** 54 to 27 °C in 1.5 h, then to 4 °C in 5 h, read every minute. */
    private static final class Cooling {
        static Trace exactlyAtTheLimits() {
            int minutes = 390;
            double[] log = new double[2 * minutes + 2];
            for (int i = 0; i <= minutes; i++) {
                log[2 * i] = i;
                log[2 * i + 1] = i <= 90 ? 54 - 27 * i / 90.0 : 27 - 23 * (i - 90) / 300.0;
            }
            return Traces.celsius(log);
        }
    }

    @Test
    void warnsWhereToxinMayHaveFormed() {
        GrowthRange warm = beef(Traces.celsius(0, 38, 300, 38), false).get(2);
        GrowthRange brief = beef(Traces.celsius(0, 38, 60, 38), false).get(2);

        assertThat(warm.concern()).isPresent();
        assertThat(warm.peakLog10PerGram().worst()).isGreaterThan(5);
        assertThat(warm.text())
                .contains("The count may have reached 5 log10 CFU/g.")
                .contains("toxin is not destroyed")
                .doesNotContain("unconfirmed");
        assertThat(brief.concern()).isEmpty();
        assertThat(brief.text()).isEqualTo("S. aureus: modelled growth 0.5 to 1 log (no lag counted).");
    }

    @Test
    void saysWhatAGapDoes() {
        GrowthRange range = GrowthScreen.of(
                        Traces.celsius(0, 4, 60, 4), GrowthChoice.forSpecies(LIBRARY, "pork"), 0.5, 30, false)
                .get(1);

        assertThat(range.text())
                .isEqualTo("Salmonella: modelled growth anything from less than half a log to 1 log (no lag counted)."
                        + " The upper end counts gaps in the record as growth at its fastest.");
    }
}
