package org.holdproof.core.assess;

import java.util.Optional;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.verdict.Caution;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;

/**
 * Food meant to be served undercooked to a guest who asks: it is never proven pasteurized, and its authority may ask
 * something else of it. What that is, is told; whether it was done, no log can show.
 */
final class Undercooked {
    static final String ID = "undercooked";

    private Undercooked() {}

    /** Told where the cook is not proven and the authority has a rule for such food. */
    static Optional<Caution> caution(Evidence evidence, Check lethality) {
        return lethality.verdict() == Verdict.MET
                ? Optional.empty()
                : evidence.authority()
                        .undercooked()
                        .map(rule -> new Caution(
                                ID,
                                "Food served undercooked on request is never proven pasteurized, and this record does not"
                                        + " prove it either. What the authority asks of such food instead: "
                                        + rule.requirement() + " ("
                                        + rule.citation().text() + ")."));
    }
}
