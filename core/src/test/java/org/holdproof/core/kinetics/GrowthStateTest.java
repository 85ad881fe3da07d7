package org.holdproof.core.kinetics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.LongStream;
import org.holdproof.core.log.Trace;
import org.holdproof.core.rules.GrowthModel;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class GrowthStateTest {
    private static final double CEILING = 9;

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 100);
    }

    private static GrowthState random(Random random) {
        double start = 8 * random.nextDouble();
        return random.nextInt(4) == 0
                ? GrowthState.withoutLag(start)
                : GrowthState.withLag(start, Math.pow(10, -3 + 4 * random.nextDouble()));
    }

    /** Independent reference: the equations themselves, by the Dormand-Prince 8(5,3) integrator of Commons Math 3.6.1. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theSolutionIsThatOfTheDifferentialEquations(long seed) {
        Random random = new Random(seed);
        GrowthModel model = GrowthModels.random(random);
        GrowthRate rate = GrowthRate.of(model);
        Trace trace = GrowthEquations.wandering(random, 40, 0, 60);
        GrowthState start = random(random);
        double expected = GrowthEquations.withGrowth(rate, CEILING, model.minCelsius(), model.maxCelsius())
                .log10PerGramAfter(trace, start);

        double potential = GrowthScreen.potential(trace, rate, 0, 30).nominal();

        assertThat(start.after(potential, CEILING).log10PerGram()).isCloseTo(expected, within(1e-8));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void carryingTheStateOnChangesNothing(long seed) {
        Random random = new Random(seed);
        GrowthState start = random(random);
        double first = 15 * random.nextDouble();
        double second = 15 * random.nextDouble();

        GrowthState whole = start.after(first + second, CEILING);
        GrowthState parts = start.after(first, CEILING).after(second, CEILING);

        assertThat(parts.log10PerGram()).isCloseTo(whole.log10PerGram(), within(1e-9));
        assertThat(parts.ready()).isCloseTo(whole.ready(), within(1e-9));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void growsWithTimeNeverPastTheCeilingAndLessWithALongerLag(long seed) {
        Random random = new Random(seed);
        double start = 8 * random.nextDouble();
        double potential = 30 * random.nextDouble();
        double q0 = Math.pow(10, -3 + 4 * random.nextDouble());
        GrowthState lagging = GrowthState.withLag(start, q0);
        double gained = lagging.after(potential, CEILING).log10PerGram() - start;

        assertThat(gained).isBetween(0.0, CEILING - start + 1e-9);
        assertThat(gained).isLessThanOrEqualTo(potential / Math.log(10) + 1e-9);
        assertThat(lagging.after(potential + random.nextDouble(), CEILING).log10PerGram())
                .isGreaterThanOrEqualTo(start + gained - 1e-12);
        assertThat(GrowthState.withLag(start, q0 * (1 + random.nextDouble()))
                        .after(potential, CEILING)
                        .log10PerGram())
                .isGreaterThanOrEqualTo(start + gained - 1e-12);
        assertThat(GrowthState.withoutLag(start).after(potential, CEILING).log10PerGram())
                .isGreaterThanOrEqualTo(start + gained - 1e-12);
    }

    @Test
    void endlessGrowthEndsAtTheCeilingAndNoneChangesNothing() {
        GrowthState lagging = GrowthState.withLag(1, 0.007);

        assertThat(lagging.after(1e6, CEILING).log10PerGram()).isCloseTo(CEILING, within(1e-12));
        assertThat(lagging.after(1e6, CEILING).ready()).isEqualTo(1);
        assertThat(lagging.after(0, CEILING)).isEqualTo(lagging);
        // one survivor in a thousand tonnes, and far fewer than one
        assertThat(GrowthState.withoutLag(-12).after(1e6, CEILING).log10PerGram())
                .isCloseTo(CEILING, within(1e-12));
        assertThat(GrowthState.withoutLag(-900).after(1e6, CEILING).log10PerGram())
                .isCloseTo(CEILING, within(1e-9));
        assertThat(GrowthState.withoutLag(-900).after(Math.log(1000), CEILING).log10PerGram())
                .isCloseTo(-897, within(1e-9));
        assertThat(GrowthState.withoutLag(9.5).after(10, CEILING).log10PerGram())
                .isEqualTo(9.5);
    }

    /** With a far ceiling and no lag, one natural-log unit is one natural-log unit. */
    @Test
    void withoutLagGrowthIsThePotential() {
        assertThat(GrowthState.withoutLag(-20).after(Math.log(1000), CEILING).log10PerGram())
                .isCloseTo(-17, within(1e-12));
    }

    @Test
    void refusesAStateThatIsNone() {
        assertThatIllegalArgumentException().isThrownBy(() -> new GrowthState(Double.NaN, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> new GrowthState(1, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> new GrowthState(1, 1.1));
    }
}
