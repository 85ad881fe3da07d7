package org.holdproof.core.quantity;

/**
 * A figure that is foretold, not measured: what is likely in the middle of what may be. Never part of a verdict.
 *
 * @param low the low end
 * @param central the likeliest, from {@code low} to {@code high}
 * @param high the high end
 */
public record Predicted(double low, double central, double high) {
    /** Ends closer together than this part of their size, or than this itself, are the same. */
    private static final double SLACK = 1e-9;

    /** @throws IllegalArgumentException if a value is not a finite number, or they are out of order by more than rounding */
    public Predicted {
        double slack = SLACK * Math.max(1, Math.abs(central));
        if (!Double.isFinite(low)
                || !Double.isFinite(high)
                || !(low <= central + slack)
                || !(central <= high + slack)) {
            throw new IllegalArgumentException("out of order or not finite: " + low + ", " + central + ", " + high);
        }
    }

    /** A figure known exactly. */
    public static Predicted exactly(double value) {
        return new Predicted(value, value, value);
    }

    /** The two ends, the likeliest midway. */
    public static Predicted between(double low, double high) {
        return new Predicted(low, (low + high) / 2, high);
    }

    /** From the low end to the high end. */
    public double width() {
        return high - low;
    }

    public boolean contains(double value) {
        return value >= low && value <= high;
    }

    /** The sum of two figures that err independently: the distances of the ends from the middle add in quadrature. */
    public Predicted plusIndependent(Predicted other) {
        double sum = central + other.central;
        return new Predicted(
                sum - Math.hypot(central - low, other.central - other.low),
                sum,
                sum + Math.hypot(high - central, other.high - other.central));
    }

    /** Each end times the same end of another; for figures that are not negative. */
    public Predicted times(Predicted other) {
        return new Predicted(low * other.low, central * other.central, high * other.high);
    }

    /**
     * Every end times a factor.
     *
     * @param factor not negative
     */
    public Predicted times(double factor) {
        return new Predicted(low * factor, central * factor, high * factor);
    }
}
