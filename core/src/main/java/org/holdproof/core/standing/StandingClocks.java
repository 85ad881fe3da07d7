package org.holdproof.core.standing;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.function.Function;
import org.holdproof.core.assess.ComeUpCheck;
import org.holdproof.core.assess.CoolingChecks;
import org.holdproof.core.assess.LowCookCheck;
import org.holdproof.core.assess.ReheatChecks;
import org.holdproof.core.assess.RowJudgement;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.log.Trace;
import org.holdproof.core.measure.BandTime;
import org.holdproof.core.measure.CoolingClock;
import org.holdproof.core.measure.CoolingClock.Events;
import org.holdproof.core.measure.CoolingClock.StageTime;
import org.holdproof.core.measure.Slowest;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.rules.CoolingRule;
import org.holdproof.core.rules.HoldingRule;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.core.rules.ReheatingRule;
import org.holdproof.core.verdict.Verdict;
import org.holdproof.core.wording.Wording;

/** The clocks that run at one instant of a cook under way, each at the probe that has used most of it. */
final class StandingClocks {
    private final Evidence evidence;
    private final CookSoFar cook;
    private final long presentMillis;

    StandingClocks(Evidence evidence, CookSoFar cook, long presentMillis) {
        this.evidence = evidence;
        this.cook = cook;
        this.presentMillis = presentMillis;
    }

    private record Used(Trace trace, Bounded minutes) {
        double celsius() {
            return trace.celsius(trace.size() - 1);
        }
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
                .map(used -> clock(
                        ComeUpCheck.ID,
                        used,
                        rule.maxMinutes().orElseThrow(),
                        "Come-up",
                        "above " + evidence.wording().boundary(rule.limit().get())));
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
                .map(used -> clock(
                        LowCookCheck.ID,
                        used,
                        rule.maxMinutes().getAsDouble(),
                        "Low cook",
                        "at " + evidence.wording().boundary(rule.limit().get())));
    }

