package org.holdproof.core.rules;

import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.Comparison;

/**
 * A reheating target.
 *
 * @param target the temperature to reach; empty where the document sets none
 * @param comparison how the food is compared with it
 * @param holdSeconds how long it must stay there
 * @param from the temperature the clock starts at
 * @param maxMinutes the longest time from there to the target
 */
public record ReheatingRule(
        String id,
        String title,
        String jurisdiction,
        String applies,
        Optional<Boundary> target,
        Comparison comparison,
        double holdSeconds,
        Optional<Boundary> from,
        OptionalDouble maxMinutes,
        Comparison timeComparison,
        String conditions,
        String correctiveAction,
        Citation citation) {}
