package org.holdproof.core.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.holdproof.core.batch.Product.Species;
import org.holdproof.core.quality.Tenderness.Word;
import org.holdproof.core.quantity.Predicted;
import org.holdproof.core.quantity.TemperatureUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Whole answers; the expected figures were first reckoned with NumPy from the same equations. */
class QualityOutlookTest {
    private static final QualityModels MODELS = QualityModels.builtIn();
    private static final CookHistories PIT =
            CookHistories.known(Histories.through(0, 5, 240, 70, 480, 75, 720, 95, 780, 80));

    private static QualityOutlook.Piece flat() {
        return piece("brisket-flat-trimmed");
    }

    private static QualityOutlook.Piece piece(String cut) {
        return new QualityOutlook.Piece(Species.BEEF, MODELS.tables().cut(cut), 75);
    }

    private static QualityOutlook bath(double celsius, double hours) {
        return QualityOutlook.of(
                MODELS, flat(), CookHistories.known(Histories.bath(75, celsius, hours)), new Smoking.None());
    }

    private static WeightLoss.Modelled modelled(QualityOutlook outlook) {
        return (WeightLoss.Modelled) outlook.weight().orElseThrow();
    }

    /** A 75 mm flat for hours in a bath: loss low, middle, high; actin set, low and high; softening and word. */
    @ParameterizedTest(name = "{1} h at {0} °C")
    @CsvSource({
        "57.2, 24, 19, 28, 40, 0.56, 0.96, 0.5, NOT_YET",
        "62.8, 24, 26, 34, 41, 1.00, 1.00, 0.9, ABOUT_THERE",
        "68.3, 24, 26, 34, 41, 1.00, 1.00, 1.6, ABOUT_THERE",
        "68.3, 36, 26, 34, 41, 1.00, 1.00, 2.6, LONG_ENOUGH"
    })
    void flatInABath(
            double celsius,
            double hours,
            double low,
            double middle,
            double high,
            double leastActin,
            double mostActin,
            double softening,
            Word word) {
        QualityOutlook outlook = bath(celsius, hours);
        Predicted total = modelled(outlook).totalPercent();
        Tenderness tender = outlook.tenderness().orElseThrow();

        assertThat(total.low()).isCloseTo(low, within(0.6));
        assertThat(total.central()).isCloseTo(middle, within(0.6));
        assertThat(total.high()).isCloseTo(high, within(0.6));
        assertThat(modelled(outlook).evaporatedPercent()).isEqualTo(Predicted.exactly(0));
        assertThat(tender.actinDenatured().low()).isCloseTo(leastActin, within(0.006));
        assertThat(tender.actinDenatured().high()).isCloseTo(mostActin, within(0.006));
        assertThat(tender.softening().central()).isCloseTo(softening, within(0.06));
        assertThat(tender.word()).isEqualTo(word);
    }

    /** 8 h of smoke at 110 °C, then 18 h at 68.3 °C: 31 to 49 %, of it 2 to 12 evaporated; likely long enough. */
    @Test
    void flatSmokedThenBathed() {
        CookHistories cook = new CookHistories(smoked("low"), smoked("central"), smoked("high"));
        QualityOutlook outlook = QualityOutlook.of(MODELS, flat(), cook, new Smoking.BeforeBag(8));
        Predicted total = modelled(outlook).totalPercent();
        Tenderness tender = outlook.tenderness().orElseThrow();

        assertThat(total.low()).isCloseTo(31, within(0.6));
        assertThat(total.central()).isCloseTo(39, within(0.6));
        assertThat(total.high()).isCloseTo(49, within(0.6));
        assertThat(tender.softening().low()).isCloseTo(1.7, within(0.06));
        assertThat(tender.softening().central()).isCloseTo(2.1, within(0.06));
        assertThat(tender.softening().high()).isCloseTo(3.2, within(0.06));
        assertThat(tender.word()).isEqualTo(Word.LIKELY_LONG_ENOUGH);
        assertThat(outlook.colour()).anyMatch(words -> words.contains("below about 70 °C"));
    }

    private static CookHistory smoked(String set) {
        double[][] points = QualityCheckValuesTest.rows("smoked-then-bagged.csv").stream()
                .filter(row -> row.getField("set").equals(set))
                .map(row -> new double[] {
                    Double.parseDouble(row.getField("minute")),
                    Double.parseDouble(row.getField("core_celsius")),
                    Double.parseDouble(row.getField("mean_celsius"))
                })
                .toArray(double[][]::new);
        double[][] columns = new double[3][points.length];
        for (int i = 0; i < points.length; i++) {
            for (int j = 0; j < 3; j++) {
                columns[j][i] = points[i][j];
            }
        }
        return CookHistory.of(columns[0], columns[1], columns[2]);
    }