    private Optional<Used> mostUsed(Function<Trace, Optional<Bounded>> minutes) {
        return evidence.timeline().cook().stream()
                .flatMap(span -> evidence.within(span).stream())
                .filter(trace -> !trace.isEmpty())
                .flatMap(trace -> minutes.apply(trace).stream().map(found -> new Used(trace, found)))
                .max(Comparator.comparing(Used::minutes, Slowest.GOVERNS));
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
                .map(trace -> new Used(trace, sinceCold(trace, from)))
                .filter(used -> used.minutes().worst() > 0)
                .max(Comparator.comparing(Used::minutes, Slowest.GOVERNS))
                .map(used -> clock(
                        ReheatChecks.TIME,
                        used,
                        rule.maxMinutes().getAsDouble(),
                        "Reheat",
                        "at " + evidence.wording().boundary(rule.target().get())));
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

    /** The stages of a cooling schedule that have begun; before the chill has, on the food that left the heat. */
    List<RunningClock> cooling(CoolingRule rule) {
        List<RunningClock> clocks = new ArrayList<>();
        Optional<Stage> chill = evidence.timeline().chill();
        boolean chilling = chill.isPresent() && cook.underWay().equals(chill);
        if (!chilling && !cook.waitsForChill()) {
            return clocks;
        }
        Stage from = chilling ? chill.get() : outOfTheHeat();
        Span window = new CoolingChecks(evidence).window(rule, from);
        Events events = new Events(
                OptionalLong.of(window.fromMillis()),
                chilling ? OptionalLong.of(from.from().toEpochMilli()) : OptionalLong.empty());
        for (int stage = 0; stage < rule.stages().size(); stage++) {
            int number = stage;
            evidence.within(window).stream()
                    .filter(trace -> !trace.isEmpty())
                    .flatMap(trace -> used(rule, number, trace, events).stream())
                    .max(Comparator.comparing(Used::minutes, Slowest.GOVERNS))
                    .ifPresent(used -> clocks.add(clock(rule.stages().get(number), used)));
        }
        return clocks;
    }

    /** From the end of the heat until now, as if it were a chill. */
    private Stage outOfTheHeat() {
        Stage heat = evidence.timeline().lastHeatBefore(presentMillis).orElseThrow();
        Instant left = Instant.ofEpochMilli(evidence.timeline().span(heat).toMillis());
        return new Stage(
                Stage.Kind.CHILL, left, Optional.of(Instant.ofEpochMilli(presentMillis)), OptionalDouble.empty());
    }

    private Optional<Used> used(CoolingRule rule, int number, Trace trace, Events events) {
        CoolingRule.Stage stage = rule.stages().get(number);
        List<StageTime> bounds = CoolingClock.bounding(trace, evidence.toleranceCelsius(), events)
                .time(rule);
        StageTime time = bounds.get(number);
        if (stage.maxMinutes().isEmpty()
                || time.ended()
                || time.earliestStartMillis().isEmpty()) {
            return Optional.empty();
        }
        Bounded minutes =
                switch (stage.clock()) {
                    case DWELL -> dwell(stage, trace, events);
                    case ELAPSED -> {
                        boolean surelyBegun = stage.start() != CoolingRule.Start.AFTER_PREVIOUS
                                || bounds.get(number - 1).ended();
                        StageTime straight = CoolingClock.straight(trace, Double.POSITIVE_INFINITY, events)
                                .time(rule)
                                .get(number);
                        double worst = minutesSince(time.earliestStartMillis().getAsLong());
                        double best = surelyBegun ? minutesSince(time.startMillis()) : 0;
                        double nominal = surelyBegun ? minutesSince(straight.startMillis()) : best;
                        yield new Bounded(worst, Math.min(worst, Math.max(best, nominal)), best);
                    }
                    case GROWTH, NONE -> Bounded.exactly(0);
                };
        return minutes.worst() > 0 ? Optional.of(new Used(trace, minutes)) : Optional.empty();
    }

    private Bounded dwell(CoolingRule.Stage stage, Trace trace, Events events) {
        double lower = stage.to().map(Boundary::celsius).orElse(Double.NEGATIVE_INFINITY);
        double upper = stage.from().map(Boundary::celsius).orElse(Double.POSITIVE_INFINITY);
        if (!isBetween(trace, lower, upper)) {
            return Bounded.exactly(0);
        }
        Bounded logged = BandTime.minutes(trace, lower, upper, evidence.toleranceCelsius());
        double before = trace.celsius(0) < upper && events.endOfHeating().isPresent()
                ? Math.max(0, (trace.firstMillis() - events.endOfHeating().getAsLong()) / 60_000.0)
                : 0;
        double silent = minutesSince(trace.lastMillis());
        return new Bounded(logged.worst() + before + silent, logged.nominal() + silent, logged.best());
    }

    private double minutesSince(long millis) {
        return Math.max(0, (presentMillis - millis) / 60_000.0);
    }

    private RunningClock clock(CoolingRule.Stage stage, Used used) {
        String goal = stage.to()
                .map(boundary -> (stage.clock() == CoolingRule.Clock.DWELL ? "below " : "at ")
                        + evidence.wording().boundary(boundary))
                .orElse("in the chill");
        return clock(
                CoolingChecks.ID + "." + stage.number(),
                used,
                stage.maxMinutes().orElseThrow(),
                "Cooling stage " + stage.number(),
                goal);
    }

    /** {@code Cooling stage 1: 95.2 °F now (Core); to be at 70 °F by 12 Feb 14:05, 45 min left of 120 min}. */
    private RunningClock clock(String check, Used used, double limitMinutes, String title, String goal) {
        double left = limitMinutes - used.minutes().worst();
        Wording wording = evidence.wording();
        RunningClock bare =
                new RunningClock(check, used.trace().channel(), presentMillis, used.minutes(), limitMinutes, "");
        String until = left >= 0
                ? "to be " + goal + " by " + wording.clock(bare.provableUntilMillis()) + ", "
                        + Wording.minutes(Math.floor(left)) + " left of " + Wording.minutes(limitMinutes)
                : limitMinutes - used.minutes().best() >= 0
                        ? "to be " + goal + " it can no longer be proven in time; lost at "
                                + wording.clock(bare.lostFromMillis())
                        : "not " + goal + "; its " + Wording.minutes(limitMinutes) + " ran out at "
                                + wording.clock(bare.lostFromMillis());
        return new RunningClock(
                check,
                used.trace().channel(),
                presentMillis,
                used.minutes(),
                limitMinutes,
                title + ": " + wording.temperature(used.celsius()) + " now ("
                        + used.trace().channel() + "); " + until);
    }
}
