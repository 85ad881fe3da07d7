package org.holdproof.report;

import java.util.List;
import java.util.Optional;
import org.holdproof.core.verdict.Assessment;
import org.holdproof.report.recheck.RecheckReport;

/**
 * What a report turned out to be.
 *
 * @param outcome in one word
 * @param seal what was found of the seal and the files inside
 * @param figures what came of reckoning every figure again, and of judging by the published rules
 */
public record Rechecked(Outcome outcome, RecheckReport seal, Recomputation figures) {

    /** A report in one word. Each leaves open what those after it found. */
    public enum Outcome {
        /** Sealed, unchanged, every figure as printed, judged by the published rules. */
        WHOLE,
        /** Sealed and unchanged, but by rules that are not the published ones: a site's own, or altered ones. */
        OTHER_RULES,
        /** Sealed and unchanged, but by another key than the one expected. */
        ANOTHER_SIGNER,
        /** Sealed and unchanged, but a figure comes out otherwise, or cannot be reckoned again. */
        FIGURES_DIFFER,
        /** Never sealed: nothing shows that it is as it was written. */
        UNSEALED,
        /** Not as it was sealed: nothing in it proves anything. */
        BROKEN
    }

    static Outcome outcome(RecheckReport seal, Recomputation figures) {
        List<RecheckReport.Kind> wrong =
                seal.findings().stream().map(RecheckReport.Finding::kind).toList();
        if (wrong.contains(RecheckReport.Kind.NO_SEAL)) {
            return Outcome.UNSEALED;
        }
        if (wrong.stream().anyMatch(kind -> kind != RecheckReport.Kind.OTHER_SIGNER)) {
            return Outcome.BROKEN;
        }
        if (!figures.differences().isEmpty()) {
            return Outcome.FIGURES_DIFFER;
        }
        if (!wrong.isEmpty()) {
            return Outcome.ANOTHER_SIGNER;
        }
        return figures.rules().isPresent() && !figures.rules().get().isPublished()
                ? Outcome.OTHER_RULES
                : Outcome.WHOLE;
    }

    /** The cook judged again by the rules inside. */
    public Optional<Assessment> again() {
        return figures.again();
    }
}
