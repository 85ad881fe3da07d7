package org.holdproof.report.layout;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.holdproof.core.verdict.Verdict;

/**
 * Where a cook was not judged by the published tables alone.
 *
 * @param differences each figure that differs, in words
 * @param publishedRules what the published tables ask in place of a check's rule, by the check's id
 * @param byPublished the verdict by the published tables; empty where they hold no profile of the record's authority
 */
public record SiteLimits(List<String> differences, Map<String, String> publishedRules, Optional<Verdict> byPublished) {
    public SiteLimits {
        differences = List.copyOf(differences);
        publishedRules = Map.copyOf(publishedRules);
    }

    /** In one or two sentences. */
    String words() {
        return "Site's own limits: "
                + (differences.size() == 1 ? "1 figure differs" : differences.size() + " figures differ")
                + " from the published tables. "
                + byPublished
                        .map(verdict -> "By the published tables this cook is " + verdict.words() + ".")
                        .orElse("The published tables have no profile of this name.");
    }
}
