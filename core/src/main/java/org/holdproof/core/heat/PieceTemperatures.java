package org.holdproof.core.heat;

import java.util.OptionalDouble;

/** What a run gave: core, surface and mean temperature of the piece at the asked minutes, and the water it has lost. */
public final class PieceTemperatures {
    private final double[] minutes;
    private final double[] coreCelsius;
    private final double[] surfaceCelsius;
    private final double[] meanCelsius;
    private final double[] waterLost;
    private final double massPerArea;
    private final PieceState end;
    private final double errorCelsius;

    PieceTemperatures(
            double[] minutes,
            double[] coreCelsius,
            double[] surfaceCelsius,
            double[] meanCelsius,
            double[] waterLost,
            double massPerArea,
            PieceState end,
            double errorCelsius) {
        this.minutes = minutes;
        this.coreCelsius = coreCelsius;
        this.surfaceCelsius = surfaceCelsius;
        this.meanCelsius = meanCelsius;
        this.waterLost = waterLost;
        this.massPerArea = massPerArea;
        this.end = end;
        this.errorCelsius = errorCelsius;
    }

    public int size() {
        return minutes.length;
    }

    /** The asked minute of this index. */
    public double minute(int i) {
        return minutes[i];
    }

    /** At the centre, in °C. */
    public double coreCelsius(int i) {
        return coreCelsius[i];
    }

    /** At the surface, in °C. */
    public double surfaceCelsius(int i) {
        return surfaceCelsius[i];
    }

    /** Mean over the volume, in °C. */
    public double meanCelsius(int i) {
        return meanCelsius[i];
    }

    /** Water lost through a square metre of surface since the piece was raw, in kg/m²; below 0 where it has condensed. */
    public double waterLost(int i) {
        return waterLost[i];
    }

    /** The same as a part of the raw mass, 0 to 1. */
    public double evaporatedShare(int i) {
        return waterLost[i] / massPerArea;
    }

    /** The whole piece at the last asked minute. */
    public PieceState end() {
        return end;
    }

    /** The core at every asked minute, in °C. */
    public double[] coreCelsius() {
        return coreCelsius.clone();
    }

    /**
     * The largest error of any of these temperatures against the exact solution of the same model, as estimated, in °C.
     * Above the tolerance asked for only where the finest grid did not reach it (a surface seconds after a plunge).
     */
    public double errorCelsius() {
        return errorCelsius;
    }

    /**
     * When the core first comes to a temperature from whichever side it starts, straight between the asked minutes; empty
     * if it does not.
     */
    public OptionalDouble minuteCoreReaches(double celsius) {
        if (minutes.length > 0 && coreCelsius[0] == celsius) {
            return OptionalDouble.of(minutes[0]);
        }
        for (int i = 1; i < minutes.length; i++) {
            double before = coreCelsius[i - 1] - celsius;
            double after = coreCelsius[i] - celsius;
            if (before * after <= 0 && before != after) {
                return OptionalDouble.of(minutes[i - 1] + (minutes[i] - minutes[i - 1]) * before / (before - after));
            }
        }
        return OptionalDouble.empty();
    }
}
