package org.holdproof.core.batch;

import org.holdproof.core.quantity.QuantityKind;

/**
 * Where a figure of a batch record must lie to be believed; outside it a unit or a decimal point has slipped.
 *
 * @param low the lowest, in the kind's own unit
 * @param high the highest
 * @param words both with their unit, as in {@code 1 mm to 500 mm}
 */
record PlausibleRange(QuantityKind kind, double low, double high, String words) {
    /** Covers the rounding of a conversion. */
    private static final double SLACK = 1e-9;

    boolean holds(double figure) {
        return figure >= low - SLACK && figure <= high + SLACK;
    }
}
