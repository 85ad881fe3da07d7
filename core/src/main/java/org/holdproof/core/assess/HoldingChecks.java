package org.holdproof.core.assess;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.batch.Product;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.log.Trace;
import org.holdproof.core.measure.HeldLevel;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.HoldingRule;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;

/** Was the food kept hot enough, or cold enough? The coldest probe answers for hot holding, the warmest for cold. */
public final class HoldingChecks {
    public static final String HOT = "hot-hold";
    public static final String COLD = "cold-store";

    private final Evidence evidence;

    HoldingChecks(Evidence evidence) {
        this.evidence = evidence;
    }

    List<Check> hot() {
        return hotRule().stream()
                .flatMap(rule -> evidence.timeline().all(Stage.Kind.HOT_HOLD).stream()
                        .map(stage -> check(HOT, "Held hot enough", rule, stage)))
                .toList();
    }

    List<Check> cold() {
        return evidence.authority().coldHold().stream()
                .flatMap(rule -> evidence.timeline().all(Stage.Kind.STORE).stream()
                        .map(stage -> check(COLD, "Stored cold enough", rule, stage)))
                .toList();
    }

    /** A whole roast cooked by its own table may have a lower minimum; cut or ground meat never. */
    private Optional<HoldingRule> hotRule() {
        Product product = evidence.batch().product();
        boolean roast =
                product.form() == Product.Form.INTACT && product.species().isRedMeat();
        return roast && evidence.authority().hotHoldRoast().isPresent()
                ? evidence.authority().hotHoldRoast()
                : evidence.authority().hotHold();
    }

    private Check check(String id, String title, HoldingRule rule, Stage stage) {
        Boundary limit = rule.limit().orElseThrow();
        String required =
                "core " + rule.comparison().words() + " " + evidence.wording().boundary(limit) + " throughout the "
                        + stage.kind().title();
        Span span = evidence.timeline().span(stage);
        List<Trace> traces = evidence.within(span);
        String next = "Do not serve on this record. "
                + (rule.correctiveAction().isEmpty()
                        ? "Hold the food apart and follow the HACCP plan."
                        : rule.correctiveAction().strip().replaceAll("[.;]*$", "") + ".");
        if (traces.stream().anyMatch(trace -> !covers(trace, span))) {
            return Check.of(id, title)
                    .required(required)
                    .citation(rule.citation())
                    .verdict(Verdict.NOT_PROVEN)
                    .comparison(rule.comparison())
                    .why("The core readings do not cover the " + stage.kind().title() + " from its start to its end.")
                    .next(next)
                    .window(span)
                    .build();
        }
        record Held(Trace trace, HeldLevel level, Verdict verdict) {}
        double limitCelsius = limit.celsius();
        Held governing = traces.stream()
                .map(trace -> {
                    HeldLevel level = HeldLevel.of(
                            trace,
                            rule.comparison(),
                            limitCelsius,
                            evidence.toleranceCelsius(),
                            evidence.gapMinutes(trace));
                    return new Held(trace, level, level.judge(rule.comparison(), limitCelsius));
                })
                .max(Comparator.comparing(Held::verdict)
                        .thenComparingDouble(held -> (rule.comparison().isFloor() ? -1 : 1)
                                * held.level().celsius().nominal()))
                .orElseThrow();
        TemperatureUnit unit = limit.unit();
        Bounded celsius = governing.level().celsius();
        return Check.of(id, title)
                .required(required)
                .citation(rule.citation())
                .verdict(governing.verdict())
                .measured(new Bounded(
                        unit.fromCelsius(celsius.worst()),
                        unit.fromCelsius(celsius.nominal()),
                        unit.fromCelsius(celsius.best())))
                .limit(limit.value())
                .comparison(rule.comparison())
                .unit(unit.symbol())
                .why(why(rule, governing.trace(), governing.level()))
                .next(next)
                .channel(governing.trace().channel())
                .window(span)
                .build();
    }

    private String why(HoldingRule rule, Trace trace, HeldLevel level) {
        String probe =
                (rule.comparison().isFloor() ? "The coldest" : "The warmest") + " probe (" + trace.channel() + ")";
        String reached = probe
                + (rule.comparison().isFloor() ? " fell to " : " rose to ")
                + evidence.wording().temperature(level.celsius().nominal());
        String gap = Double.isInfinite(level.celsius().worst())
                ? "; a gap in the readings hides what happened in it"
                : " with a tolerance of " + evidence.wording().difference(evidence.toleranceCelsius());
        String breach = level.breachMillis().isPresent()
                ? "; beyond the limit from "
                        + evidence.wording().clock(level.breachMillis().getAsLong())
                : "";
        return reached + gap + breach + ".";
    }

    private boolean covers(Trace trace, Span span) {
        if (trace.isEmpty()) {
            return false;
        }
        double gap = evidence.gapMinutes(trace);
        return (trace.firstMillis() - span.fromMillis()) / 60_000.0 <= gap
                && (span.toMillis() - trace.lastMillis()) / 60_000.0 <= gap;
    }
}
