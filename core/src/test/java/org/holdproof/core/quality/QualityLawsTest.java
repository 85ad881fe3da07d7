package org.holdproof.core.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.holdproof.core.quantity.Predicted;
import org.holdproof.core.rules.TrimmedCut;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Laws over random cooks; the seed stands in each test's name. */
class QualityLawsTest {
    private static final QualityModels MODELS = QualityModels.builtIn();

    /** What the short steps of two reckonings may differ by, in points. */
    private static final double STEPS = 0.01;

    static LongStream seeds() {
        return LongStream.range(0, 200);
    }

    /** Up, held, perhaps down and up again; minutes and temperatures in turn. */
    private static double[] cook(SplittableRandom random) {
        int points = 3 + random.nextInt(6);
        double[] cook = new double[2 * points];
        cook[1] = 1 + random.nextDouble() * 9;
        for (int i = 1; i < points; i++) {
            cook[2 * i] = cook[2 * i - 2] + 5 + random.nextDouble() * 600;
            cook[2 * i + 1] = random.nextInt(3) == 0 ? cook[2 * i - 1] : 50 + random.nextDouble() * 45;
        }
        return cook;
    }

    private static double thickness(SplittableRandom random) {
        return 10 + random.nextDouble() * 140;
    }

    private static Predicted lean(CookHistory history, double thickness) {
        return progress(history, thickness).lean(history.lastMinute());
    }

    private static CookProgress progress(CookHistory history, double thickness) {
        return new CookProgress(MODELS, CookHistories.known(history), thickness);
    }

