package org.holdproof.core.heat;

/**
 * The slowest way a piece's temperature settles in a constant medium: after a while
 * {@code (T − T_medium) / (T_start − T_medium) = C φ(z r/R) exp(−z² α t / R²)}. For any shape factor β, φ solves
 * {@code φ″ + β/s φ′ + φ = 0}, {@code φ(0) = 1}: cosine for a slab, J₀ for a cylinder, sin s / s for a sphere; z is the
 * first root of {@code −z φ′(z) = Bi φ(z)} (Carslaw and Jaeger 1959; Luikov 1968).
 *
 * @param eigenvalue z
 * @param weight C, the factor at the centre
 */
record FirstMode(double eigenvalue, double weight) {
    private static final double WIDEST = Math.PI;
    private static final double SMALLEST_TERM = 1e-17;

    /**
     * The first mode of a shape at a Biot number.
     *
     * @param shapeFactor β, 0 to 2
     * @param biot h R / k, positive, may be infinite
     */
    static FirstMode of(double shapeFactor, double biot) {
        double low = 0;
        double high = WIDEST;
        while (high - low > 1e-15 * high) {
            double middle = (low + high) / 2;
            if (middle == low || middle == high) {
                break;
            }
            Shape at = Shape.at(shapeFactor, middle);
            double missing = Double.isInfinite(biot) ? -at.value : -middle * at.slope - biot * at.value;
            if (missing < 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        double z = (low + high) / 2;
        Shape at = Shape.at(shapeFactor, z);
        double norm =
                (z * z * (at.value * at.value + at.slope * at.slope) + (shapeFactor - 1) * z * at.value * at.slope) / 2;
        return new FirstMode(z, -z * at.slope / norm);
    }

    /** φ and its derivative, by the power series in s², which alternates and falls fast up to s = π. */
    private static final class Shape {
        private final double value;
        private final double slope;

        private Shape(double value, double slope) {
            this.value = value;
            this.slope = slope;
        }

        static Shape at(double shapeFactor, double s) {
            double value = 1;
            double slope = 0;
            double term = 1;
            for (int m = 1; Math.abs(term) > SMALLEST_TERM; m++) {
                term *= -s * s / (2.0 * m * (2 * m - 1 + shapeFactor));
                value += term;
                slope += 2 * m * term;
            }
            return new Shape(value, s == 0 ? 0 : slope / s);
        }
    }
}
