package org.holdproof.core.heat;

import org.holdproof.core.batch.Product.Shape;

/**
 * One piece as conduction sees it: how thick, and how many ways heat can come in. The shape factor is the β of
 * {@code dT/dt = α (T″ + β/r T′)}: 0 a slab wide against its thickness, 1 a long cylinder, 2 a sphere; bodies in between
 * lie in between (0.28 a block of sides 2:3:5, 0.70 a squat cylinder, 1.25 a cube; D. Baldwin, Sous vide cooking: a
 * review, 2012, from memory; confirmed by reproducing its tables).
 *
 * @param thicknessMillimetres across the thinnest way through the middle; the diameter of a cylinder or sphere
 * @param shapeFactor β reckoned with, 0 to 2
 * @param fastestShapeFactor the highest β the same description may mean, from {@code shapeFactor} to 2
 */
public record Piece(double thicknessMillimetres, double shapeFactor, double fastestShapeFactor) {
    /** Of raw meat, in kg/m³; from memory. */
    private static final double RAW_DENSITY = 1050;

    /** @throws IllegalArgumentException if the thickness is not positive or a shape factor lies outside its range */
    public Piece {
        if (!(thicknessMillimetres > 0) || !Double.isFinite(thicknessMillimetres)) {
            throw new IllegalArgumentException("a thickness of " + thicknessMillimetres + " mm is not a piece's");
        }
        if (!(shapeFactor >= 0) || !(shapeFactor <= fastestShapeFactor) || !(fastestShapeFactor <= 2)) {
            throw new IllegalArgumentException("shape factors run from 0 (slab) to 2 (sphere), the fastest last: "
                    + shapeFactor + ", " + fastestShapeFactor);
        }
    }

    /** A body whose shape factor is known. */
    public static Piece of(double thicknessMillimetres, double shapeFactor) {
        return new Piece(thicknessMillimetres, shapeFactor, shapeFactor);
    }

    /**
     * A piece as a cook describes it. The factor reckoned with is the slow end of what the word covers, so that a
     * planned time errs on the long side; a "cylinder" is seldom long and a "sphere" seldom round.
     */
    public static Piece of(double thicknessMillimetres, Shape shape) {
        return switch (shape) {
            case SLAB -> new Piece(thicknessMillimetres, 0, 0.28);
            case ROAST -> new Piece(thicknessMillimetres, 0.28, 1);
            case CYLINDER -> new Piece(thicknessMillimetres, 0.70, 1.25);
            case SPHERE -> new Piece(thicknessMillimetres, 1.25, 2);
        };
    }

    /**
     * The same piece with the shape the word most often means: a third of the way from its slow to its fast end. A whole
     * brisket called a roast comes out near the 0.5 it was reckoned with. For estimates, not for covering times.
     */
    public Piece likely() {
        return of(thicknessMillimetres, shapeFactor + (fastestShapeFactor - shapeFactor) / 3);
    }

    /** Half the thickness: the way heat has to go, in metres. */
    public double halfThicknessMetres() {
        return thicknessMillimetres / 2000;
    }

    /** Raw mass behind a square metre of surface, in kg/m²: {@code ρ R / (β + 1)}. */
    public double massPerArea() {
        return RAW_DENSITY * halfThicknessMetres() / (shapeFactor + 1);
    }
}
