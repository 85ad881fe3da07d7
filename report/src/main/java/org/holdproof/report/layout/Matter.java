package org.holdproof.report.layout;

import java.util.Comparator;
import java.util.List;
import org.holdproof.core.verdict.Assessment;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;
import org.holdproof.report.ReportContent;

/**
 * A report's content with everything needed to word it.
 *
 * @param clock the kitchen's
 * @param degrees in the authority's scales
 */
record Matter(ReportContent content, KitchenClock clock, Degrees degrees, Figures figures, RulesApplied rules) {
    static Matter of(ReportContent content) {
        Assessment assessment = content.assessment();
        Degrees degrees = new Degrees(assessment.authority().units());
        return new Matter(
                content,
                new KitchenClock(assessment.batch().kitchen().zone()),
                degrees,
                new Figures(degrees),
                new RulesApplied(assessment));
    }

    Assessment assessment() {
        return content.assessment();
    }

    /** The checks from the worst verdict to the best, otherwise in the order a cook happens. */
    List<Check> worstFirst() {
        return assessment().checks().stream()
                .sorted(Comparator.comparing(Check::verdict).reversed())
                .toList();
    }

    /** The checks that are not met, worst first. */
    List<Check> open() {
        return worstFirst().stream()
                .filter(check -> check.verdict() != Verdict.MET)
                .toList();
    }
}