    private static Predicted softening(CookHistory history) {
        return progress(history, 50).softening(history.lastMinute());
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void longerNeverLosesLessNorSoftensLess(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        CookHistory cook = Histories.through(cook(random));
        CookHistory longer = cook.until(cook.lastMinute() + 1 + random.nextDouble() * 1000);
        double thickness = thickness(random);

        assertNotLess(lean(longer, thickness), lean(cook, thickness), 1e-9);
        assertNotLess(softening(longer), softening(cook), 1e-12);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void hotterNeverLosesLessNorSoftensLess(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] cook = cook(random);
        double[] hotter = cook.clone();
        for (int i = 1; i < hotter.length; i += 2) {
            hotter[i] += random.nextDouble() * 5;
        }
        double thickness = thickness(random);

        assertNotLess(lean(Histories.through(hotter), thickness), lean(Histories.through(cook), thickness), STEPS);
        assertNotLess(softening(Histories.through(hotter)), softening(Histories.through(cook)), 1e-9);
    }

    private static void assertNotLess(Predicted more, Predicted less, double slack) {
        assertThat(more.low()).isGreaterThanOrEqualTo(less.low() - slack);
        assertThat(more.central()).isGreaterThanOrEqualTo(less.central() - slack);
        assertThat(more.high()).isGreaterThanOrEqualTo(less.high() - slack);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void lowCentralAndHighAreInOrder(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        CookHistory cook = Histories.through(cook(random));
        double thickness = thickness(random);

        Predicted lean = lean(cook, thickness);
        Predicted actin = progress(cook, thickness).actin(cook.lastMinute());
        assertThat(List.of(0.0, lean.low(), lean.central(), lean.high(), 1.15 * 35.7 + 1e-9))
                .isSorted();
        assertThat(List.of(0.0, actin.low(), actin.central(), actin.high(), 1.0))
                .isSorted();
        assertThat(MODELS.low().percent(cook, thickness))
                .isLessThan(MODELS.high().percent(cook, thickness));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void splittingAHistoryChangesNothing(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        CookHistory cook = Histories.through(cook(random));
        double[] between =
                random.doubles(1 + random.nextInt(20), 0, cook.lastMinute()).toArray();
        CookHistory split = Histories.split(cook, between);
        double thickness = thickness(random);

        Predicted whole = lean(cook, thickness);
        Predicted parts = lean(split, thickness);
        assertThat(parts.low()).isCloseTo(whole.low(), within(STEPS));
        assertThat(parts.central()).isCloseTo(whole.central(), within(STEPS));
        assertThat(parts.high()).isCloseTo(whole.high(), within(STEPS));
        assertThat(MODELS.tenderTime().likeliest().softening(split))
                .isCloseTo(MODELS.tenderTime().likeliest().softening(cook), within(1e-6));
        assertThat(split.minutesAtOrAbove(60)).isCloseTo(cook.minutesAtOrAbove(60), within(1e-6));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void partsSumToTheWholeAndNoneIsNegative(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        CookHistory cook = Histories.through(cook(random));
        TrimmedCut cut =
                MODELS.tables().cuts().get(random.nextInt(MODELS.tables().cuts().size()));
        Smoking smoking =
                random.nextBoolean() ? new Smoking.None() : new Smoking.BeforeBag(0.5 + random.nextDouble() * 11);
        WeightLoss.Modelled loss =
                WeightLoss.Modelled.of(MODELS, cut, lean(cook, thickness(random)), smoking, Optional.empty());

        Predicted total = loss.totalPercent();
        assertThat(total.central())
                .isCloseTo(
                        loss.pressedOutPercent().central()
                                + loss.renderedPercent().central()
                                + loss.evaporatedPercent().central(),
                        within(1e-9));
        assertThat(total.low())
                .isGreaterThanOrEqualTo(loss.pressedOutPercent().low()
                        + loss.renderedPercent().low()
                        + loss.evaporatedPercent().low()
                        - 1e-9);
        assertThat(total.high())
                .isLessThanOrEqualTo(loss.pressedOutPercent().high()
                        + loss.renderedPercent().high()
                        + loss.evaporatedPercent().high()
                        + 1e-9);
        assertThat(List.of(
                        loss.pressedOutPercent().low(),
                        loss.renderedPercent().low(),
                        loss.evaporatedPercent().low()))
                .allSatisfy(part -> assertThat(part).isNotNegative());
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void costFollowsTrimLossAndPortion(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        CookHistory cook = Histories.through(cook(random));
        WeightLoss loss = WeightLoss.Modelled.of(
                MODELS,
                MODELS.tables().cut("any").orElseThrow(),
                lean(cook, thickness(random)),
                new Smoking.None(),
                Optional.empty());
        double trim = random.nextDouble() * 0.4;
        double bought = 1 + random.nextDouble() * 20;
        double portion = 0.1 + random.nextDouble() * 0.3;
        Price price = new Price("$", 1 + random.nextDouble() * 40);
        ServedCost cost = new ServedCost(price, trim, loss, portion);

        // what is bought is what is trimmed off, lost and served
        double served = bought * cost.leastYield();
        double lost = bought * (1 - trim) * loss.mostPercent() / 100;
        assertThat(bought * trim + lost + served).isCloseTo(bought, within(1e-9));
        // all that is served costs what was bought
        assertThat(cost.mostAPortion() * served / portion).isCloseTo(bought * price.amountPerKilogram(), within(1e-6));
        assertThat(cost.leastAPortion()).isLessThanOrEqualTo(cost.mostAPortion());
        assertThat(cost.portions(bought) * portion).isLessThanOrEqualTo(served + 1e-6);
        assertThat((cost.portions(bought) + 1) * portion).isGreaterThan(served - 1e-6);
        // twice the portion costs twice as much; trimming and losing more never costs less
        assertThat(new ServedCost(price, trim, loss, 2 * portion).mostAPortion())
                .isCloseTo(2 * cost.mostAPortion(), within(1e-9));
        assertThat(new ServedCost(price, trim + 0.1, loss, portion).mostAPortion())
                .isGreaterThan(cost.mostAPortion());
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void cuttingAHistoryShortIsTheHistorySoFar(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        CookHistory cook = Histories.through(cook(random));
        double thickness = thickness(random);
        double[] along = MODELS.central().percentAlong(cook, thickness);

        int point = random.nextInt(cook.size());
        assertThat(MODELS.central().percent(cook.until(cook.minute(point)), thickness))
                .isCloseTo(along[point], within(1e-9));
        assertThat(Arrays.stream(along).toArray()).isSorted();
    }
}
