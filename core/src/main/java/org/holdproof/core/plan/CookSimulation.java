package org.holdproof.core.plan;

import org.holdproof.core.heat.Piece;
import org.holdproof.core.heat.SurfaceCoefficient;

/** Core curves of one planned cook, as planned and with something slower or faster. */
final class CookSimulation {
    /** How far a piece's thickness may be from what was measured, in mm. */
    static final double THICKNESS_MILLIMETRES = 5;

    /** How far a bath may hold below its set point, in °C. */
    static final double BATH_CELSIUS = 0.5;

    private static final double THINNEST = 1;

    private final PlannedCook cook;
    private final HeatFigures heat;

    CookSimulation(PlannedCook cook, HeatFigures heat) {
        this.cook = cook;
        this.heat = heat;
    }

    CoreCurve asPlanned() {
        return curve(0, heat.diffusivity(), 0);
    }

    /** One thing changed, with the smoke step reckoned as planned. */
    CoreCurve curve(double thickerMillimetres, double diffusivity, double bathLowerCelsius) {
        Piece piece = piece(thickerMillimetres);
        double bath = cook.bathCelsius() - bathLowerCelsius;
        if (cook.smoke().isEmpty()) {
            return CoreRise.of(piece, heat.conductivity(), diffusivity, heat.bathCoefficient())
                    .curve(cook.startCelsius(), bath, 0);
        }
        return CoreRise.smoked(
                piece,
                heat.conductivity(),
                diffusivity,
                cook.startCelsius(),
                cook.smoke().get(),
                SurfaceCoefficient.named("air-smoker").typical(),
                bath,
                heat.bathCoefficient());
    }

    /**
     * Everything at its slow end at once. The smoke warms nothing: meat drying in a smoker stays near the wet-bulb
     * temperature, so that dry air's heat must not be counted on.
     */
    CoreCurve slowest() {
        return slowestRise().curve(cook.startCelsius(), cook.bathCelsius() - BATH_CELSIUS, cook.smokeMinutes());
    }

    /** {@link #slowest} before start and bath are put in. */
    CoreRise slowestRise() {
        return CoreRise.of(
                piece(THICKNESS_MILLIMETRES), heat.conductivity(), heat.slowDiffusivity(), heat.slowBathCoefficient());
    }

    /** {@link #asPlanned} without smoke, before start and bath are put in. */
    CoreRise plannedRise() {
        return CoreRise.of(cook.piece(), heat.conductivity(), heat.diffusivity(), heat.bathCoefficient());
    }

    Piece piece(double thickerMillimetres) {
        return Piece.of(Math.max(THINNEST, cook.thicknessMillimetres() + thickerMillimetres), cook.shape());
    }
}
