package org.holdproof.core.assess;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.holdproof.core.batch.Product;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.log.Trace;
import org.holdproof.core.measure.CoolingClock;
import org.holdproof.core.measure.CoolingClock.Events;
import org.holdproof.core.measure.CoolingClock.StageTime;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Comparison;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.CoolingRule;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;
import org.holdproof.core.wording.Wording;

/**
 * Was the food cooled in time, stage by stage, on the rule's own clock? The warmest probe answers. Where the authority
 * accepts several schedules, one kept whole is enough.
 */
public final class CoolingChecks {
    public static final String ID = "cooling";

    private final Evidence evidence;

    public CoolingChecks(Evidence evidence) {
        this.evidence = evidence;
    }

    List<Check> checks() {
        Optional<Stage> chill = evidence.timeline().chill();
        if (chill.isEmpty()) {
            return List.of();
        }
        List<CoolingRule> open = evidence.authority().cooling().stream()
                .filter(rule -> isOpen(rule.condition(), evidence.batch().product()))
                .toList();
        if (open.isEmpty()) {
            return List.of(unanswered(
                    "a cooling schedule",
                    evidence.authority().title() + " as held here names no schedule for this product."));
        }
        return open.stream()
                .map(rule -> under(rule, chill.get()))
                .min(Comparator.comparing(CoolingChecks::verdict))
                .orElseThrow();
    }

    private static Verdict verdict(List<Check> checks) {
        return checks.stream().map(Check::verdict).reduce(Verdict.MET, Verdict::and);
    }

    public static boolean isOpen(CoolingRule.Condition condition, Product product) {
        return reaches(product.nitritePpm(), condition.nitritePpmAtLeast())
                && reaches(product.brinePercent(), condition.brinePercentAtLeast())
                && (!condition.intactOnly() || product.form() == Product.Form.INTACT);
    }

    private static boolean reaches(OptionalDouble has, OptionalDouble needs) {
        return needs.isEmpty() || has.orElse(0) >= needs.getAsDouble();
    }

    private List<Check> under(CoolingRule rule, Stage chill) {
        if (rule.stages().stream().allMatch(stage -> stage.maxMinutes().isEmpty())) {
            return List.of(unanswered(
                    rule.title(), "The rule gives no figure: the kitchen's own HACCP plan sets the schedule."));
        }
        Span window = window(rule, chill);
        List<Check> checks = new ArrayList<>();
        for (int number = 0; number < rule.stages().size(); number++) {
            checks.add(slowest(rule, number, window, chill));
        }
        return checks;
    }

    /**
     * From where the clock can have started to the end of the chill. It can have started when the food left the heat,
     * or before, if it fell through the upper temperature while the stage still ran and did not recover.
     */
    public Span window(CoolingRule rule, Stage chill) {
        long chillFrom = chill.from().toEpochMilli();
        long to = Math.max(chillFrom, evidence.timeline().span(chill).toMillis());
        Optional<Stage> heat = evidence.timeline().lastHeatBefore(chillFrom);
        if (heat.isEmpty()) {
            return new Span(chillFrom, to);
        }
        long left = Math.min(chillFrom, evidence.timeline().span(heat.get()).toMillis());
        long from = left;
        Optional<Boundary> upper = rule.stages().stream()
                .map(CoolingRule.Stage::from)
                .flatMap(Optional::stream)
                .findFirst();
        if (upper.isPresent()) {
            long heatFrom = heat.get().from().toEpochMilli();
            for (Trace trace : evidence.within(new Span(heatFrom, left))) {
                from = Math.min(from, lastAtOrAbove(trace, upper.get().celsius(), left));
            }
        }
        return new Span(from, to);
    }

    /** The last reading at or above a temperature, if the food had been there and was below it at the end. */
    private static long lastAtOrAbove(Trace trace, double celsius, long otherwise) {
        for (int i = trace.size() - 1; i >= 0; i--) {
            if (trace.celsius(i) >= celsius - TemperatureUnit.SLACK_CELSIUS) {
                return i == trace.size() - 1 ? otherwise : trace.millis(i);
            }
        }
        return otherwise;
    }

    private Check slowest(CoolingRule rule, int number, Span window, Stage chill) {
        CoolingRule.Stage stage = rule.stages().get(number);
        List<Trace> traces = evidence.within(window);
        if (traces.stream().anyMatch(Trace::isEmpty)) {
            return unanswered(required(stage), "A core probe has no reading during the chill.");
        }
        return traces.stream()
                .map(trace -> judge(rule, number, trace, window, chill))
                .max(Comparator.comparing(Check::verdict)
                        .thenComparingDouble(
                                check -> check.measured().orElseThrow().worst())
                        .thenComparingDouble(
                                check -> check.measured().orElseThrow().nominal()))
                .orElseThrow();
    }

