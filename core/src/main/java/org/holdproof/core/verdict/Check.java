package org.holdproof.core.verdict;

import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Comparison;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.rules.Citation;

/**
 * One question put to the record, and its answer.
 *
 * @param id stable id, such as {@code lethality} or {@code cooling.2}
 * @param title the question in a few words, such as {@code Core pasteurized}
 * @param rule what was required, in words with figures, in the rule's own unit
 * @param citation the document and section it stands in; empty for a check of the record itself
 * @param measured what the record shows; empty where it shows nothing that can be measured
 * @param limit the limit, in {@code unit}
 * @param comparison how the two compare
 * @param unit the unit of the figures and the limit, such as {@code min}; empty with no figures
 * @param why the verdict's reason in a sentence or two
 * @param next what to do next; empty when met
 * @param channel the probe that governed; empty where none did
 * @param span the part of the record that decided
 */
public record Check(
        String id,
        String title,
        String rule,
        Optional<Citation> citation,
        Verdict verdict,
        Optional<Bounded> measured,
        OptionalDouble limit,
        Comparison comparison,
        String unit,
        String why,
        String next,
        String channel,
        Optional<Span> span) {

    /**
     * The margin of the worst case, in {@code unit}: positive when the limit is kept with room; empty without figures
     * or where the worst case has no bound.
     */
    public OptionalDouble margin() {
        if (measured.isEmpty()
                || limit.isEmpty()
                || Double.isInfinite(measured.get().worst())) {
            return OptionalDouble.empty();
        }
        double beyond = measured.get().worst() - limit.getAsDouble();
        return OptionalDouble.of(comparison.isFloor() ? beyond : -beyond);
    }

    /** Judges a figure against a limit. */
    public static Verdict judge(Bounded figure, Comparison comparison, double limit) {
        return Verdict.of(figure, comparison, limit, FIGURE_SLACK);
    }

    /** Figures (minutes, log10) closer than this are equal: far below the millisecond a log's clock can show. */
    public static final double FIGURE_SLACK = 1e-6;
}
