package org.holdproof.core.rules;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.Comparison;

/**
 * What food is reheated to: any one of its targets will do, or any row of its table.
 *
 * @param targets the leading one first; empty: the document sets none, or the table serves
 * @param table the cooking table whose rows serve as targets, where the document says so
 * @param from the temperature the clock starts at
 * @param maxMinutes the longest time from there to the target
 * @param conditions what else it asks, in words; may be empty
 */
public record ReheatingRule(
        String id,
        String title,
        String jurisdiction,
        String applies,
        List<Target> targets,
        Optional<LethalityTable> table,
        Optional<Boundary> from,
        OptionalDouble maxMinutes,
        Comparison timeComparison,
        String conditions,
        String correctiveAction,
        Citation citation)
        implements Rule {

    public ReheatingRule {
        targets = List.copyOf(targets);
    }

    /** Whether food reheated under it may be served at any temperature. */
    public boolean asksNoTemperature() {
        return targets.isEmpty() && table.isEmpty();
    }

    /** The leading target's temperature. */
    public Optional<Boundary> target() {
        return targets.stream().findFirst().map(Target::at);
    }

    /** How food is compared with the leading target. */
    public Comparison comparison() {
        return targets.stream().findFirst().map(Target::comparison).orElse(Comparison.AT_LEAST);
    }

    /** How long food must stay at the leading target, in seconds. */
    public double holdSeconds() {
        return targets.stream().mapToDouble(Target::holdSeconds).findFirst().orElse(0);
    }

    /**
     * One temperature and the time it is held for.
     *
     * @param holdSeconds how long the food must stay there, in seconds; 0: reaching it is enough
     */
    public record Target(Boundary at, Comparison comparison, double holdSeconds) {}
}
