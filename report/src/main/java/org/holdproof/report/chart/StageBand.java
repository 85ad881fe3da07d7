package org.holdproof.report.chart;

import java.awt.Color;

/**
 * A stage along the time axis; one that ends as it begins is a moment.
 *
 * @param tint of its band
 */
public record StageBand(String label, long fromMillis, long toMillis, Color tint) {
    /** Whether it is a moment, with no length. */
    public boolean isMoment() {
        return toMillis <= fromMillis;
    }
}
