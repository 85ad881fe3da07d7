package org.holdproof.core.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.holdproof.core.batch.Product.Species;
import org.holdproof.core.quantity.TemperatureUnit;
import org.junit.jupiter.api.Test;

class QualityTest {
    private static final double F_165 = TemperatureUnit.FAHRENHEIT.toCelsius(165);

    /** Common practice, no source: 12 lb raw lose 2.16 lb near 160 °F and 4.8 lb past 200 °F. */
    @Test
    void tradeFactsOfWeight() {
        assertThat(TradePractice.NEAR_160_F.waterLost(12)).isCloseTo(2.16, within(1e-9));
        assertThat(TradePractice.PAST_200_F.waterLost(12)).isCloseTo(4.8, within(1e-9));
        assertThat(TradePractice.NEAR_160_F.words()).isEqualTo("about 18 %");
        assertThat(TradePractice.PAST_200_F.words()).isEqualTo("at least 40 %");
    }

    /** Common practice, no source: the 2.64 lb between them are about five US cups. A US cup is 236.588 mL (NIST SP 811). */
    @Test
    void tradeFactOfWaterInCups() {
        double between = TradePractice.PAST_200_F.waterLost(12) - TradePractice.NEAR_160_F.waterLost(12);

        assertThat(between).isCloseTo(2.64, within(1e-9));
        assertThat(TradePractice.usCups(between * 0.45359237)).isCloseTo(5.06, within(0.01));
    }

    /**
     * Common practice, no source: collagen from about 140 °F; 155 °F for about a day, or 18 to 20 h after 8 h of smoke.
     * Both are plans by the published rows, which ask for far less.
     */
    @Test
    void tradeFactsOfTime() {
        assertThat(TradePractice.COLLAGEN_FROM).isEqualTo("140 °F");
        assertThat(TradePractice.USUAL_TIME).contains("155 °F", "about a day", "18 to 20 h after 8 h of smoke");
        PlannedCook cut = PlannedCooks.roast(65, TemperatureUnit.FAHRENHEIT.toCelsius(155));
        BathPlan day = PlannedCooks.plan(PlannedCooks.inBath(cut, 24 * 60));
        BathPlan smoked = PlannedCooks.plan(PlannedCooks.inBath(PlannedCooks.smoked(cut, 110, 8 * 60), 18 * 60));

        assertThat(day.outMinute()).isEqualTo(24 * 60);
        assertThat(smoked.outMinute()).isEqualTo(26 * 60);
        assertThat(smoked.coveringMinute()).isLessThan(smoked.outMinute() / 2);
    }

    /** 25 to 35 % of raw weight: Pearson and Dutson 1994 (read). The trade's 18 % near 160 °F lies below it: it governs. */
    @Test
    void thePublishedRangeGovernsWhereTheTradeDiffers() {
        CookLoss done = CookLoss.at(Species.BEEF, F_165).orElseThrow();

        assertThat(done.lowPercent()).isEqualTo(25);
        assertThat(done.highPercent()).isEqualTo(35);
        assertThat(done.trade()).contains(TradePractice.NEAR_160_F);
        assertThat(done.tradeDiffers()).isTrue();
        assertThat(done.published().get(0).cited()).contains("1994", "read");
        CookLoss past = CookLoss.at(Species.BEEF, TemperatureUnit.FAHRENHEIT.toCelsius(203))
                .orElseThrow();
        assertThat(past.trade()).contains(TradePractice.PAST_200_F);
        assertThat(past.tradeDiffers()).isTrue();
    }

    /** Rare 5 to 20 %: Lowe, Experimental cookery (read). */
    @Test
    void rareMeatLosesWhatTheOldLaboratoryTextSays() {
        CookLoss rare = CookLoss.at(Species.LAMB, 56).orElseThrow();

        assertThat(rare.lowPercent()).isEqualTo(5);
        assertThat(rare.highPercent()).isEqualTo(20);
        assertThat(rare.trade()).isEmpty();
        CookLoss between = CookLoss.at(Species.BEEF, 65).orElseThrow();
        assertThat(between.lowPercent()).isEqualTo(5);
        assertThat(between.highPercent()).isEqualTo(35);
    }

    @Test
    void noFigureIsMadeUpWhereNoneIsPublished() {
        assertThat(CookLoss.at(Species.FISH, 56)).isEmpty();
        assertThat(CookLoss.at(Species.CHICKEN, 62)).isEmpty();
        assertThat(Tenderness.at(Species.PORK, 60)).isEmpty();
        assertThat(Tenderness.at(Species.BEEF, 85)).isEmpty();
    }

    @Test
    void portionsAreCountedAtTheHighestLoss() {
        CookLoss done = CookLoss.at(Species.BEEF, F_165).orElseThrow();

        assertThat(done.leastLeft(10)).isCloseTo(6.5, within(1e-9));
        assertThat(done.mostLeft(10)).isCloseTo(7.5, within(1e-9));
        assertThat(done.portions(10, 0.15)).isEqualTo(43);
        assertThat(done.portions(10, 0.65)).isEqualTo(10);
        assertThatThrownBy(() -> done.portions(0, 0.15)).isInstanceOf(UnplannableException.class);
    }

    /** Machlik and Draudt 1963 (read): at 58 °C half of the drop in shear took 11 min, the least shear at 60 to 64 °C. */
    @Test
    void tendernessIsGuidedOnlyByWhatIsPublishedNearTheBath() {
        assertThat(Tenderness.at(Species.BEEF, 58).get(0).time()).isEqualTo("11 min");
        assertThat(Tenderness.at(Species.BEEF, 62))
                .anySatisfy(row -> assertThat(row.time()).isEqualTo("30-40 min"));
        assertThat(Tenderness.at(Species.BEEF, 62))
                .allSatisfy(row -> assertThat(row.cited()).contains("(read)"));
        // "50 (2-3 months), 55 (2-6 years), 60 (12-17 years)": ages are not temperatures
        assertThat(Tenderness.at(Species.BEEF, 45))
                .noneMatch(row -> row.temperature().contains("months"));
    }

    @Test
    void everyPublishedFigureHasItsSourceAndItsHonesty() {
        assertThat(PublishedQuality.all()).hasSizeGreaterThan(30).allSatisfy(row -> {
            assertThat(row.source().title()).isNotBlank();
            assertThat(row.cited()).containsAnyOf("(read)", "(derived)", "(memory)", "common practice, no source");
            assertThat(row.text()).isNotBlank();
        });
    }
}
