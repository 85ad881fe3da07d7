package org.holdproof.core.heat;

/**
 * A piece at one moment: its temperatures from the centre to the surface, and the water its surface has lost. What one
 * step of a cook leaves, the next can begin from.
 */
public final class PieceState {
    private final double[] celsius;
    private final double waterLost;

    /** @param celsius at equally spaced places, the first the centre, the last the surface; or one, throughout */
    PieceState(double[] celsius, double waterLost) {
        this.celsius = celsius.clone();
        this.waterLost = waterLost;
    }

    /**
     * One temperature throughout, nothing lost.
     *
     * @throws IllegalArgumentException if it is not finite
     */
    public static PieceState uniform(double celsius) {
        if (!Double.isFinite(celsius)) {
            throw new IllegalArgumentException("the start temperature is " + celsius);
        }
        return new PieceState(new double[] {celsius}, 0);
    }

    /**
     * The temperature at a place, in °C.
     *
     * @param fraction 0 the centre, 1 the surface
     */
    public double celsius(double fraction) {
        if (!(fraction >= 0) || !(fraction <= 1)) {
            throw new IllegalArgumentException(
                    "a place in the piece lies from 0 (centre) to 1 (surface), not " + fraction);
        }
        return at(celsius, fraction);
    }

    public double coreCelsius() {
        return celsius[0];
    }

    public double surfaceCelsius() {
        return celsius[celsius.length - 1];
    }

    /** Water lost from a square metre of surface, in kg/m²; below 0 where it has condensed. */
    public double waterLost() {
        return waterLost;
    }

    /** Between places by the cubic through the four nearest; the profile mirrors itself at the centre. */
    static double at(double[] celsius, double position) {
        int cells = celsius.length - 1;
        if (cells < 3) {
            return celsius[(int) Math.round(position * cells)];
        }
        double place = position * cells;
        int below = (int) Math.min(Math.floor(place), cells - 1);
        double share = place - below;
        if (share == 0) {
            return celsius[below];
        }
        if (share == 1) {
            return celsius[below + 1];
        }
        int first = Math.min(below - 1, cells - 3);
        double x = place - first;
        double value = 0;
        for (int i = 0; i < 4; i++) {
            double weight = 1;
            for (int j = 0; j < 4; j++) {
                if (j != i) {
                    weight *= (x - j) / (i - j);
                }
            }
            value += weight * celsius[Math.abs(first + i)];
        }
        return value;
    }
}
