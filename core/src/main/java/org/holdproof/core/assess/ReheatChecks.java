package org.holdproof.core.assess;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.log.Trace;
import org.holdproof.core.measure.ReheatClock;
import org.holdproof.core.measure.Slowest;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Comparison;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.core.rules.ReheatingRule;
import org.holdproof.core.verdict.Caution;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;
import org.holdproof.core.wording.Wording;

/** Was the food reheated hot enough, long enough and fast enough? The coldest probe answers. */
public final class ReheatChecks {
    public static final String TARGET = "reheat.target";
    public static final String TIME = "reheat.time";

    private final Evidence evidence;
    private final ReheatingRule rule;

    ReheatChecks(Evidence evidence, ReheatingRule rule) {
        this.evidence = evidence;
        this.rule = rule;
    }

    List<Check> checks() {
        List<Check> checks = new ArrayList<>();
        if (rule.target().isEmpty()) {
            return checks;
        }
        for (Stage stage : evidence.timeline().all(Stage.Kind.REHEAT)) {
            Span span = evidence.timeline().span(stage);
            List<Trace> traces = evidence.within(span);
            if (traces.stream().anyMatch(Trace::isEmpty)) {
                checks.add(blind(span));
                continue;
            }
            checks.add(target(traces));
            if (rule.maxMinutes().isPresent() && rule.from().isPresent()) {
                checks.add(time(traces, rule.from().get(), rule.maxMinutes().getAsDouble()));
            }
        }
        return checks;
    }

    private Check target(List<Trace> traces) {
        Boundary target = rule.target().orElseThrow();
        LethalityRow row = new LethalityRow(
                target,
                OptionalInt.empty(),
                rule.holdSeconds(),
                Wording.minutes(rule.holdSeconds() / 60),
                rule.citation());
        RowJudgement governing = RowJudgement.coldest(traces.stream()
                .map(trace ->
                        RowJudgement.of(trace, List.of(row), evidence.toleranceCelsius(), evidence.gapMinutes(trace)))
                .toList());
        Bounded minutes = governing.minutes();
        return Check.of(TARGET, "Reheated hot enough")
                .required("core " + rule.comparison().words() + " "
                        + evidence.wording().boundary(target)
                        + (rule.holdSeconds() > 0 ? " for " + row.printedTime() : ""))
                .citation(rule.citation())
                .verdict(governing.verdict())
                .measured(minutes)
                .limit(governing.limitMinutes())
                .comparison(Comparison.AT_LEAST)
                .unit("min")
                .why("The coldest probe (" + governing.trace().channel() + ") was there for "
                        + Wording.minutes(minutes.worst()) + " at worst, " + Wording.minutes(minutes.best())
                        + " at best.")
                .next(next())
                .channel(governing.trace().channel())
                .window(new Span(
                        governing.trace().firstMillis(), governing.trace().lastMillis()))
                .build();
    }

    private Check time(List<Trace> traces, Boundary from, double limitMinutes) {
        Boundary target = rule.target().orElseThrow();
        record Timed(Trace trace, Bounded minutes) {}
        Timed slowest = traces.stream()
                .map(trace -> new Timed(
                        trace,
                        ReheatClock.minutes(trace, from.celsius(), target.celsius(), evidence.toleranceCelsius())))
                .max(Comparator.comparing(Timed::minutes, Slowest.GOVERNS))
                .orElseThrow();
        Verdict verdict = Check.judge(slowest.minutes(), rule.timeComparison(), limitMinutes);
        return Check.of(TIME, "Reheated fast enough")
                .required("from " + evidence.wording().boundary(from) + " to "
                        + evidence.wording().boundary(target) + " in "
                        + rule.timeComparison().words() + " " + Wording.minutes(limitMinutes))
                .citation(rule.citation())
                .verdict(verdict)
                .measured(slowest.minutes())
                .limit(limitMinutes)
                .comparison(rule.timeComparison())
                .unit("min")
                .why("The slowest probe (" + slowest.trace().channel() + ") took "
                        + Wording.between(
                                slowest.minutes().best(), slowest.minutes().worst()) + ".")
                .next(next())
                .channel(slowest.trace().channel())
                .window(new Span(slowest.trace().firstMillis(), slowest.trace().lastMillis()))
                .build();
    }

    private Check blind(Span span) {
        return Check.of(TARGET, "Reheated hot enough")
                .required("core " + rule.comparison().words() + " "
                        + evidence.wording().boundary(rule.target().orElseThrow()))
                .citation(rule.citation())
                .verdict(Verdict.NOT_PROVEN)
                .comparison(Comparison.AT_LEAST)
                .why("A core probe has no reading during the reheating.")
                .next(next())
                .window(span)
                .build();
    }

    private String next() {
        return "Do not serve on this record. "
                + (rule.correctiveAction().isEmpty()
                        ? "Hold the food apart and follow the HACCP plan."
                        : rule.correctiveAction().strip().replaceAll("[.;]*$", "") + ".");
    }

    /** Food reheated more than once has been in the growth range more often than any of the rules here was made for. */
    static Optional<Caution> again(Evidence evidence) {
        int times = evidence.timeline().all(Stage.Kind.REHEAT).size();
        return times < 2
                ? Optional.empty()
                : Optional.of(new Caution(
                        "reheat.again",
                        "The food was reheated " + times + " times. Reheating is meant for once"
                                + evidence.authority()
                                        .reheat()
                                        .filter(rule -> rule.conditions().contains("once"))
                                        .map(rule -> " (" + rule.citation().text() + ")")
                                        .orElse(" (common practice, no source)")
                                + "."));
    }
}
