package org.holdproof.core.rules;

import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.quantity.Comparison;

/**
 * A requirement that is words first: records to keep, packaging, accuracy of thermometers, time as a control.
 *
 * @param topic what it is about
 * @param requirement what it asks, in our words
 * @param comparison how a figure is compared with the value, where the rule says
 * @param value its figure, where it has one
 * @param tolerance the figure's tolerance, where it has one
 * @param unit the unit of both, or empty
 */
public record WrittenRule(
        String id,
        String group,
        String jurisdiction,
        String applies,
        String topic,
        String requirement,
        Optional<Comparison> comparison,
        OptionalDouble value,
        OptionalDouble tolerance,
        String unit,
        Citation citation)
        implements Rule {
    @Override
    public String title() {
        return topic;
    }
}
