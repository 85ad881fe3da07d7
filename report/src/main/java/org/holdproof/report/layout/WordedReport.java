package org.holdproof.report.layout;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.rules.Citation;
import org.holdproof.core.verdict.Assessment;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;

/**
 * A report's content with everything needed to word it.
 *
 * @param clock the kitchen's
 * @param degrees in the authority's scales
 */
record WordedReport(ReportContent content, KitchenClock clock, Degrees degrees, Figures figures, RulesApplied rules) {
    static WordedReport of(ReportContent content) {
        Assessment assessment = content.assessment();
        Degrees degrees = new Degrees(assessment.authority().units());
        return new WordedReport(
                content,
                new KitchenClock(assessment.batch().kitchen().zone()),
                degrees,
                new Figures(degrees),
                new RulesApplied(assessment));
    }

    Assessment assessment() {
        return content.assessment();
    }

    /** Where a check's rule stands: an altered rule never carries the name of an authority. */
    Optional<String> place(Check check) {
        Optional<String> replaced =
                content.siteLimits().map(site -> site.publishedRules().get(check.id()));
        return replaced.isPresent()
                ? replaced.map(rule -> "Site's own limit; published: " + rule)
                : check.citation().map(Citation::text);
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
