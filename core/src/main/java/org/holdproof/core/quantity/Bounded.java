package org.holdproof.core.quantity;

/**
 * One measured figure as an interval: what it is at worst, what the straight line between the readings gives, and what
 * it is at best. "Worst" is the end that speaks against the cook: the smaller figure where more is better (lethality),
 * the larger where less is better (cooling time).
 *
 * <p>A figure nobody can bound is infinite on that side: an elapsed time whose start was not logged has a worst of
 * positive infinity.
 *
 * @param worst the figure as far against the cook as the record allows
 * @param nominal the figure with temperature linear between readings
 * @param best the figure as far in the cook's favour as the record allows
 */
public record Bounded(double worst, double nominal, double best) {
    /** Two figures closer than this part of their size, or than this itself, are the same figure. */
    private static final double SLACK = 1e-9;

    /**
     * @throws IllegalArgumentException if a value is not a number, or nominal lies outside worst and best by more than
     *     rounding
     */
    public Bounded {
        if (Double.isNaN(worst) || Double.isNaN(nominal) || Double.isNaN(best)) {
            throw new IllegalArgumentException(
                    "a bounded figure needs three numbers: " + worst + ", " + nominal + ", " + best);
        }
        double slack = SLACK * Math.max(1, Double.isInfinite(nominal) ? 1 : Math.abs(nominal));
        if (nominal < Math.min(worst, best) - slack || nominal > Math.max(worst, best) + slack) {
            throw new IllegalArgumentException("nominal " + nominal + " lies outside " + worst + " to " + best);
        }
    }

    /** A figure known exactly: a count, a date, an entry of the record. */
    public static Bounded exactly(double value) {
        return new Bounded(value, value, value);
    }
}
