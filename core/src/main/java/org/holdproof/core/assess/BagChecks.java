package org.holdproof.core.assess;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.log.GapLimit;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Comparison;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.WrittenRule;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;

/** Was a bag that was sealed after the cook sealed while the food was still hot? A bag sealed before it gives no occasion. */
public final class BagChecks {
    public static final String ID = "sealed-hot";

    private final Evidence evidence;
    private final WrittenRule rule;

    BagChecks(Evidence evidence, WrittenRule rule) {
        this.evidence = evidence;
        this.rule = rule;
    }

    List<Check> checks() {
        List<Check> checks = new ArrayList<>();
        long lastCook = evidence.batch().stages().stream()
                .filter(stage -> stage.kind().isCook())
                .mapToLong(stage -> stage.from().toEpochMilli())
                .max()
                .orElse(Long.MAX_VALUE);
        if (rule.value().isEmpty()) {
            return checks;
        }
        for (Stage bag : evidence.timeline().all(Stage.Kind.BAG)) {
            if (bag.from().toEpochMilli() > lastCook) {
                checks.add(check(bag));
            }
        }
        return checks;
    }

    private Check check(Stage bag) {
        TemperatureUnit unit = rule.unit().equals("F") ? TemperatureUnit.FAHRENHEIT : TemperatureUnit.CELSIUS;
        Boundary limit = new Boundary(rule.value().getAsDouble(), unit);
        long at = bag.from().toEpochMilli();
        return evidence.core().stream()
                .map(trace -> check(bag, unit, limit, at(trace, at)))
                .max(Governing.ORDER)
                .orElseThrow();
    }

    private Check check(Stage bag, TemperatureUnit unit, Boundary limit, Optional<Bounded> coldest) {
        long at = bag.from().toEpochMilli();
        Verdict verdict = coldest.map(celsius ->
                        Verdict.of(celsius, Comparison.AT_LEAST, limit.celsius(), TemperatureUnit.SLACK_CELSIUS))
                .orElse(Verdict.NOT_PROVEN);
        return Check.of(ID, "Bag sealed while hot")
                .required("sealed after the cook at a core " + Comparison.AT_LEAST.words() + " "
                        + evidence.wording().boundary(limit))
                .citation(rule.citation())
                .verdict(verdict)
                .measured(coldest.map(celsius -> new Bounded(
                        unit.fromCelsius(celsius.worst()),
                        unit.fromCelsius(celsius.nominal()),
                        unit.fromCelsius(celsius.best()))))
                .limit(coldest.isPresent() ? OptionalDouble.of(limit.value()) : OptionalDouble.empty())
                .comparison(Comparison.AT_LEAST)
                .unit(unit.symbol())
                .why(
                        coldest.isPresent()
                                ? "The coldest core probe stood at "
                                        + evidence.wording()
                                                .temperature(coldest.get().nominal()) + " when the bag was sealed."
                                : "No core reading on both sides of the moment the bag was sealed.")
                .next(
                        "Do not keep it in the bag on this record. Cool it open, or reheat and pack again, as the HACCP plan says.")
                .window(new Span(at, at))
                .build();
    }

    /** The temperature at a moment between two readings that are no gap apart. */
    private Optional<Bounded> at(Trace trace, long millis) {
        for (int i = 0; i + 1 < trace.size(); i++) {
            if (trace.millis(i) <= millis && millis <= trace.millis(i + 1)) {
                if (GapLimit.isGap(trace, i)) {
                    return Optional.empty();
                }
                double share = (millis - trace.millis(i)) / (double) (trace.millis(i + 1) - trace.millis(i));
                double low = Math.min(trace.celsius(i), trace.celsius(i + 1)) - evidence.toleranceCelsius();
                double high = Math.max(trace.celsius(i), trace.celsius(i + 1)) + evidence.toleranceCelsius();
                double line = trace.celsius(i) + share * (trace.celsius(i + 1) - trace.celsius(i));
                return Optional.of(new Bounded(low, line, high));
            }
        }
        return Optional.empty();
    }
}
