package org.holdproof.core.rules;

import java.util.List;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.Comparison;

/**
 * What kills the parasites of fish that is eaten raw or lightly cooked: any one of its ways will do, throughout the
 * piece.
 */
public record ParasiteRule(
        String id, String title, String jurisdiction, String applies, List<Way> ways, Citation citation)
        implements Rule {

    public ParasiteRule {
        ways = List.copyOf(ways);
    }

    /**
     * Freezing to a temperature, or heating to one, for a time.
     *
     * @param at the temperature every part of the piece must have
     * @param comparison at most, or below: freezing; at least, or above: heating
     * @param minutes for at least this long
     */
    public record Way(Boundary at, Comparison comparison, double minutes) {
        public boolean isFreezing() {
            return !comparison.isFloor();
        }
    }
}
