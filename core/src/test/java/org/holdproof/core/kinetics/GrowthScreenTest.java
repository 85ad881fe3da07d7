package org.holdproof.core.kinetics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.rules.Citation;
import org.holdproof.core.rules.GrowthLag;
import org.holdproof.core.rules.GrowthModel;
import org.holdproof.core.rules.RuleLibrary;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class GrowthScreenTest {
    private static final RuleLibrary LIBRARY = RuleLibrary.builtIn();

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 100);
    }

    private static List<GrowthRange> unknownFood(Trace trace, double toleranceCelsius, double gapMinutes) {
        return GrowthScreen.of(trace, GrowthChoice.forUnknownSpecies(LIBRARY), toleranceCelsius, gapMinutes, true);
    }

    private static void assertInOrder(Bounded figure) {
        assertThat(figure.worst()).isGreaterThanOrEqualTo(figure.nominal() - 1e-9);
        assertThat(figure.nominal()).isGreaterThanOrEqualTo(figure.best() - 1e-9);
        assertThat(figure.best()).isNotNegative();
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void worstNominalBestStandInOrderAndLagNeverGrowsMore(long seed) {
        Random random = new Random(seed);
        for (GrowthRange range : unknownFood(Traces.random(random, 0, 60), random.nextDouble(), 5)) {
            assertInOrder(range.withoutLag());
            range.lagging().ifPresent(lagging -> {
                assertInOrder(lagging.log10());
                assertThat(lagging.log10().worst())
                        .isLessThanOrEqualTo(range.withoutLag().worst() + 1e-12);
                assertThat(lagging.log10().nominal())
                        .isLessThanOrEqualTo(range.withoutLag().nominal() + 1e-12);
                assertThat(lagging.log10().best())
                        .isLessThanOrEqualTo(range.withoutLag().best() + 1e-12);
            });
            assertThat(range.lowLog10()).isLessThanOrEqualTo(range.highLog10() + 1e-12);
            assertThat(range.lagging().isPresent()).isEqualTo(range.organism().equals("C. perfringens"));
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void splittingALogAtAReadingChangesNothing(long seed) {
        Random random = new Random(seed);
        Trace trace = Traces.random(random, 0, 60);
        GrowthRate rate = GrowthRate.fastestOf(LIBRARY.rules(GrowthModel.class).all());
        long cut = trace.millis(random.nextInt(trace.size()));
        Bounded whole = GrowthScreen.potential(trace, rate, 0.5, 5);
        Bounded before = GrowthScreen.potential(trace.between(trace.firstMillis(), cut), rate, 0.5, 5);
        Bounded after = GrowthScreen.potential(trace.between(cut, trace.lastMillis()), rate, 0.5, 5);

        assertThat(before.worst() + after.worst()).isCloseTo(whole.worst(), within(1e-9 * (1 + whole.worst())));
        assertThat(before.nominal() + after.nominal()).isCloseTo(whole.nominal(), within(1e-9 * (1 + whole.worst())));
        assertThat(before.best() + after.best()).isCloseTo(whole.best(), within(1e-9 * (1 + whole.worst())));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void aLongerLogNeverGrowsLessAndAWiderToleranceOrAStricterGapNeverNarrows(long seed) {
        Random random = new Random(seed);
        Trace trace = Traces.random(random, 0, 60);
        Trace shorter = trace.between(trace.firstMillis(), trace.millis(Math.max(1, random.nextInt(trace.size()))));
        List<GrowthRange> all = unknownFood(trace, 0.3, 10);
        List<GrowthRange> part = unknownFood(shorter, 0.3, 10);
        List<GrowthRange> wide = unknownFood(trace, 0.8, 3);
        for (int i = 0; i < all.size(); i++) {
            Bounded whole = all.get(i).withoutLag();
            assertThat(part.get(i).withoutLag().worst()).isLessThanOrEqualTo(whole.worst() + 1e-12);
            assertThat(part.get(i).withoutLag().nominal()).isLessThanOrEqualTo(whole.nominal() + 1e-12);
            assertThat(part.get(i).withoutLag().best()).isLessThanOrEqualTo(whole.best() + 1e-12);
            assertThat(wide.get(i).withoutLag().worst()).isGreaterThanOrEqualTo(whole.worst() - 1e-12);
            assertThat(wide.get(i).withoutLag().nominal()).isEqualTo(whole.nominal());
            assertThat(wide.get(i).withoutLag().best()).isLessThanOrEqualTo(whole.best() + 1e-12);
        }
    }

    /** A gap hides anything: even between two cold readings the food may have stood warm. */
    @Test
    void aGapCountsAsGrowthAtItsFastestAtWorst() {
        Trace trace = Traces.celsius(0, 4, 1, 4, 31, 4, 32, 4);
        GrowthRate rate =
                GrowthRate.of(LIBRARY.rules(GrowthModel.class).find("cp-rc").orElseThrow());

        assertThat(GrowthScreen.potential(trace, rate, 0.5, 30)).isEqualTo(Bounded.exactly(0));
        assertThat(GrowthScreen.potential(trace, rate, 0.5, 29)).isEqualTo(new Bounded(6.06 / 2, 0, 0));
        assertThat(unknownFood(trace, 0.5, 29)).allMatch(GrowthRange::spansGap);
        assertThat(unknownFood(trace, 0.5, 30)).noneMatch(GrowthRange::spansGap);
    }

    /** Above the optimum the colder end of the tolerance is the worse one. */
    @Test
    void theToleranceIsTakenAtWhicheverEndGrowsFaster() {
        GrowthRate rate =
                GrowthRate.of(LIBRARY.rules(GrowthModel.class).find("cp-rc").orElseThrow());
        Bounded hot = GrowthScreen.potential(Traces.celsius(0, 50, 5, 50), rate, 1, 5);
        Bounded cold = GrowthScreen.potential(Traces.celsius(0, 30, 5, 30), rate, 1, 5);
        Bounded across = GrowthScreen.potential(Traces.celsius(0, 46, 5, 47), rate, 1, 5);

        assertThat(hot.worst()).isCloseTo(rate.at(49) / 12, within(1e-12));
        assertThat(hot.best()).isCloseTo(rate.at(51) / 12, within(1e-12));
        assertThat(cold.worst()).isCloseTo(rate.at(31) / 12, within(1e-12));
        assertThat(cold.best()).isCloseTo(rate.at(29) / 12, within(1e-12));
        assertThat(across.worst()).isCloseTo(6.06 / 12, within(1e-12));
    }

    @ParameterizedTest(name = "{0}: {1}, {2}")
    @CsvSource({
        "beef, cp-bb, 0.007",
        "veal, cp-bb, 0.04",
        "lamb, cp-bb, 0.04",
        "game, cp-bb, 0.04",
        "pork, cp-rc, 0.014",
        "chicken, cp-rc, 0.011",
        "turkey, cp-rc, 0.011",
        "other-poultry, cp-rc, 0.011",
        "fish, cp-rc, 0.04",
    })
    void choosesTheModelAndTheLagByTheSpecies(String species, String model, double q0) {
        List<GrowthChoice> choices = GrowthChoice.forSpecies(LIBRARY, species);

        assertThat(choices)
                .extracting(GrowthChoice::organism)
                .containsExactly("C. perfringens", "Salmonella", "S. aureus");
        assertThat(choices.get(0).models()).extracting(GrowthModel::id).containsExactly(model);
        assertThat(choices.get(0).lag()).map(GrowthLag::q0).contains(q0);
        assertThat(choices.get(1).models()).extracting(GrowthModel::id).containsExactly("sal-cooked-chicken");
        assertThat(choices.get(2).models()).extracting(GrowthModel::id).containsExactly("sa-2064-48c");
        assertThat(choices.subList(1, 3)).allMatch(choice -> choice.lag().isEmpty());
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void anUnknownFoodIsScreenedNoMoreKindlyThanAnyKnownOne(long seed) {
        Trace trace = Traces.random(new Random(seed), 0, 60);
        GrowthRange unknown = unknownFood(trace, 0.5, 5).get(0);
        for (String species : List.of("beef", "lamb", "pork", "turkey", "fish")) {
            GrowthRange known = GrowthScreen.of(trace, GrowthChoice.forSpecies(LIBRARY, species), 0.5, 5, true)
                    .get(0);
            assertThat(unknown.withoutLag().nominal())
                    .isGreaterThanOrEqualTo(known.withoutLag().nominal() - 1e-9);
            assertThat(unknown.lagging().orElseThrow().log10().nominal())
                    .isGreaterThanOrEqualTo(
                            known.lagging().orElseThrow().log10().nominal() - 1e-9);
            assertThat(unknown.highLog10()).isGreaterThanOrEqualTo(known.highLog10() - 1e-9);
        }
    }

    @Test
    void countsNoLagBeforeACookHasKilledTheGrowingCells() {
        Trace comeUp = Traces.celsius(0, 4, 240, 58);
        List<GrowthChoice> beef = GrowthChoice.forSpecies(LIBRARY, "beef");

        assertThat(GrowthScreen.of(comeUp, beef, 0.5, 300, false))
                .allSatisfy(range -> assertThat(range.lagging()).isEmpty());
    }

    @Test
    void oneReadingShowsNothing() {
        assertThat(unknownFood(Traces.celsius(0, 40), 0.5, 5)).isEmpty();
    }

    @Test
    void citesTheModelTheLagAndTheConcern() {
        List<GrowthRange> ranges =
                GrowthScreen.of(Traces.celsius(0, 40, 1, 40), GrowthChoice.forSpecies(LIBRARY, "beef"), 0, 5, true);

        assertThat(ranges.get(0).citations())
                .extracting(Citation::text)
                .satisfiesExactly(
                        model -> assertThat(model)
                                .contains("roasted chicken and braised beef")
                                .doesNotContain("unconfirmed"),
                        lag -> assertThat(lag).endsWith("(from memory, unconfirmed)"));
        assertThat(ranges.get(2).citations()).hasSize(2).last().satisfies(concern -> assertThat(concern.text())
                .contains("FSIS Cooking Guideline")
                .doesNotContain("unconfirmed"));
    }
}
