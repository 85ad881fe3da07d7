package org.holdproof.core.plan;

import org.holdproof.core.heat.Conduction;
import org.holdproof.core.heat.Piece;
import org.holdproof.core.heat.PieceState;
import org.holdproof.core.heat.PieceTemperatures;
import org.holdproof.core.heat.ThermalProperties;
import org.holdproof.core.heat.smoke.SmokeForecast;
import org.holdproof.core.heat.smoke.SmokerSurface;

/** Core curves of one planned cook, as planned and with something slower or faster. */
final class CookSimulation {
    /** How far a piece's thickness may be from what was measured, in mm. */
    static final double THICKNESS_MILLIMETRES = 5;

    /** How far a bath may hold below its set point, in °C. */
    static final double BATH_CELSIUS = 0.5;

    /** How far a smoker's air may be below what is planned, in °C; a convention of this program. */
    static final double SMOKER_CELSIUS = 10;

    /** The bound of a smoke allows for a piece thicker by this part, where that is more than the millimetres. */
    private static final double SMOKED_THICKER = 1.1;

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

    /** One thing changed, with the smoke step at its nominal pace. */
    CoreCurve curve(double thickerMillimetres, double diffusivity, double bathLowerCelsius) {
        return curve(piece(thickerMillimetres), diffusivity, bathLowerCelsius, 0);
    }

    /** The smoke at another pace, all else as planned. */
    CoreCurve smokedAt(double pace) {
        return curve(cook.piece(), heat.diffusivity(), 0, pace);
    }

    /**
     * A smoke is reckoned with the food its surfaces were settled with and the shape the word most often means, unless the
     * cook's own log says better; the bath with its own figures, behind the published tables.
     */
    private CoreCurve curve(Piece piece, double diffusivity, double bathLowerCelsius, double pace) {
        double bath = cook.bathCelsius() - bathLowerCelsius;
        if (cook.smoke().isEmpty()) {
            return CoreRise.of(piece, heat.conductivity(), diffusivity, heat.bathCoefficient())
                    .curve(cook.startCelsius(), bath, 0);
        }
        SmokeStep step = cook.smoke().get();
        PieceTemperatures smoked = Conduction.of(inSmoke(piece), smokedFood(diffusivity))
                .run(cook.startCelsius(), step.smoke(step.minutes()).at(pace), CoreRise.points(step.minutes()));
        return CoreRise.after(smoked, piece, food(diffusivity), bath, heat.bathCoefficient());
    }

    /**
     * Everything at its slow end at once. In the smoke the surface stays wet for ever, which is as cold as a piece can be;
     * that holds for a bare piece alone, thawed, with the air measured beside it, and not sprayed or basted.
     */
    CoreCurve slowest() {
        double bath = cook.bathCelsius() - BATH_CELSIUS;
        if (cook.smoke().isEmpty()) {
            return slowestRise().curve(cook.startCelsius(), bath, 0);
        }
        ThermalProperties food = food(heat.slowDiffusivity());
        return CoreRise.after(slowestSmoke(), slowestPiece(), food, bath, heat.slowBathCoefficient());
    }

    private PieceTemperatures slowestSmoke() {
        SmokeStep step = cook.smoke().orElseThrow();
        return SmokeForecast.alwaysWet(
                slowestPiece(),
                food(heat.slowDiffusivity()),
                PieceState.uniform(cook.startCelsius()),
                step.smoke(step.minutes()),
                SMOKER_CELSIUS);
    }

    /** What the smoke leaves. */
    SmokedCore smoked() {
        PieceTemperatures slowest = slowestSmoke();
        return SmokedCore.of(
                cook.smoke().orElseThrow(),
                inSmoke(cook.piece()),
                smokedFood(heat.diffusivity()),
                cook.startCelsius(),
                slowest.end().coreCelsius());
    }

    /** {@link #slowest} without smoke, before start and bath are put in. */
    CoreRise slowestRise() {
        return CoreRise.of(slowestPiece(), heat.conductivity(), heat.slowDiffusivity(), heat.slowBathCoefficient());
    }

    /** {@link #asPlanned} without smoke, before start and bath are put in. */
    CoreRise plannedRise() {
        return CoreRise.of(cook.piece(), heat.conductivity(), heat.diffusivity(), heat.bathCoefficient());
    }

    Piece piece(double thickerMillimetres) {
        return Piece.of(Math.max(THINNEST, cook.thicknessMillimetres() + thickerMillimetres), cook.likelyShape());
    }

    /** As thick and as flat as what was said allows. */
    Piece slowestPiece() {
        double thicker = cook.thicknessMillimetres() + THICKNESS_MILLIMETRES;
        double thickest =
                cook.smoke().isPresent() ? Math.max(thicker, SMOKED_THICKER * cook.thicknessMillimetres()) : thicker;
        return Piece.of(thickest, cook.slowestShape());
    }

    private Piece inSmoke(Piece piece) {
        return heat.fitted() ? piece : piece.likely();
    }

    private ThermalProperties smokedFood(double diffusivity) {
        return heat.fitted() || diffusivity != heat.diffusivity() ? food(diffusivity) : SmokerSurface.food();
    }

    private ThermalProperties food(double diffusivity) {
        return ThermalProperties.constant(heat.conductivity(), diffusivity);
    }
}
