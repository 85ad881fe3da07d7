package org.holdproof.core.verdict;

import java.util.List;
import java.util.Optional;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.rules.AuthorityProfile;

/**
 * The judgement of one batch.
 *
 * @param verdict the worst of its checks
 * @param batch the record it was judged on
 * @param authority the profile it was judged by
 * @param tablesEdition which edition of the reference tables was used
 * @param span the log from its first to its last row
 * @param checks in the order a cook happens
 * @param cautions what to know besides
 * @param lethality cumulative log10 reduction at the governing core probe, where there are kinetics to show it with
 * @param integrated integrated lethality, shown as margin
 * @param fastestCore the fastest rise a core of the declared thickness can make, where a probe's readings exceed it
 * @param record what the log is worth as a record
 * @param notJudged the questions the batch was not judged by, and why
 */
public record Assessment(
        Verdict verdict,
        BatchRecord batch,
        AuthorityProfile authority,
        String tablesEdition,
        Span span,
        List<Check> checks,
        List<Caution> cautions,
        Optional<Curve> lethality,
        List<LethalityMargin> integrated,
        Optional<Curve> fastestCore,
        RecordFacts record,
        List<NotJudged> notJudged) {

    /** An assessment that says nothing of what was not judged. */
    public Assessment(
            Verdict verdict,
            BatchRecord batch,
            AuthorityProfile authority,
            String tablesEdition,
            Span span,
            List<Check> checks,
            List<Caution> cautions,
            Optional<Curve> lethality,
            List<LethalityMargin> integrated,
            Optional<Curve> fastestCore,
            RecordFacts record) {
        this(
                verdict,
                batch,
                authority,
                tablesEdition,
                span,
                checks,
                cautions,
                lethality,
                integrated,
                fastestCore,
                record,
                List.of());
    }

    public Assessment {
        checks = List.copyOf(checks);
        cautions = List.copyOf(cautions);
        integrated = List.copyOf(integrated);
        notJudged = List.copyOf(notJudged);
    }

    /** The check with this id. */
    public Optional<Check> check(String id) {
        return checks.stream().filter(check -> check.id().equals(id)).findFirst();
    }
}
