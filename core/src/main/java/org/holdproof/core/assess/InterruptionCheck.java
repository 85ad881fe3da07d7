package org.holdproof.core.assess;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Comparison;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.rules.CoolingRule;
import org.holdproof.core.verdict.Caution;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;
import org.holdproof.core.wording.Wording;

/**
 * Was it one cook? A piece that was chilled between two heatings is another process: it has its own limits and needs a
 * procedure the authority approved beforehand. Put only where a chill or a store lies between two cooking stages.
 */
public final class InterruptionCheck {
    public static final String ID = "one-cook";

    private final Evidence evidence;

    InterruptionCheck(Evidence evidence) {
        this.evidence = evidence;
    }

    List<Check> checks() {
        List<Check> checks = new ArrayList<>();
        Optional<Stage> chill = evidence.timeline().chillBetweenCooks();
        if (chill.isEmpty()) {
            return checks;
        }
        Optional<CoolingRule> rule = evidence.authority().nonContinuous();
        String approval = evidence.batch().approval();
        checks.add(Check.of(ID, "Approved as a cook in two heatings")
                .required(
                        "a written procedure the authority approved beforehand, for food chilled between two heatings")
                .citation(rule.map(CoolingRule::citation))
                .verdict(Verdict.NOT_PROVEN)
                .comparison(Comparison.AT_MOST)
                .why(
                        approval.isEmpty()
                                ? "The record has a " + chill.get().kind().title()
                                        + " between two cooking stages and names no approval."
                                : "The record names approval " + approval
                                        + "; whether this batch kept its terms is for the authority to say.")
                .next("Do not serve on this record. Put it to the authority with the approved procedure.")
                .window(evidence.timeline().span(chill.get()))
                .build());
        rule.flatMap(found -> firstHeating(found, chill.get())).ifPresent(checks::add);
        return checks;
    }

    /** The first heating's own limit. */
    private Optional<Check> firstHeating(CoolingRule rule, Stage chill) {
        Optional<CoolingRule.Stage> limited = rule.stages().stream()
                .filter(stage -> stage.start() == CoolingRule.Start.START_OF_HEATING
                        && stage.maxMinutes().isPresent())
                .findFirst();
        Optional<Stage> first = evidence.batch().stages().stream()
                .filter(stage -> stage.kind().isCook())
                .findFirst();
        if (limited.isEmpty() || first.isEmpty()) {
            return Optional.empty();
        }
        Stage last =
                evidence.timeline().lastHeatBefore(chill.from().toEpochMilli()).orElse(first.get());
        Span heating = new Span(
                first.get().from().toEpochMilli(),
                evidence.timeline().span(last).toMillis());
        double limit = limited.get().maxMinutes().getAsDouble();
        Bounded minutes = Bounded.exactly(heating.minutes());
        Verdict verdict = Check.judge(minutes, limited.get().comparison(), limit);
        return Optional.of(Check.of(ID + ".first-heating", "First heating short enough")
                .required("first heating " + limited.get().comparison().words() + " " + Wording.minutes(limit))
                .citation(rule.citation())
                .verdict(verdict)
                .measured(minutes)
                .limit(limit)
                .comparison(limited.get().comparison())
                .unit("min")
                .why("The first heating lasted " + Wording.minutes(heating.minutes()) + " by the record's stage times.")
                .next("Do not serve on this record. Put it to the authority.")
                .window(heating)
                .build());
    }

    /** How far and how long the core fell on its way from the smoker to the bath. */
    Optional<Caution> changeOver() {
        Optional<Stage> smoke =
                evidence.timeline().all(Stage.Kind.SMOKE).stream().reduce((one, other) -> other);
        Optional<Stage> bath = evidence.timeline().all(Stage.Kind.BATH).stream().findFirst();
        if (smoke.isEmpty()
                || bath.isEmpty()
                || evidence.timeline().chillBetweenCooks().isPresent()) {
            return Optional.empty();
        }
        long left = evidence.timeline().span(smoke.get()).toMillis();
        long until = evidence.timeline().span(bath.get()).toMillis();
        if (until <= left) {
            return Optional.empty();
        }
        return evidence.within(new Span(left, until)).stream()
                .filter(trace -> trace.size() > 1)
                .map(Dip::of)
                .filter(dip -> dip.fallCelsius() > evidence.toleranceCelsius())
                .max(Comparator.comparingDouble(Dip::fallCelsius))
                .map(dip -> new Caution(
                        "change-over",
                        "Between smoker and bath the core at " + dip.channel() + " fell by "
                                + evidence.wording().difference(dip.fallCelsius()) + " to "
                                + evidence.wording().temperature(dip.lowestCelsius())
                                + " and was back after " + Wording.minutes(dip.minutes())
                                + ". It counts as one cook; the time is in the come-up."));
    }

    private record Dip(String channel, double fallCelsius, double lowestCelsius, double minutes) {
        static Dip of(Trace trace) {
            double start = trace.celsius(0);
            int lowest = 0;
            int back = 0;
            while (back + 1 < trace.size() && trace.celsius(back + 1) < start) {
                back++;
                lowest = trace.celsius(back) < trace.celsius(lowest) ? back : lowest;
            }
            return new Dip(
                    trace.channel(),
                    start - trace.celsius(lowest),
                    trace.celsius(lowest),
                    (trace.millis(Math.min(back + 1, trace.size() - 1)) - trace.firstMillis()) / 60_000.0);
        }
    }
}
