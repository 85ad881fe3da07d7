package org.holdproof.core.plan;

import org.holdproof.core.heat.Conduction;
import org.holdproof.core.heat.MediumSchedule;
import org.holdproof.core.heat.Piece;
import org.holdproof.core.heat.PieceTemperatures;
import org.holdproof.core.heat.ThermalProperties;

/**
 * How a core answers a medium: its share of the way from start to medium, over time. With properties that do not change
 * with temperature it is the same for every start and every medium, so that one run serves a whole row of a table.
 */
final class CoreRise {
    /** Points of a run; they stand the closer the steeper the curve. */
    private static final int POINTS = 240;

    /** 0.02 °C over 100 °C. */
    private static final double TOLERANCE = 2e-4;

    private static final double TIME_CONSTANTS = 12;

    /** The first root of the slab with an unlimited coefficient, squared: no shape settles more slowly. */
    private static final double SLOWEST_ROOT_SQUARED = Math.PI * Math.PI / 4;

    private final double[] minutes;
    private final double[] share;

    private CoreRise(double[] minutes, double[] share) {
        this.minutes = minutes;
        this.share = share;
    }

    static CoreRise of(Piece piece, double conductivity, double diffusivity, double surfaceCoefficient) {
        double[] minutes = points(settlingMinutes(piece, conductivity, diffusivity, surfaceCoefficient), POINTS);
        double[] share = Conduction.of(piece, ThermalProperties.constant(conductivity, diffusivity))
                .within(TOLERANCE)
                .runAt(0, 0, MediumSchedule.held(1, surfaceCoefficient), minutes);
        return new CoreRise(minutes, share);
    }

    /**
     * The core's curve.
     *
     * @param afterMinutes how long it lies at its start temperature first
     */
    CoreCurve curve(double startCelsius, double mediumCelsius, double afterMinutes) {
        int lying = afterMinutes > 0 ? 1 : 0;
        double[] at = new double[minutes.length + lying];
        double[] celsius = new double[minutes.length + lying];
        celsius[0] = startCelsius;
        for (int i = 0; i < minutes.length; i++) {
            at[i + lying] = afterMinutes + minutes[i];
            celsius[i + lying] = startCelsius + (mediumCelsius - startCelsius) * Math.max(0, share[i]);
        }
        return new CoreCurve(at, celsius, mediumCelsius);
    }

    /** The core through an earlier step, then in a bath. */
    static CoreCurve after(
            PieceTemperatures earlier,
            Piece piece,
            ThermalProperties food,
            double bathCelsius,
            double bathCoefficient) {
        double conductivity = food.conductivity(bathCelsius);
        double diffusivity = food.diffusivity(bathCelsius);
        double[] bathing = points(settlingMinutes(piece, conductivity, diffusivity, bathCoefficient), POINTS);
        double[] bathed = Conduction.of(piece, food)
                .runAt(0, earlier.end(), MediumSchedule.held(bathCelsius, bathCoefficient), bathing);
        int before = earlier.size();
        double[] minutes = new double[before + bathing.length - 1];
        double[] celsius = new double[minutes.length];
        for (int i = 0; i < before; i++) {
            minutes[i] = earlier.minute(i);
            celsius[i] = earlier.coreCelsius(i);
        }
        for (int i = 1; i < bathing.length; i++) {
            minutes[before - 1 + i] = minutes[before - 1] + bathing[i];
            celsius[before - 1 + i] = bathed[i];
        }
        return new CoreCurve(minutes, celsius, bathCelsius);
    }

    /** Moments of a step before the bath, closest at its start. */
    static double[] points(double until) {
        return points(until, POINTS / 2);
    }

    private static double[] points(double until, int count) {
        double[] minutes = new double[count + 1];
        for (int i = 0; i <= count; i++) {
            double share = (double) i / count;
            minutes[i] = until * share * share;
        }
        return minutes;
    }

    /** When a core is all but at its medium: the slowest mode is bounded by skin and inside one after the other. */
    private static double settlingMinutes(
            Piece piece, double conductivity, double diffusivity, double surfaceCoefficient) {
        double half = piece.halfThicknessMetres();
        double biot = surfaceCoefficient * half / conductivity;
        double resistances = 1 / (biot * (1 + piece.shapeFactor())) + 1 / SLOWEST_ROOT_SQUARED;
        return TIME_CONSTANTS * half * half / diffusivity * resistances / 60;
    }
}
