package org.holdproof.core.assess;

import java.util.function.ToDoubleFunction;
import org.holdproof.core.quantity.Comparison;
import org.holdproof.core.rules.ExposureRule;
import org.holdproof.core.verdict.Check;

/** All the time a food spent in bands of temperature, judged by a rule with alternatives. */
public final class Exposure {
    private Exposure() {}

    /**
     * Whether one limb of the rule is kept whole.
     *
     * @param minutesIn the food's total minutes in a band
     */
    public static boolean keeps(ExposureRule rule, ToDoubleFunction<ExposureRule.Band> minutesIn) {
        return rule.limbs().stream().anyMatch(limb -> limb.stream()
                .allMatch(band -> Comparison.AT_MOST.holds(
                        minutesIn.applyAsDouble(band), band.maxMinutes(), Check.FIGURE_SLACK)));
    }
}