    /** Smoked to 95 °C: 34 to 52 (43) % trimmed, 34 to 53 (44) % whole; the trade's 40 % and more stands beside it. */
    @Test
    void smokedToTheEndTheTradesFortyStandsBesideTheModel() {
        Predicted trimmed = modelled(QualityOutlook.of(MODELS, flat(), PIT, new Smoking.ToTheEnd()))
                .totalPercent();
        WeightLoss.Modelled whole =
                modelled(QualityOutlook.of(MODELS, piece("brisket-whole-trimmed"), PIT, new Smoking.ToTheEnd()));

        assertThat(trimmed.low()).isCloseTo(34, within(0.6));
        assertThat(trimmed.central()).isCloseTo(43, within(0.6));
        assertThat(trimmed.high()).isCloseTo(52, within(0.6));
        assertThat(whole.totalPercent().low()).isCloseTo(34, within(0.6));
        assertThat(whole.totalPercent().central()).isCloseTo(44, within(0.6));
        assertThat(whole.totalPercent().high()).isCloseTo(53, within(0.6));
        assertThat(whole.practice()).contains(CommonPractice.PAST_200_F);
        assertThat(whole.totalPercent().contains(CommonPractice.PAST_200_F.lossPercent()))
                .isTrue();
    }

    /** Common practice, no source: about 18 % near 160 °F is a steak's that was not held; beside a hold it misleads. */
    @Test
    void theTradesEighteenIsSaidOfPiecesNotHeldAlone() {
        double near160 = TemperatureUnit.FAHRENHEIT.toCelsius(160);
        QualityOutlook held = bath(near160, 20);
        QualityOutlook steak = QualityOutlook.of(
                MODELS, piece("any"), CookHistories.known(Histories.ramp(near160, 1)), new Smoking.None());

        assertThat(held.weight().orElseThrow().practice()).isEmpty();
        assertThat(held.weight().orElseThrow()).isInstanceOf(WeightLoss.Modelled.class);
        assertThat(steak.weight().orElseThrow().practice()).contains(CommonPractice.NEAR_160_F);
        assertThat(steak.weight().orElseThrow()).isInstanceOf(WeightLoss.Published.class);
    }

    /** Common practice, no source: 12 lb raw lose 2.16 lb near 160 °F and 4.8 lb past 200 °F; 2.64 lb are about 5 cups. */
    @Test
    void tradeFactsOfWeight() {
        double between = CommonPractice.PAST_200_F.lost(12) - CommonPractice.NEAR_160_F.lost(12);

        assertThat(CommonPractice.NEAR_160_F.lost(12)).isCloseTo(2.16, within(1e-9));
        assertThat(CommonPractice.PAST_200_F.lost(12)).isCloseTo(4.8, within(1e-9));
        assertThat(between).isCloseTo(2.64, within(1e-9));
        assertThat(CommonPractice.usCups(between * 0.45359237)).isCloseTo(5.06, within(0.01));
    }

    /** Outside beef and holds the published ranges speak: Lowe, rare 5 to 20 %; Honikel and Hamm 1994, 25 to 35 %. */
    @Test
    void publishedRangesSpeakWhereTheModelWasNotTested() {
        WeightLoss lamb = other(Species.LAMB, 56).orElseThrow();
        WeightLoss pork = other(Species.PORK, 72).orElseThrow();

        assertThat(lamb).isInstanceOf(WeightLoss.Published.class);
        assertThat(lamb.leastPercent()).isEqualTo(5);
        assertThat(lamb.mostPercent()).isEqualTo(20);
        assertThat(pork.leastPercent()).isEqualTo(20);
        assertThat(pork.mostPercent()).isEqualTo(35);
        assertThat(other(Species.FISH, 56)).isEmpty();
        assertThat(other(Species.TURKEY, 62)).isEmpty();
    }

    private static Optional<WeightLoss> other(Species species, double celsius) {
        QualityOutlook outlook = QualityOutlook.of(
                MODELS,
                new QualityOutlook.Piece(species, Optional.empty(), 50),
                CookHistories.known(Histories.bath(50, celsius, 10)),
                new Smoking.None());
        assertThat(outlook.tenderness()).isEmpty();
        return outlook.weight();
    }

    @Test
    void aCutOfAnotherAnimalIsRefused() {
        assertThatThrownBy(() ->
                        new QualityOutlook.Piece(Species.PORK, MODELS.tables().cut("brisket-point"), 50))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("of pork");
    }

    @Test
    void hoursMissingAreThoseToTheMiddleOfWhatSuchCutsNeeded() {
        Tenderness tender = bath(62.8, 10).tenderness().orElseThrow();
        double more = tender.hoursMore().orElseThrow();

        assertThat(bath(62.8, 10 + more).tenderness().orElseThrow().softening().central())
                .isCloseTo(1, within(0.02));
        assertThat(bath(68.3, 36).tenderness().orElseThrow().hoursMore()).isEmpty();
    }

    @Test
    void aShorterSmokeEvaporatesNoMore() {
        Predicted four = new Smoking.BeforeBag(4).evaporatedPercent(MODELS);
        Predicted eight = new Smoking.BeforeBag(8).evaporatedPercent(MODELS);
        Predicted twelve = new Smoking.BeforeBag(12).evaporatedPercent(MODELS);

        assertThat(eight).isEqualTo(MODELS.range("evaporated-before-bag"));
        assertThat(four.low()).isLessThan(eight.low());
        assertThat(four.central()).isLessThan(eight.central());
        assertThat(twelve.central()).isGreaterThan(eight.central());
        assertThat(twelve.high()).isGreaterThan(eight.high());
    }
}
