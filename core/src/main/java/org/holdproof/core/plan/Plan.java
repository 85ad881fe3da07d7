package org.holdproof.core.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.verdict.Verdict;

/** What comes of planning a cook: a plan, or why there is none. */
public sealed interface Plan permits BathPlan, NoPlan {

    PlannedCook cook();

    /** Plans a cook with figures about its heat. */
    static Plan of(PlannedCook cook, HeatFigures heat) {
        Optional<Pasteurization> found =
                Pasteurization.of(cook.authority(), cook.species(), cook.form(), cook.fatPercent());
        if (found.isEmpty()) {
            return NoPlan.unruled(cook);
        }
        Pasteurization rule = found.get();
        if (cook.bathCelsius() < rule.lowestCelsius()) {
            return NoPlan.tooLow(cook, rule);
        }
        CookSimulation simulation = new CookSimulation(cook, heat);
        CoreCurve planned = simulation.asPlanned();
        CoreCurve slowest = simulation.slowest();
        OptionalDouble safe = rule.safeMinute(planned);
        OptionalDouble covering = rule.safeMinute(slowest);
        if (safe.isEmpty() || covering.isEmpty()) {
            return NoPlan.tooNear(cook, rule);
        }
        double longest = Math.max(safe.getAsDouble(), covering.getAsDouble());
        List<TimeInRange> ranges = ranges(cook, planned, safe.getAsDouble(), slowest, longest);
        Optional<TimeInRange> missed = ranges.stream()
                .filter(range -> range.verdict() == Verdict.NOT_MET)
                .findFirst();
        if (missed.isPresent()) {
            return NoPlan.tooSlow(cook, missed.get());
        }
        double inBath = cook.bathMinutes().orElse(longest - cook.smokeMinutes());
        if (cook.smokeMinutes() + inBath < longest) {
            return NoPlan.tooShort(cook, longest);
        }
        double out = cook.smokeMinutes() + inBath;
        double hottest = Math.max(cook.bathCelsius(), planned.celsiusAt(out));
        return new BathPlan(
                cook,
                heat,
                rule,
                planned,
                slowest,
                safe.getAsDouble(),
                longest,
                out,
                variations(rule, simulation, heat),
                ranges,
                ChillPlan.of(cook, heat, simulation, hottest));
    }

    /** The time each limit on the heating allows, and takes. */
    static List<TimeInRange> ranges(
            PlannedCook cook, CoreCurve planned, double safe, CoreCurve slowest, double slowestSafe) {
        List<TimeInRange> ranges = new ArrayList<>();
        cook.authority()
                .comeUp()
                .filter(rule -> rule.from().isPresent() && rule.limit().isPresent())
                .filter(rule -> rule.maxMinutes().isPresent())
                .ifPresent(rule -> ranges.add(TimeInRange.comeUp(rule, cook, planned, safe, slowest, slowestSafe)));
        cook.authority()
                .lowCook()
                .filter(rule -> rule.limit().isPresent() && rule.maxMinutes().isPresent())
                .ifPresent(rule -> ranges.add(TimeInRange.lowCook(rule, planned, safe, slowest, slowestSafe)));
        return ranges;
    }

    private static List<BathPlan.Variation> variations(
            Pasteurization rule, CookSimulation simulation, HeatFigures heat) {
        double thickness = CookSimulation.THICKNESS_MILLIMETRES;
        return List.of(
                new BathPlan.Variation(
                        BathPlan.Change.THICKER, rule.safeMinute(simulation.curve(thickness, heat.diffusivity(), 0))),
                new BathPlan.Variation(
                        BathPlan.Change.THINNER, rule.safeMinute(simulation.curve(-thickness, heat.diffusivity(), 0))),
                new BathPlan.Variation(
                        BathPlan.Change.SLOWER, rule.safeMinute(simulation.curve(0, heat.slowDiffusivity(), 0))),
                new BathPlan.Variation(
                        BathPlan.Change.FASTER, rule.safeMinute(simulation.curve(0, heat.fastDiffusivity(), 0))),
                new BathPlan.Variation(
                        BathPlan.Change.COOLER,
                        rule.safeMinute(simulation.curve(0, heat.diffusivity(), CookSimulation.BATH_CELSIUS))));
    }
}
