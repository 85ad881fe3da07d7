package org.holdproof.core.assess;

import java.util.ArrayList;
import java.util.List;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.rules.AuthorityProfile;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.NotJudged;

/** The questions a batch gave no occasion for, or that its authority does not ask. */
final class Unasked {
    private Unasked() {}

    static List<NotJudged> of(Evidence evidence, List<Check> checks) {
        AuthorityProfile authority = evidence.authority();
        List<NotJudged> unasked = new ArrayList<>();
        if (isMissing(checks, ComeUpCheck.ID)) {
            unasked.add(new NotJudged(
                    "Come-up",
                    authority.comeUp().isPresent()
                            ? "The record names no cook to time."
                            : "This authority sets no limit; what guidance there is stands among the cautions."));
        }
        if (isMissing(checks, HumidityCheck.ID) && isMissing(checks, OvenCheck.ID)) {
            unasked.add(new NotJudged(
                    "Moist surface, oven",
                    authority.humidity().isEmpty()
                            ? "This authority ties its table to none, or the cook was lethal in the bag or the bath."
                            : "No row was met or may have been, so none is tied to it."));
        }
        if (isMissing(checks, HoldingChecks.HOT)) {
            unasked.add(new NotJudged("Hot holding", "The food was not held hot after the cook."));
        }
        if (isMissing(checks, CoolingChecks.ID)) {
            unasked.add(new NotJudged("Cooling", "The food did not come from hot to cold before its end."));
        }
        if (isMissing(checks, HoldingChecks.COLD)) {
            unasked.add(new NotJudged("Cold store", "The food was never in the cold after the cook."));
        }
        if (isMissing(checks, ShelfLifeChecks.ID)) {
            unasked.add(new NotJudged(
                    "Last day of use",
                    authority.shelfLives().isEmpty()
                            ? "This authority's figure is not held here."
                            : "The food was never in the cold, or the record does not say how it ended."));
        }
        if (isMissing(checks, ReheatChecks.TARGET)) {
            unasked.add(new NotJudged("Reheating", "The food did not leave the cold to be heated."));
        }
        unasked.add(new NotJudged(
                "What no log shows", "Hygiene, the raw food, allergens and the tightness of a bag are not measured."));
        return unasked;
    }

    private static boolean isMissing(List<Check> checks, String family) {
        return checks.stream().map(Check::id).noneMatch(id -> id.equals(family) || id.startsWith(family + "."));
    }
}
