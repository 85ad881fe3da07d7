package org.holdproof.core.rules;

import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.Comparison;

/**
 * A limit on holding: a temperature kept to, or a time that may be spent beyond it.
 *
 * @param kind what it limits
 * @param limit the temperature; empty where the document gives none
 * @param from for a band, its other end: come-up counts from this temperature to the limit
 * @param comparison how the food's temperature is compared with the limit
 * @param maxMinutes the longest time, where the rule has one
 * @param timeComparison how the time is compared with it
 */
public record HoldingRule(
        String id,
        String title,
        String jurisdiction,
        String applies,
        Kind kind,
        Optional<Boundary> limit,
        Optional<Boundary> from,
        Comparison comparison,
        OptionalDouble maxMinutes,
        Comparison timeComparison,
        String correctiveAction,
        Citation citation)
        implements Rule {

    /** What a holding rule limits. */
    public enum Kind {
        HOT_MINIMUM,
        HOT_TOLERANCE,
        COLD_MAXIMUM,
        COLD_TOLERANCE,
        COLD_LIFE,
        COME_UP,
        LOW_COOK,
        CUMULATIVE
    }
}
