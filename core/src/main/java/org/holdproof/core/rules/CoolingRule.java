package org.holdproof.core.rules;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.batch.Product;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.Comparison;

/**
 * A cooling schedule: every stage must be kept.
 *
 * @param applies the food it is for, in words
 * @param condition what the product must have for the schedule to be open to it
 * @param correctiveAction what the document (or, where it says so, common advice) has the kitchen do; may be empty
 */
public record CoolingRule(
        String id,
        String title,
        String jurisdiction,
        String applies,
        List<Stage> stages,
        Condition condition,
        String correctiveAction,
        Citation citation)
        implements Rule {

    public CoolingRule {
        stages = List.copyOf(stages);
    }

    /** Whether the schedule is open to a product: what is not declared is not there. */
    public boolean isOpenTo(Product product) {
        return reaches(product.nitritePpm(), condition.nitritePpmAtLeast())
                && reaches(product.brinePercent(), condition.brinePercentAtLeast())
                && (!condition.intactOnly() || product.form() == Product.Form.INTACT);
    }

    private static boolean reaches(OptionalDouble has, OptionalDouble needs) {
        return needs.isEmpty() || has.orElse(0) >= needs.getAsDouble();
    }

    /**
     * One stage.
     *
     * @param number as the document counts them, from 1
     * @param start what starts its clock
     * @param from the upper boundary; empty where the stage starts with an event
     * @param to the lower boundary; empty where the stage ends with an event (chilling starts)
     * @param maxMinutes the limit; empty where the document gives no figure
     * @param comparison at most, or below
     * @param clock how time is counted
     */
    public record Stage(
            int number,
            Start start,
            Optional<Boundary> from,
            Optional<Boundary> to,
            OptionalDouble maxMinutes,
            Comparison comparison,
            Clock clock) {}

    /** What starts a stage's clock. */
    public enum Start {
        /** The core falls through the upper boundary for the first time. */
        FALLS_THROUGH,
        /** The same instant as stage 1: unused time carries over. */
        SAME_AS_FIRST,
        /** The stage before it reached its end: unused time does not carry over. */
        AFTER_PREVIOUS,
        /** The end of cooking. */
        END_OF_COOKING,
        /** Chilling starts. */
        START_OF_CHILLING,
        /** The start of the first heating of a cook in two steps. */
        START_OF_HEATING,
        /** The end of preparation or receipt. */
        END_OF_PREPARATION
    }

    /** How time is counted. */
    public enum Clock {
        /** From the start to the last arrival at the lower boundary. */
        ELAPSED,
        /** All time spent between the two boundaries. */
        DWELL,
        /** No schedule: modelled growth decides. */
        GROWTH,
        /** No figure in law: the operator's own plan decides. */
        NONE
    }

    /**
     * What a product must have for a schedule to be open to it.
     *
     * @param nitritePpmAtLeast ingoing sodium nitrite, in parts per million
     * @param brinePercentAtLeast salt over salt and water, in percent
     * @param intactOnly whether the meat must be intact
     */
    public record Condition(OptionalDouble nitritePpmAtLeast, OptionalDouble brinePercentAtLeast, boolean intactOnly) {
        /** Open to every product. */
        public static final Condition NONE = new Condition(OptionalDouble.empty(), OptionalDouble.empty(), false);
    }
}
