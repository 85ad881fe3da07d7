package org.holdproof.core.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.verdict.Verdict;

/** What comes of planning a cook: a plan, or why there is none. */
public sealed interface Plan permits BathPlan, NoPlan {

    PlannedCook cook();

    /**
     * Plans a cook with figures about its heat.
     *
     * @param library the rules the cook's authority was taken from
     */
    static Plan of(PlannedCook cook, HeatFigures heat, RuleLibrary library) {
        Optional<Pasteurization> found =
                Pasteurization.of(cook.authority(), cook.species(), cook.form(), cook.fatPercent());
        if (found.isEmpty()) {
            return NoPlan.unruled(cook);
        }
        Pasteurization rule = found.get();
        if (cook.bathCelsius() < rule.lowestCelsius()) {
            return NoPlan.tooLow(cook, rule, library);
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
        CoreCurve fastest = cook.smoke().isPresent() ? simulation.smokedAt(1) : planned;
        double fastestSafe = rule.safeMinute(fastest).orElse(safe.getAsDouble());
        TimedCores cores = new TimedCores(slowest, longest, planned, safe.getAsDouble(), fastest, fastestSafe);
        List<TimeInRange> ranges = ranges(cook, cores);
        Optional<TimeInRange> missed = ranges.stream()
                .filter(range -> range.verdict() == Verdict.NOT_MET)
                .findFirst();
        if (missed.isPresent()) {
            return NoPlan.tooSlow(cook, missed.get());
        }
        double inBath = cook.bathMinutes().orElse(Math.max(0, longest - cook.smokeMinutes()));
        if (cook.smokeMinutes() + inBath < longest) {
            return NoPlan.tooShort(cook, longest);
        }
        double out = cook.smokeMinutes() + inBath;
        double hottest = Math.max(cook.bathCelsius(), fastest.celsiusAt(out));
        return new BathPlan(
                cook,
                heat,
                rule,
                planned,
                slowest,
                safe.getAsDouble(),
                longest,
                out,
                variations(rule, simulation, heat, cook),
                ranges,
                cook.smoke().map(step -> simulation.smoked()),
                ChillPlan.of(cook, heat, simulation, hottest));
    }

    /** The time each limit on the heating allows, and takes. */
    static List<TimeInRange> ranges(PlannedCook cook, TimedCores cores) {
        List<TimeInRange> ranges = new ArrayList<>();
        cook.authority()
                .comeUpToPlanBy()
                .filter(rule -> rule.from().isPresent() && rule.limit().isPresent())
                .filter(rule -> rule.maxMinutes().isPresent())
                .ifPresent(rule -> ranges.add(TimeInRange.comeUp(rule, cook, cores)));
        cook.authority()
                .lowCook()
                .filter(rule -> rule.limit().isPresent() && rule.maxMinutes().isPresent())
                .ifPresent(rule -> ranges.add(TimeInRange.lowCook(rule, cores)));
        return ranges;
    }

    private static List<BathPlan.Variation> variations(
            Pasteurization rule, CookSimulation simulation, HeatFigures heat, PlannedCook cook) {
        double thickness = CookSimulation.THICKNESS_MILLIMETRES;
        List<BathPlan.Variation> variations = new ArrayList<>();
        if (cook.smoke().isPresent()) {
            variations.add(varied(BathPlan.Change.SLOW_SMOKE, rule, simulation.smokedAt(-1)));
            variations.add(varied(BathPlan.Change.FAST_SMOKE, rule, simulation.smokedAt(1)));
        }
        double usual = heat.diffusivity();
        variations.add(varied(BathPlan.Change.THICKER, rule, simulation.curve(thickness, usual, 0)));
        variations.add(varied(BathPlan.Change.THINNER, rule, simulation.curve(-thickness, usual, 0)));
        variations.add(varied(BathPlan.Change.SLOWER, rule, simulation.curve(0, heat.slowDiffusivity(), 0)));
        variations.add(varied(BathPlan.Change.FASTER, rule, simulation.curve(0, heat.fastDiffusivity(), 0)));
        variations.add(varied(BathPlan.Change.COOLER, rule, simulation.curve(0, usual, CookSimulation.BATH_CELSIUS)));
        return variations;
    }

    private static BathPlan.Variation varied(BathPlan.Change change, Pasteurization rule, CoreCurve curve) {
        return new BathPlan.Variation(change, rule.safeMinute(curve));
    }
}
