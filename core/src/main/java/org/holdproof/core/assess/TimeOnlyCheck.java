package org.holdproof.core.assess;

import java.util.List;
import java.util.Optional;
import org.holdproof.core.assess.TimeAsControl.TimeOut;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.rules.TimeLimit;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;
import org.holdproof.core.wording.Wording;

/**
 * Was food that was kept by time alone used within its time? Its spells add up; it must have started cold or hot enough
 * by the log, less or plus the tolerance, and bear its mark where the rule asks for one. One rule kept is enough.
 */
final class TimeOnlyCheck {
    static final String ID = "time-only";

    private final Evidence evidence;
    private final List<Stage> spells;

    TimeOnlyCheck(Evidence evidence) {
        this.evidence = evidence;
        this.spells = evidence.timeline().all(Stage.Kind.TIME_ONLY);
    }

    Optional<Check> check() {
        List<TimeLimit> limits = evidence.authority().timeLimits();
        if (spells.isEmpty() || limits.isEmpty()) {
            return Optional.empty();
        }
        Bounded minutes = Bounded.exactly(spells.stream()
                .mapToDouble(stage -> evidence.timeline().span(stage).minutes())
                .sum());
        List<Trace> readings = readings();
        Optional<TimeLimit> kept = limits.stream()
                .filter(limit -> !readings.isEmpty() && readings.stream().allMatch(trace -> keeps(limit, trace, true)))
                .findFirst();
        boolean possible = readings.isEmpty()
                ? limits.stream().anyMatch(limit -> limit.timeComparison()
                        .holds(minutes.nominal(), limit.maxMinutes(), Check.FIGURE_SLACK))
                : limits.stream().anyMatch(limit -> readings.stream().allMatch(trace -> keeps(limit, trace, false)));
        TimeLimit limit = kept.orElse(limits.get(0));
        Verdict verdict = kept.isPresent() ? Verdict.MET : possible ? Verdict.NOT_PROVEN : Verdict.NOT_MET;
        return Optional.of(Check.of(ID, "Used within its time")
                .required("out of temperature control for "
                        + limit.timeComparison().words() + " "
                        + Wording.minutes(limit.maxMinutes())
                        + (limit.marked() ? ", marked with its time" : "") + start(limit))
                .citation(limit.citation())
                .verdict(verdict)
                .measured(minutes)
                .limit(limit.maxMinutes())
                .comparison(limit.timeComparison())
                .unit("min")
                .why(why(minutes, readings, limit))
                .next("Do not serve on this record. " + limit.disposition() + ".")
                .window(evidence.timeline().span(spells.get(0)))
                .build());
    }

    private String start(TimeLimit limit) {
        return limit.coldStart()
                        .map(cold ->
                                ", started at or below " + evidence.wording().boundary(cold))
                        .orElse("")
                + limit.hotStart()
                        .map(hot -> (limit.coldStart().isPresent() ? " or" : ", started") + " at or above "
                                + evidence.wording().boundary(hot))
                        .orElse("");
    }

    private String why(Bounded minutes, List<Trace> readings, TimeLimit limit) {
        String out = "It was out for " + Wording.minutes(minutes.nominal()) + " in all";
        String started = readings.isEmpty()
                ? "; no reading shows what it started at"
                : ", starting at "
                        + evidence.wording().temperature(readings.get(0).celsius(0));
        boolean marked = spells.stream().noneMatch(stage -> stage.mark().isEmpty());
        return out + started + (limit.marked() && !marked ? "; the record names no mark on the container" : "") + ".";
    }

    /** Whether a rule is kept by the readings as far against the cook, or for, as the tolerance allows. */
    private boolean keeps(TimeLimit limit, Trace trace, boolean atWorst) {
        double tolerance = (atWorst ? 1 : -1) * evidence.toleranceCelsius();
        double begin = trace.celsius(0);
        boolean fromHot = limit.hotStart().isPresent()
                && (limit.coldStart().isEmpty()
                        || begin
                                > (limit.coldStart().get().celsius()
                                                + limit.hotStart().get().celsius())
                                        / 2);
        double warmest = begin;
        for (int i = 1; i < trace.size(); i++) {
            warmest = Math.max(warmest, trace.celsius(i));
        }
        return TimeAsControl.keeps(
                limit,
                new TimeOut(
                        spells.stream()
                                .map(stage -> evidence.timeline().span(stage).minutes())
                                .toList(),
                        begin + (fromHot ? -tolerance : tolerance),
                        warmest + tolerance,
                        spells.stream().noneMatch(stage -> stage.mark().isEmpty()),
                        spells.size() - 1));
    }

    /** Every core probe's readings over the first spell; none unless each was read when it started. */
    private List<Trace> readings() {
        Span span = evidence.timeline().span(spells.get(0));
        List<Trace> readings = evidence.within(span);
        boolean all = readings.stream()
                .allMatch(trace -> !trace.isEmpty()
                        && (trace.firstMillis() - span.fromMillis()) / 60_000.0 <= evidence.gapMinutes(trace));
        return all ? readings : List.of();
    }
}
