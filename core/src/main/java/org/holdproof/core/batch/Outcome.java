package org.holdproof.core.batch;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.quantity.QuantityKind;

/**
 * How a cook came out in the kitchen's eyes: what it weighed on its way, and how it ate. Nothing is judged by it.
 *
 * @param weights where the pieces were weighed raw and again
 * @param bite where somebody said
 */
public record Outcome(Optional<WeighIns> weights, Optional<Bite> bite) {
    /** Nothing weighed, nothing said. */
    public static final Outcome UNSAID = new Outcome(Optional.empty(), Optional.empty());

    static final String WEIGHTS = "weights";
    static final String TENDERNESS = "tenderness";
    private static final PlausibleRange WEIGHT = new PlausibleRange(QuantityKind.WEIGHT, 0.001, 5000, "1 g to 5000 kg");

    static Outcome of(Section record) throws UnreadableInputException {
        return new Outcome(
                weights(record.optionalSection(WEIGHTS, "raw", "afterSmoke", "outOfBag", "served")),
                record.has(TENDERNESS)
                        ? Optional.of(record.choice(TENDERNESS, Bite.values(), Bite::title))
                        : Optional.empty());
    }

    private static Optional<WeighIns> weights(Optional<Section> weights) throws UnreadableInputException {
        if (weights.isEmpty()) {
            return Optional.empty();
        }
        Section section = weights.get();
        double before = section.quantity("raw", WEIGHT);
        for (String step : List.of("afterSmoke", "outOfBag", "served")) {
            OptionalDouble weight = section.optionalQuantity(step, WEIGHT);
            if (weight.isPresent() && weight.getAsDouble() > before) {
                throw section.required(step, "")
                        .place()
                        .fault(
                                section.required(step, "").words(),
                                "no more than it weighed before that",
                                "A piece gains no weight in a cook: check both figures and their units.");
            }
            before = weight.orElse(before);
        }
        return Optional.of(new WeighIns(
                section.quantity("raw", WEIGHT),
                section.optionalQuantity("afterSmoke", WEIGHT),
                section.optionalQuantity("outOfBag", WEIGHT),
                section.optionalQuantity("served", WEIGHT)));
    }
}
