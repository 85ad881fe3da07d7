package org.holdproof.core.plan;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.holdproof.core.batch.Product.Form;
import org.holdproof.core.batch.Product.Shape;
import org.holdproof.core.batch.Product.Species;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.AuthorityProfile;
import org.holdproof.core.rules.AuthorityProfile.Paper;
import org.holdproof.core.rules.LethalityChoice;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.rules.ThermalDeath;

/** Cooks to plan in tests; invented. */
final class PlannedCooks {
    private PlannedCooks() {}

    static AuthorityProfile authority(String id) {
        return RuleLibrary.builtIn().profile(id).orElseThrow();
    }

    static PlannedCook roast(double thicknessMillimetres, double bathCelsius) {
        return cook(Species.BEEF, Shape.ROAST, thicknessMillimetres, bathCelsius, authority("us-food-code-2022"));
    }

    static PlannedCook cook(
            Species species, Shape shape, double thickness, double bathCelsius, AuthorityProfile authority) {
        return new PlannedCook(
                species,
                Form.INTACT,
                OptionalDouble.empty(),
                Optional.of(shape),
                thickness,
                5,
                Optional.empty(),
                bathCelsius,
                OptionalDouble.empty(),
                authority,
                ChillMedium.ICE_SLUSH);
    }

    static PlannedCook smoked(PlannedCook cook, double airCelsius, double minutes) {
        return smoked(cook, new SmokeStep(airCelsius, minutes));
    }

    static PlannedCook from(PlannedCook cook, double startCelsius) {
        return new PlannedCook(
                cook.species(),
                cook.form(),
                cook.fatPercent(),
                cook.shape(),
                cook.thicknessMillimetres(),
                startCelsius,
                cook.smoke(),
                cook.bathCelsius(),
                cook.bathMinutes(),
                cook.authority(),
                cook.chill());
    }

    static PlannedCook fat(PlannedCook cook, double percent) {
        return said(cook, OptionalDouble.of(percent), cook.shape());
    }

    static PlannedCook withoutFat(PlannedCook cook) {
        return said(cook, OptionalDouble.empty(), cook.shape());
    }

    static PlannedCook withoutShape(PlannedCook cook) {
        return said(cook, cook.fatPercent(), Optional.empty());
    }

    private static PlannedCook said(PlannedCook cook, OptionalDouble fat, Optional<Shape> shape) {
        return new PlannedCook(
                cook.species(),
                cook.form(),
                fat,
                shape,
                cook.thicknessMillimetres(),
                cook.startCelsius(),
                cook.smoke(),
                cook.bathCelsius(),
                cook.bathMinutes(),
                cook.authority(),
                cook.chill());
    }

    static PlannedCook smoked(PlannedCook cook, SmokeStep step) {
        return new PlannedCook(
                cook.species(),
                cook.form(),
                cook.fatPercent(),
                cook.shape(),
                cook.thicknessMillimetres(),
                cook.startCelsius(),
                Optional.of(step),
                cook.bathCelsius(),
                cook.bathMinutes(),
                cook.authority(),
                cook.chill());
    }

    static PlannedCook inBath(PlannedCook cook, double minutes) {
        return new PlannedCook(
                cook.species(),
                cook.form(),
                cook.fatPercent(),
                cook.shape(),
                cook.thicknessMillimetres(),
                cook.startCelsius(),
                cook.smoke(),
                cook.bathCelsius(),
                OptionalDouble.of(minutes),
                cook.authority(),
                cook.chill());
    }

    static PlannedCook chilledIn(PlannedCook cook, ChillMedium medium) {
        return new PlannedCook(
                cook.species(),
                cook.form(),
                cook.fatPercent(),
                cook.shape(),
                cook.thicknessMillimetres(),
                cook.startCelsius(),
                cook.smoke(),
                cook.bathCelsius(),
                cook.bathMinutes(),
                cook.authority(),
                medium);
    }

    /** An authority whose only rule is one organism's reduction. */
    static AuthorityProfile asking(ThermalDeath death) {
        LethalityChoice choice =
                new LethalityChoice(Set.of(), Set.of(), List.of(), Optional.of(death), List.of(), List.of());
        return AuthorityProfile.of("test", "Test authority", List.of(TemperatureUnit.CELSIUS), Paper.A4)
                .lethality(List.of(choice))
                .build();
    }

    static HeatFigures heat(PlannedCook cook) {
        return HeatFigures.published(cook.species(), cook.fatPercent());
    }

    static BathPlan plan(PlannedCook cook) {
        Plan plan = Plan.of(cook, heat(cook), RuleLibrary.builtIn());
        if (plan instanceof BathPlan bath) {
            return bath;
        }
        throw new AssertionError(plan.toString());
    }
}