    private Check judge(CoolingRule rule, int number, Trace trace, Span window, Stage chill) {
        Events events = new Events(
                OptionalLong.of(window.fromMillis()),
                OptionalLong.of(chill.from().toEpochMilli()));
        StageTime bounds = CoolingClock.bounding(trace, evidence.toleranceCelsius(), events)
                .time(rule)
                .get(number);
        StageTime straight = CoolingClock.straight(trace, Double.POSITIVE_INFINITY, events)
                .time(rule)
                .get(number);
        Bounded minutes = new Bounded(
                bounds.longestMinutes(),
                Math.min(bounds.longestMinutes(), Math.max(bounds.shortestMinutes(), straight.shortestMinutes())),
                bounds.shortestMinutes());
        CoolingRule.Stage stage = bounds.stage();
        Verdict verdict = CoolingClock.judge(bounds);
        return Check.of(ID + "." + stage.number(), "Cooled in time, stage " + stage.number())
                .required(required(stage))
                .citation(rule.citation())
                .verdict(verdict)
                .measured(minutes)
                .limit(stage.maxMinutes())
                .comparison(stage.comparison())
                .unit("min")
                .why(why(trace, bounds, straight, verdict))
                .next(next(rule))
                .channel(trace.channel())
                .window(new Span(trace.firstMillis(), trace.lastMillis()))
                .build();
    }

    private String required(CoolingRule.Stage stage) {
        String from =
                switch (stage.start()) {
                    case END_OF_COOKING -> "from the end of cooking";
                    case START_OF_CHILLING -> "from the start of chilling";
                    case START_OF_HEATING -> "from the start of heating";
                    case END_OF_PREPARATION -> "from the end of preparation";
                    case FALLS_THROUGH, SAME_AS_FIRST, AFTER_PREVIOUS ->
                        stage.from()
                                .map(boundary -> "from " + evidence.wording().boundary(boundary))
                                .orElse("");
                };
        String to = stage.to()
                .map(boundary -> " to " + evidence.wording().boundary(boundary))
                .orElse(" until chilling starts");
        String limit = stage.maxMinutes().isPresent()
                ? " in " + stage.comparison().words() + " "
                        + Wording.minutes(stage.maxMinutes().getAsDouble())
                : "";
        return "core " + from + to + limit
                + switch (stage.clock()) {
                    case ELAPSED -> "";
                    case DWELL -> ", all time in between added up";
                    case GROWTH, NONE -> ", no figure in the document";
                };
    }

    private String why(Trace trace, StageTime bounds, StageTime straight, Verdict verdict) {
        String warmest = "The warmest probe (" + trace.channel() + ") ";
        String end = bounds.stage()
                .to()
                .map(boundary -> evidence.wording().boundary(boundary))
                .orElse("the chill");
        if (!straight.ended()) {
            return warmest + "is not at " + end + " when its readings end, at "
                    + evidence.wording().temperature(trace.celsius(trace.size() - 1)) + " after "
                    + Wording.minutes(bounds.shortestMinutes()) + ".";
        }
        if (!bounds.startLogged()) {
            return warmest + "begins below the stage's upper temperature: when the clock started is not logged.";
        }
        if (!bounds.ended()) {
            return warmest + "ends at " + evidence.wording().temperature(trace.celsius(trace.size() - 1))
                    + ", too close to " + end + " to be sure of with a tolerance of "
                    + evidence.wording().difference(evidence.toleranceCelsius()) + ".";
        }
        String took = warmest + "took " + Wording.minutes(straight.shortestMinutes()) + " ("
                + Wording.between(bounds.shortestMinutes(), bounds.longestMinutes()) + ")";
        String ranOut = verdict == Verdict.NOT_MET && bounds.limitMillis().isPresent()
                ? "; the limit ran out at "
                        + evidence.wording().clock(bounds.limitMillis().getAsLong())
                : "";
        return took + ranOut + ".";
    }

    private static String next(CoolingRule rule) {
        return "Do not serve on this record. "
                + (rule.correctiveAction().isEmpty()
                        ? "Hold the food apart and follow the HACCP plan."
                        : rule.correctiveAction().strip().replaceAll("[.;]*$", "") + ".");
    }

    private static Check unanswered(String rule, String why) {
        return Check.of(ID, "Cooled in time")
                .required(rule)
                .verdict(Verdict.NOT_PROVEN)
                .comparison(Comparison.AT_MOST)
                .why(why)
                .next("Do not serve on this record. Hold the food apart and follow the HACCP plan.")
                .build();
    }
}
