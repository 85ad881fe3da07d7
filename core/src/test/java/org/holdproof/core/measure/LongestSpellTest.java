package org.holdproof.core.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.Random;
import java.util.stream.LongStream;
import org.holdproof.core.kinetics.Traces;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Span;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class LongestSpellTest {

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 200);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void worstNominalBestStandInOrder(long seed) {
        Random random = new Random(seed);
        Trace trace = Traces.random(random, 45, 70);
        LongestSpell spell = LongestSpell.atOrAbove(trace, 56 + random.nextDouble() * 4, random.nextDouble(), 5);

        assertThat(minutes(spell.worst())).isLessThanOrEqualTo(minutes(spell.nominal()));
        assertThat(minutes(spell.nominal())).isLessThanOrEqualTo(minutes(spell.best()));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void aLowerTemperatureIsHeldNoShorter(long seed) {
        Random random = new Random(seed);
        Trace trace = Traces.random(random, 45, 70);
        LongestSpell high = LongestSpell.atOrAbove(trace, 58, 0.5, 5);
        LongestSpell low = LongestSpell.atOrAbove(trace, 58 - random.nextDouble() * 5, 0.5, 5);

        assertThat(minutes(low.worst())).isGreaterThanOrEqualTo(minutes(high.worst()));
        assertThat(minutes(low.nominal())).isGreaterThanOrEqualTo(minutes(high.nominal()));
        assertThat(minutes(low.best())).isGreaterThanOrEqualTo(minutes(high.best()));
    }

    @Test
    void oneReadingReachesATemperatureForNoTime() {
        LongestSpell spell = LongestSpell.atOrAbove(Traces.fahrenheit(0, 158), 70, 0, 5);

        assertThat(spell.worst()).contains(new Span(0, 0));
        assertThat(LongestSpell.atOrAbove(Traces.fahrenheit(0, 157.9), 70, 0, 5).best())
                .isEmpty();
    }

    @Test
    void aGapBreaksTheWorstSpellOnly() {
        Trace trace = Traces.celsius(0, 60, 4, 60, 50, 60, 53, 60);
        LongestSpell spell = LongestSpell.atOrAbove(trace, 55, 0.5, 5);

        assertThat(minutes(spell.worst())).isCloseTo(4, within(1e-9));
        assertThat(minutes(spell.nominal())).isCloseTo(53, within(1e-9));
        assertThat(minutes(spell.best())).isCloseTo(53, within(1e-9));
    }

    @Test
    void theStraightLineFindsTheCrossingAndTheBoundsTakeTheReadings() {
        Trace trace = Traces.celsius(0, 50, 10, 60, 20, 60, 30, 50);
        LongestSpell spell = LongestSpell.atOrAbove(trace, 55, 0, 15);

        assertThat(minutes(spell.worst())).isCloseTo(10, within(1e-9));
        assertThat(minutes(spell.nominal())).isCloseTo(20, within(1e-6));
        assertThat(minutes(spell.best())).isCloseTo(30, within(1e-9));
    }

    @Test
    void aReadingSurelyBelowEndsEvenTheBestSpell() {
        Trace trace = Traces.celsius(0, 60, 1, 60, 2, 53, 3, 60, 4, 60, 5, 60);
        LongestSpell spell = LongestSpell.atOrAbove(trace, 55, 0.5, 5);

        assertThat(minutes(spell.best())).isCloseTo(3, within(1e-9));
    }

    private static double minutes(Optional<Span> spell) {
        return spell.map(Span::minutes).orElse(-1.0);
    }
}
