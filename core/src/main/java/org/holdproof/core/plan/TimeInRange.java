package org.holdproof.core.plan;

import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.rules.HoldingRule;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;

/**
 * Time a core is to spend in a range of temperature, against the rule that limits it.
 *
 * @param minutes worst: everything slow at once and, with a smoke step, all time from its start; nominal: as planned; best:
 *     the smoke at its fast pace
 */
public record TimeInRange(HoldingRule rule, Bounded minutes) {
    /** Kept even at worst, not kept even at best, or in between. */
    public Verdict verdict() {
        return judge(minutes);
    }

    /** Whether it is kept as planned. */
    public boolean isKeptAsPlanned() {
        return judge(Bounded.exactly(minutes.nominal())) == Verdict.MET;
    }

    private Verdict judge(Bounded figure) {
        return Check.judge(figure, rule.timeComparison(), rule.maxMinutes().orElseThrow());
    }

    static TimeInRange comeUp(HoldingRule rule, PlannedCook cook, TimedCores cores) {
        double lower = rule.from().orElseThrow().celsius();
        double upper = rule.limit().orElseThrow().celsius();
        double worst = Double.POSITIVE_INFINITY;
        if (cook.startCelsius() <= lower) {
            double counted = cook.smoke().isPresent() ? Double.NEGATIVE_INFINITY : lower;
            worst = cores.slowest().minutesBetween(counted, upper, cores.slowestSafe());
        }
        return of(
                rule,
                worst,
                cores.planned().minutesBetween(lower, upper, cores.safe()),
                cores.fastest().minutesBetween(lower, upper, cores.fastestSafe()));
    }

    /** All time below the rule's temperature while heating and cooking. */
    static TimeInRange lowCook(HoldingRule rule, TimedCores cores) {
        double upper = rule.limit().orElseThrow().celsius();
        double any = Double.NEGATIVE_INFINITY;
        return of(
                rule,
                cores.slowest().minutesBetween(any, upper, cores.slowestSafe()),
                cores.planned().minutesBetween(any, upper, cores.safe()),
                cores.fastest().minutesBetween(any, upper, cores.fastestSafe()));
    }

    private static TimeInRange of(HoldingRule rule, double worst, double planned, double best) {
        return new TimeInRange(rule, new Bounded(Math.max(worst, planned), planned, Math.min(best, planned)));
    }
}
