package org.holdproof.core.verdict;

import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Comparison;

/** What a record proves about one limit, ordered from best to worst. */
public enum Verdict {
    /** Even the worst case meets the limit. */
    MET("MET"),
    /** The limit lies inside the interval, or the record lacks what the rule needs. */
    NOT_PROVEN("NOT PROVEN"),
    /** Even the best case misses the limit. */
    NOT_MET("NOT MET");

    private final String words;

    Verdict(String words) {
        this.words = words;
    }

    /** As printed everywhere: {@code NOT PROVEN}. */
    public String words() {
        return words;
    }

    /** The worse of two. */
    public Verdict and(Verdict other) {
        return compareTo(other) >= 0 ? this : other;
    }

    /** Judges a figure against a limit; figures closer than {@code slack} to the limit are equal to it. */
    public static Verdict of(Bounded figure, Comparison comparison, double limit, double slack) {
        if (comparison.holds(figure.worst(), limit, slack)) {
            return MET;
        }
        return comparison.holds(figure.best(), limit, slack) ? NOT_PROVEN : NOT_MET;
    }
}
