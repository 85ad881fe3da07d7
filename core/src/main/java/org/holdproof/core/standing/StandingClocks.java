package org.holdproof.core.standing;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.holdproof.core.assess.ComeUpCheck;
import org.holdproof.core.assess.LowCookCheck;
import org.holdproof.core.assess.ReheatChecks;
import org.holdproof.core.assess.RowJudgement;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.log.Trace;
import org.holdproof.core.measure.BandTime;
import org.holdproof.core.measure.Slowest;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.rules.HoldingRule;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.core.rules.ReheatingRule;
import org.holdproof.core.verdict.Verdict;

/** The clocks that run while food is heated, each at the probe that has used most of it. */
final class StandingClocks {
    private final Evidence evidence;
    private final CookSoFar cook;
    private final long presentMillis;
    private final ClockMaker maker;

    StandingClocks(Evidence evidence, CookSoFar cook, long presentMillis) {
        this.evidence = evidence;
        this.cook = cook;
        this.presentMillis = presentMillis;
        maker = new ClockMaker(evidence.wording(), presentMillis);
    }

    /** The come-up of the probes that no row has made lethal yet. */
    Optional<RunningClock> comeUp(HoldingRule rule, List<LethalityRow> rows) {
        if (rule.limit().isEmpty() || rule.from().isEmpty() || cook.cookIsOver()) {
            return Optional.empty();
        }
        double lower = rule.from().get().celsius();
        double upper = rule.limit().get().celsius();
        return mostUsed(trace -> trace.celsius(0) > lower + evidence.toleranceCelsius()
                                || isLethal(trace, rows)
                                || !isBetween(trace, lower, upper)
                        ? Optional.empty()
                        : Optional.of(BandTime.minutes(trace, lower, upper, evidence.toleranceCelsius())))
                .map(used -> maker.make(
                        ComeUpCheck.ID,
                        used,
                        rule.maxMinutes().orElseThrow(),
                        "Come-up",
                        "above " + evidence.wording().boundary(rule.limit().get()),
                        OptionalDouble.of(upper)));
    }

    /** The time a cook may spend below a temperature. */
    Optional<RunningClock> lowCook(HoldingRule rule) {
        if (rule.limit().isEmpty() || rule.maxMinutes().isEmpty() || cook.cookIsOver()) {
            return Optional.empty();
        }
        double upper = rule.limit().get().celsius();
        return mostUsed(trace -> isBetween(trace, Double.NEGATIVE_INFINITY, upper)
                        ? Optional.of(LowCookCheck.minutesBelow(trace, rule, evidence.toleranceCelsius()))
                        : Optional.empty())
                .map(used -> maker.make(
                        LowCookCheck.ID,
                        used,
                        rule.maxMinutes().getAsDouble(),
                        "Low cook",
                        "at " + evidence.wording().boundary(rule.limit().get()),
                        OptionalDouble.of(upper)));
    }

    private Optional<UsedTime> mostUsed(Function<Trace, Optional<Bounded>> minutes) {
        return evidence.timeline().cook().stream()
                .flatMap(span -> evidence.within(span).stream())
                .filter(trace -> !trace.isEmpty())
                .flatMap(trace -> minutes.apply(trace).stream().map(found -> new UsedTime(trace, found)))
                .max(Comparator.comparing(UsedTime::minutes, Slowest.GOVERNS));
    }

    private boolean isLethal(Trace trace, List<LethalityRow> rows) {
        return !rows.isEmpty()
                && RowJudgement.of(trace, rows, evidence.toleranceCelsius(), evidence.gapMinutes(trace))
                                .verdict()
                        == Verdict.MET;
    }

    /** Whether the last reading may lie between two temperatures. */
    private boolean isBetween(Trace trace, double lowerCelsius, double upperCelsius) {
        double last = trace.celsius(trace.size() - 1);
        return last + evidence.toleranceCelsius() > lowerCelsius && last - evidence.toleranceCelsius() < upperCelsius;
    }

    /** The time from the cold to the reheating target. */
    Optional<RunningClock> reheat(ReheatingRule rule) {
        if (rule.target().isEmpty()
                || rule.from().isEmpty()
                || rule.maxMinutes().isEmpty()
                || !cook.isUnderWay(Stage.Kind.REHEAT)) {
            return Optional.empty();
        }
        double from = rule.from().get().celsius();
        double target = rule.target().get().celsius();
        Span stage = evidence.timeline().span(cook.underWay().orElseThrow());
        return evidence.within(stage).stream()
                .filter(trace -> !trace.isEmpty())
                .filter(trace -> hottest(trace) < target + evidence.toleranceCelsius())
                .map(trace -> new UsedTime(trace, sinceCold(trace, from)))
                .filter(used -> used.minutes().worst() > 0)
                .max(Comparator.comparing(UsedTime::minutes, Slowest.GOVERNS))
                .map(used -> maker.make(
                        ReheatChecks.TIME,
                        used,
                        rule.maxMinutes().getAsDouble(),
                        "Reheat",
                        "at " + evidence.wording().boundary(rule.target().get()),
                        OptionalDouble.of(target)));
    }

    /** Minutes since the food left a temperature upward; a reading on it counts as still cold only where it surely is. */
    private Bounded sinceCold(Trace trace, double fromCelsius) {
        double worst = minutesSince(trace, lastAtOrBelow(trace, fromCelsius - evidence.toleranceCelsius()));
        double nominal = minutesSince(trace, lastAtOrBelow(trace, fromCelsius));
        int possiblyCold = lastAtOrBelow(trace, fromCelsius + evidence.toleranceCelsius());
        double best = minutesSince(trace, Math.min(possiblyCold + 1, trace.size() - 1));
        boolean stillCold = lastAtOrBelow(trace, fromCelsius - evidence.toleranceCelsius()) == trace.size() - 1;
        return stillCold ? Bounded.exactly(0) : new Bounded(worst, nominal, Math.min(best, nominal));
    }

    private double minutesSince(Trace trace, int i) {
        return (presentMillis - trace.millis(Math.max(0, i))) / 60_000.0;
    }

    private static int lastAtOrBelow(Trace trace, double celsius) {
        int i = trace.size() - 1;
        while (i >= 0 && trace.celsius(i) > celsius) {
            i--;
        }
        return i;
    }

    private static double hottest(Trace trace) {
        double hottest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < trace.size(); i++) {
            hottest = Math.max(hottest, trace.celsius(i));
        }
        return hottest;
    }
}
