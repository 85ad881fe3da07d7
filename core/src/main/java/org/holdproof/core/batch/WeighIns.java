package org.holdproof.core.batch;

import java.util.OptionalDouble;

/**
 * What the pieces weighed together on their way through a cook, in kilograms: weighed the same way each time, as cooling
 * in ice water before weighing hides some of the loss.
 *
 * @param raw as they went in, trimmed
 * @param afterSmoke out of the smoker
 * @param outOfBag out of the bag, its juice poured off
 * @param served as they went to the table
 */
public record WeighIns(double raw, OptionalDouble afterSmoke, OptionalDouble outOfBag, OptionalDouble served) {
    /** @throws IllegalArgumentException if a weight is not positive, or more than one taken before it */
    public WeighIns {
        double before = raw;
        if (!(raw > 0) || !Double.isFinite(raw)) {
            throw new IllegalArgumentException("a raw weight of " + raw + " kg");
        }
        for (OptionalDouble weight : new OptionalDouble[] {afterSmoke, outOfBag, served}) {
            if (weight.isPresent()) {
                if (!(weight.getAsDouble() > 0) || !(weight.getAsDouble() <= before)) {
                    throw new IllegalArgumentException(
                            weight.getAsDouble() + " kg after " + before + " kg: a piece gains no weight in a cook");
                }
                before = weight.getAsDouble();
            }
        }
    }
}
