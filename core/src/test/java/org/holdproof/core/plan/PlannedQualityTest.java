package org.holdproof.core.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.holdproof.core.batch.Product.Species;
import org.holdproof.core.heat.Conduction;
import org.holdproof.core.heat.MediumSchedule;
import org.holdproof.core.heat.PieceTemperatures;
import org.holdproof.core.heat.ThermalProperties;
import org.holdproof.core.quality.CookHistory;
import org.holdproof.core.quality.QualityModels;
import org.holdproof.core.quality.QualityOutlook;
import org.holdproof.core.quality.Tenderness.Word;
import org.holdproof.core.quality.WeightLoss;
import org.holdproof.core.quantity.Predicted;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.rules.TrimmedCut;
import org.junit.jupiter.api.Test;

class PlannedQualityTest {
    private static final QualityModels MODELS = QualityModels.builtIn();
    private static final Optional<TrimmedCut> FLAT = MODELS.tables().cut("brisket-flat-trimmed");
    private static final double F_155 = TemperatureUnit.FAHRENHEIT.toCelsius(155);
    private static final double DAY = 24 * 60;

    private static HeatFigures heat(PlannedCook cook) {
        return HeatFigures.published(cook.species(), cook.fatPercent());
    }

    private static PlannedQuality quality(PlannedCook cook, double... stays) {
        return PlannedQuality.of(MODELS, cook, heat(cook), FLAT, stays);
    }

    private static Predicted lost(QualityOutlook outlook) {
        return ((WeightLoss.Modelled) outlook.weight().orElseThrow()).totalPercent();
    }

    /** The sum of two answers is the one answer of a run of its own. */
    @Test
    void anyBathIsReckonedAsIfItWereTheOnlyOne() {
        PlannedCook cook = PlannedCooks.roast(65, F_155);
        HeatFigures heat = heat(cook);
        CookHistory history = quality(cook, 300, DAY).histories(F_155, DAY).likely();
        double[] minutes = new double[history.size()];
        for (int i = 0; i < minutes.length; i++) {
            minutes[i] = history.minute(i);
        }
        PieceTemperatures run = Conduction.of(
                        cook.piece(), ThermalProperties.constant(heat.conductivity(), heat.diffusivity()))
                .run(cook.startCelsius(), MediumSchedule.held(F_155, heat.bathCoefficient()), minutes);

        for (int i = 0; i < minutes.length; i++) {
            assertThat(history.coreCelsius(i)).isCloseTo(run.coreCelsius(i), within(0.06));
            assertThat(history.meanCelsius(i)).isCloseTo(run.meanCelsius(i), within(0.06));
        }
    }

    /** Common practice, no source: 155 °F for about a day, or 18 to 20 h after 8 h of smoke: about there or further. */
    @Test
    void usualTimesOfTheTradeAreNotCalledTooShort() {
        PlannedCook cook = PlannedCooks.roast(75, F_155);
        QualityOutlook day = quality(cook, DAY).outlook(F_155, DAY);
        PlannedCook smoked = PlannedCooks.smoked(cook, 110, 8 * 60);
        QualityOutlook afterSmoke = quality(smoked, 18 * 60).outlook(F_155, 18 * 60);

        assertThat(day.tenderness().orElseThrow().word()).isEqualTo(Word.ABOUT_THERE);
        assertThat(afterSmoke.tenderness().orElseThrow().word()).isGreaterThanOrEqualTo(Word.ABOUT_THERE);
        assertThat(lost(afterSmoke).central()).isGreaterThan(lost(day).central());
        assertThat(afterSmoke.colour()).anyMatch(words -> words.contains("smoke ring"));
        assertThat(day.colour()).noneMatch(words -> words.contains("smoke ring"));
    }

    /** Smoked to 203 °F: model 43, 34 to 52 %; the trade says 40 % or more (common practice, no source). */
    @Test
    void aSmokerAllTheWayLosesMoreThanABag() {
        PlannedCook cook = PlannedCooks.roast(75, F_155);
        SmokerAllTheWay smoker = SmokerAllTheWay.of(
                MODELS,
                cook,
                heat(cook),
                FLAT,
                TemperatureUnit.FAHRENHEIT.toCelsius(250),
                TemperatureUnit.FAHRENHEIT.toCelsius(203));
        QualityOutlook bag = quality(cook, DAY).outlook(F_155, DAY);

        assertThat(lost(smoker.outlook()).central()).isCloseTo(43, within(1.0));
        assertThat(lost(smoker.outlook()).low()).isCloseTo(34, within(1.0));
        assertThat(lost(smoker.outlook()).high()).isCloseTo(52, within(1.0));
        assertThat(smoker.outlook().weight().orElseThrow().practice()).isPresent();
        assertThat(lost(bag).central()).isLessThan(lost(smoker.outlook()).central());
        assertThat(smoker.arrival().likely()).isPresent();
    }

    @Test
    void aSmokerThatCannotGetThereIsRefused() {
        PlannedCook cook = PlannedCooks.roast(75, F_155);
        assertThatThrownBy(() -> SmokerAllTheWay.of(MODELS, cook, heat(cook), FLAT, 90, 95))
                .isInstanceOf(UnplannableException.class)
                .hasMessageContaining("expected hotter air");
    }

    @Test
    void aCutOfAnotherAnimalIsRefused() {
        PlannedCook cook = PlannedCooks.roast(50, 60);
        PlannedCook pork = new PlannedCook(
                Species.PORK,
                cook.form(),
                cook.fatPercent(),
                cook.shape(),
                cook.thicknessMillimetres(),
                cook.startCelsius(),
                cook.smoke(),
                cook.bathCelsius(),
                cook.bathMinutes(),
                cook.authority(),
                cook.chill());
        assertThatThrownBy(() -> PlannedQuality.of(MODELS, pork, heat(pork), FLAT, DAY))
                .isInstanceOf(UnplannableException.class)
                .hasMessageContaining("a cut of beef, not of pork");
    }

    /** Every line is safe from what a plan of its own says; longer and hotter never leaves more or softens less. */
    @Test
    void choicesAreThePlansAndOutlooksOfTheirOwn() {
        PlannedCook cook = PlannedCooks.roast(65, F_155);
        BathChoices choices = BathChoices.of(
                RuleLibrary.builtIn(), cook, heat(cook), FLAT, BathChoices.usualBaths(cook), BathChoices.usualHours());

        assertThat(choices.rows()).hasSize(9);
        for (BathChoices.Row row : choices.rows()) {
            Plan plan = PlannedCooks.plan(cook.with(65, row.bath().celsius()));
            assertThat(row.safeMinutes().getAsDouble()).isCloseTo(((BathPlan) plan).bathMinutes(), within(1e-9));
            List<QualityOutlook> outlooks = row.outlooks();
            for (int i = 1; i < outlooks.size(); i++) {
                assertThat(lost(outlooks.get(i)).central())
                        .isGreaterThanOrEqualTo(lost(outlooks.get(i - 1)).central() - 0.01);
                assertThat(outlooks.get(i).tenderness().orElseThrow().word())
                        .isGreaterThanOrEqualTo(
                                outlooks.get(i - 1).tenderness().orElseThrow().word());
            }
        }
        for (int i = 1; i < choices.rows().size(); i++) {
            assertThat(choices.rows().get(i).safeMinutes().getAsDouble())
                    .isLessThan(choices.rows().get(i - 1).safeMinutes().getAsDouble());
        }
    }
}
