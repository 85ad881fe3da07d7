package org.holdproof.core.standing;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.holdproof.core.assess.CoolingChecks;
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

/** The clocks of a cooling schedule that run at one instant, each at the probe that has used most of it. */
final class CoolingClocks {
    /** How far a core may sink in its own hold, in °C; common practice, no source. */
    private static final double HOLD_CELSIUS = 1;

    private final Evidence evidence;
    private final CookSoFar cook;
    private final long presentMillis;
    private final ClockMaker maker;

    CoolingClocks(Evidence evidence, CookSoFar cook, long presentMillis) {
        this.evidence = evidence;
        this.cook = cook;
        this.presentMillis = presentMillis;
        maker = new ClockMaker(evidence.wording(), presentMillis);
    }

    /**
     * The stages that have begun: in the chill, on food that left the heat and waits for it, and on food that left its
     * own hold by its readings, whatever the stage under way is called.
     *
     * @param rowsMet whether every probe has met a row; before that, time under hot belongs to the come-up
     */
    List<RunningClock> of(CoolingRule rule, boolean rowsMet) {
        Optional<Stage> chill = evidence.timeline().chill();
        boolean chilling = chill.isPresent() && cook.underWay().equals(chill);
        Optional<Stage> from = chilling
                ? chill
                : cook.waitsForChill() ? Optional.of(outOfTheHeat()) : rowsMet ? leftItsHold(rule) : Optional.empty();
        return from.map(stage -> clocks(rule, stage, chilling)).orElse(List.of());
    }

    private List<RunningClock> clocks(CoolingRule rule, Stage from, boolean chilling) {
        List<RunningClock> clocks = new ArrayList<>();
        Span window = new CoolingChecks(evidence).window(rule, from);
        Events events = new Events(
                OptionalLong.of(window.fromMillis()),
                chilling ? OptionalLong.of(from.from().toEpochMilli()) : OptionalLong.empty());
        for (int stage = 0; stage < rule.stages().size(); stage++) {
            int number = stage;
            evidence.within(window).stream()
                    .filter(trace -> !trace.isEmpty())
                    .flatMap(trace -> used(rule, number, trace, events).stream())
                    .max(Comparator.comparing(UsedTime::minutes, Slowest.GOVERNS))
                    .ifPresent(used -> clocks.add(clock(rule.stages().get(number), used)));
        }
        return clocks;
    }

    /** From the end of the heat until now, as if it were a chill. */
    private Stage outOfTheHeat() {
        Stage heat = evidence.timeline().lastHeatBefore(presentMillis).orElseThrow();
        return chillFrom(evidence.timeline().span(heat).toMillis());
    }

    private Stage chillFrom(long millis) {
        return new Stage(
                Stage.Kind.CHILL,
                Instant.ofEpochMilli(millis),
                Optional.of(Instant.ofEpochMilli(presentMillis)),
                OptionalDouble.empty());
    }

    /** Since a core left the rule's upper boundary or, where its cook was cooler, the cook's own temperature. */
    private Optional<Stage> leftItsHold(CoolingRule rule) {
        boolean asksOtherwise = cook.isOver()
                || cook.record().stages().stream()
                        .map(Stage::kind)
                        .anyMatch(kind -> kind == Stage.Kind.SERVE || kind == Stage.Kind.TIME_ONLY)
                || cook.isUnderWay(Stage.Kind.REHEAT)
                || evidence.timeline().chill().isPresent();
        Optional<Span> heated = evidence.timeline().cook();
        if (asksOtherwise || heated.isEmpty()) {
            return Optional.empty();
        }
        double upper = rule.stages().stream()
                .flatMap(stage -> stage.from().stream())
                .mapToDouble(Boundary::celsius)
                .findFirst()
                .orElse(Double.POSITIVE_INFINITY);
        OptionalLong left = OptionalLong.empty();
        for (Trace trace : evidence.within(new Span(heated.get().fromMillis(), presentMillis))) {
            OptionalLong last = lastHot(trace, upper);
            if (last.isPresent() && (left.isEmpty() || last.getAsLong() < left.getAsLong())) {
                left = last;
            }
        }
        return left.isPresent() ? Optional.of(chillFrom(left.getAsLong())) : Optional.empty();
    }

    /** A trace's last reading in its hold; empty while it is there. */
    private OptionalLong lastHot(Trace trace, double upperCelsius) {
        double peak = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < trace.size(); i++) {
            peak = Math.max(peak, trace.celsius(i));
        }
        double hold = Math.min(upperCelsius, peak - HOLD_CELSIUS - evidence.toleranceCelsius());
        int i = trace.size() - 1;
        while (i >= 0 && trace.celsius(i) < hold) {
            i--;
        }
        return i < 0 || i == trace.size() - 1 ? OptionalLong.empty() : OptionalLong.of(trace.millis(i));
    }

    private Optional<UsedTime> used(CoolingRule rule, int number, Trace trace, Events events) {
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
        return minutes.worst() > 0 ? Optional.of(new UsedTime(trace, minutes)) : Optional.empty();
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

    private boolean isBetween(Trace trace, double lowerCelsius, double upperCelsius) {
        double last = trace.celsius(trace.size() - 1);
        return last + evidence.toleranceCelsius() > lowerCelsius && last - evidence.toleranceCelsius() < upperCelsius;
    }

    private double minutesSince(long millis) {
        return Math.max(0, (presentMillis - millis) / 60_000.0);
    }

    private RunningClock clock(CoolingRule.Stage stage, UsedTime used) {
        String goal = stage.to()
                .map(boundary -> (stage.clock() == CoolingRule.Clock.DWELL ? "below " : "at ")
                        + evidence.wording().boundary(boundary))
                .orElse("in the chill");
        return maker.make(
                CoolingChecks.ID + "." + stage.number(),
                used,
                stage.maxMinutes().orElseThrow(),
                "Cooling stage " + stage.number(),
                goal,
                stage.to().map(to -> OptionalDouble.of(to.celsius())).orElse(OptionalDouble.empty()));
    }
}
