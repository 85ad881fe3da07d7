package org.holdproof.core.plan;

import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.rules.HoldingRule;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;

/**
 * Time a core is to spend in a range of temperature, against the rule that limits it.
 *
 * @param minutes worst: everything slow at once and the whole smoke step counted; nominal and best: as planned
 */
public record TimeInRange(HoldingRule rule, Bounded minutes) {
    /** Kept even at worst, not kept even as planned, or in between. */
    public Verdict verdict() {
        return Check.judge(minutes, rule.timeComparison(), rule.maxMinutes().orElseThrow());
    }

    static TimeInRange comeUp(
            HoldingRule rule, PlannedCook cook, CoreCurve planned, double safe, CoreCurve slowest, double slowestSafe) {
        double lower = rule.from().orElseThrow().celsius();
        double upper = rule.limit().orElseThrow().celsius();
        double asPlanned = planned.minutesBetween(lower, upper, safe);
        boolean startKnown = cook.startCelsius() <= lower;
        double worst = startKnown
                ? cook.smokeMinutes() + slowest.minutesBetween(lower, upper, slowestSafe)
                : Double.POSITIVE_INFINITY;
        return new TimeInRange(rule, new Bounded(Math.max(worst, asPlanned), asPlanned, asPlanned));
    }

    /** All time below the rule's temperature while heating and cooking. */
    static TimeInRange lowCook(
            HoldingRule rule, CoreCurve planned, double safe, CoreCurve slowest, double slowestSafe) {
        double upper = rule.limit().orElseThrow().celsius();
        double asPlanned = planned.minutesBetween(Double.NEGATIVE_INFINITY, upper, safe);
        double worst = slowest.minutesBetween(Double.NEGATIVE_INFINITY, upper, slowestSafe);
        return new TimeInRange(rule, new Bounded(Math.max(worst, asPlanned), asPlanned, asPlanned));
    }
}
