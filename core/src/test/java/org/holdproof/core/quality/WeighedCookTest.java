package org.holdproof.core.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.holdproof.core.batch.Bite;
import org.holdproof.core.batch.Product.Species;
import org.holdproof.core.batch.WeighIns;
import org.holdproof.core.quality.WeighedCook.Measured;
import org.holdproof.core.quality.WeighedCook.Step;
import org.holdproof.core.quantity.Predicted;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The weights are invented. */
class WeighedCookTest {
    private static final QualityModels MODELS = QualityModels.builtIn();
    private static final QualityOutlook.Piece FLAT =
            new QualityOutlook.Piece(Species.BEEF, MODELS.tables().cut("brisket-flat-trimmed"), 75);
    private static final CookHistories DAY = CookHistories.known(Histories.bath(75, 68.3, 24));

    private static QualityOutlook outlook(CookHistories cook) {
        return QualityOutlook.of(MODELS, FLAT, cook, new Smoking.None());
    }

    private static Predicted predicted(CookHistories cook) {
        return ((WeightLoss.Modelled) outlook(cook).weight().orElseThrow()).totalPercent();
    }

    private static WeighedCook weighed(CookHistories cook, double lostPercent) {
        return new WeighedCook(
                FLAT,
                cook,
                new Smoking.None(),
                Optional.of(new WeighIns(
                        5,
                        OptionalDouble.empty(),
                        OptionalDouble.of(5 * (1 - lostPercent / 100)),
                        OptionalDouble.empty())),
                Optional.empty());
    }

    private static WeighedCook eaten(CookHistories cook, Bite bite) {
        return new WeighedCook(FLAT, cook, new Smoking.None(), Optional.empty(), Optional.of(bite));
    }

    private static WeightLoss.Weighed narrowed(List<WeighedCook> earlier) {
        return (WeightLoss.Weighed)
                outlook(DAY).narrowedBy(MODELS, earlier).weight().orElseThrow();
    }

    @Test
    void measuredLossStandsBesideThePredicted() {
        CookHistories cook = CookHistories.known(Histories.through(0, 5, 480, 72, 600, 68.3, 1560, 68.3));
        WeighedCook weighed = new WeighedCook(
                FLAT,
                cook,
                new Smoking.BeforeBag(8),
                Optional.of(new WeighIns(4, OptionalDouble.of(3.1), OptionalDouble.of(2.4), OptionalDouble.of(2.2))),
                Optional.empty());

        List<Measured> measured = weighed.measured(MODELS);
        assertThat(measured).extracting(Measured::step).containsExactly(Step.AFTER_SMOKE, Step.OUT_OF_BAG, Step.SERVED);
        assertThat(measured.get(0).lostPercent()).isCloseTo(22.5, within(1e-9));
        assertThat(measured.get(1).lostPercent()).isCloseTo(40, within(1e-9));
        assertThat(measured.get(1).asPredicted()).contains(true);
        assertThat(measured.get(2).predictedPercent()).isEmpty();
        assertThat(measured.get(0).predictedPercent().orElseThrow().central())
                .isLessThan(measured.get(1).predictedPercent().orElseThrow().central());
    }

    @Test
    void aWeighedCookShiftsAndNarrowsTheNext() {
        Predicted before = predicted(DAY);
        WeightLoss.Weighed after = narrowed(List.of(weighed(DAY, before.central() + 4)));

        assertThat(after.before().totalPercent()).isEqualTo(before);
        assertThat(after.totalPercent().central()).isBetween(before.central(), before.central() + 4);
        assertThat(after.totalPercent().width()).isLessThan(before.width());
    }

    static LongStream seeds() {
        return LongStream.range(0, 100);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void moreWeighedCooksNeverWidenAndNeverNarrowBelowTheSpreadBetweenPieces(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Predicted before = predicted(DAY);
        List<WeighedCook> cooks = IntStream.range(0, 6)
                .mapToObj(i -> weighed(DAY, before.low() + random.nextDouble() * before.width()))
                .toList();
        double width = before.width();
        for (int count = 1; count <= cooks.size(); count++) {
            WeightLoss.Weighed after = narrowed(cooks.subList(0, count));
            assertThat(after.totalPercent().width()).isLessThanOrEqualTo(width + 1e-9);
            assertThat(after.cooks()).isEqualTo(count);
            width = after.totalPercent().width();
        }
        // two standard deviations either way between pieces cooked alike are always left
        assertThat(width).isGreaterThanOrEqualTo(Math.min(before.width(), 4 * 2.7) - 1e-6);
    }

    @Test
    void aCookOutsideWhatWasPredictedNarrowsNothing() {
        Predicted before = predicted(DAY);
        Predicted after = narrowed(List.of(weighed(DAY, before.high() + 8))).totalPercent();

        assertThat(after.low()).isLessThanOrEqualTo(before.low());
        assertThat(after.high()).isGreaterThanOrEqualTo(before.high());
        assertThat(after.central()).isGreaterThan(before.central());
    }

    @Test
    void withoutAWeighingNothingChanges() {
        assertThat(outlook(DAY).narrowedBy(MODELS, List.of())).isEqualTo(outlook(DAY));
    }

    @Test
    void aToughPieceAsksForMoreAndATenderOneForNoMore() {
        CookHistories short12 = CookHistories.known(Histories.bath(75, 68.3, 12));
        Tenderness before = outlook(DAY).tenderness().orElseThrow();
        Tenderness tough = after(eaten(short12, Bite.TOUGH));
        Tenderness tender = after(eaten(short12, Bite.TENDER));

        assertThat(tough.need().central()).isGreaterThan(before.need().central());
        assertThat(tender.need().central()).isLessThan(before.need().central());
        assertThat(tender.need().high())
                .isLessThanOrEqualTo(
                        new CookProgress(MODELS, short12, 75).softening(12 * 60).high());
        assertThat(tough.hoursThere().central())
                .isGreaterThan(before.hoursThere().central());
        assertThat(tender.softening()).isEqualTo(before.softening());
    }

    private static Tenderness after(WeighedCook... cooks) {
        return outlook(DAY).narrowedBy(MODELS, List.of(cooks)).tenderness().orElseThrow();
    }

    @Test
    void piecesThatContradictEachOtherChangeNothing() {
        CookHistories short6 = CookHistories.known(Histories.bath(75, 68.3, 6));
        CookHistories long30 = CookHistories.known(Histories.bath(75, 68.3, 30));

        assertThat(after(eaten(long30, Bite.TOUGH), eaten(short6, Bite.TENDER)))
                .isEqualTo(outlook(DAY).tenderness().orElseThrow());
    }

    @Test
    void piecesBeyondThePublishedSpreadStillGiveAnOrderedNeed() {
        CookHistories week = CookHistories.known(Histories.held(90, 500));
        CookHistories minutes = CookHistories.known(Histories.held(50.5, 0.02));

        assertThat(after(eaten(week, Bite.TOUGH)).need().low()).isGreaterThan(100);
        assertThat(after(eaten(minutes, Bite.FALLING_APART)).need().high()).isLessThan(0.01);
    }

    @Test
    void aPieceGainsNoWeight() {
        assertThatThrownBy(
                        () -> new WeighIns(4, OptionalDouble.of(4.2), OptionalDouble.empty(), OptionalDouble.empty()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("gains no weight");
    }
}
