package org.holdproof.core.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.holdproof.core.batch.Product.Form;
import org.holdproof.core.log.Trace;
import org.holdproof.core.measure.CoolingClock;
import org.holdproof.core.measure.CoolingClock.StageTime;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.rules.CoolingRule;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;

/**
 * Cooling the piece after the bath, timed by the authority's schedule on its own clock.
 *
 * @param fromCelsius the whole piece when it goes in, in °C
 * @param core its core from then on
 * @param rule the schedule it keeps best; empty where the authority gives no figure
 * @param stages that schedule's stages
 * @param toFridge minutes to 5 °C at worst; empty if it never gets there
 */
public record ChillPlan(
        ChillMedium medium,
        double fromCelsius,
        CoreCurve core,
        Optional<CoolingRule> rule,
        List<Stage> stages,
        OptionalDouble toFridge) {

    private static final double FRIDGE = 5;
    private static final double SETTLED_FOR = 4 * 24 * 60;
    private static final double MEAT_HEAT = 3.5;
    private static final double ICE_LATENT_HEAT = 333.6;

    public ChillPlan {
        stages = List.copyOf(stages);
    }

    /**
     * One stage.
     *
     * @param minutes worst: the piece 5 mm thicker, the lowest diffusivity and coefficient; nominal and best: as planned
     */
    public record Stage(CoolingRule.Stage stage, Bounded minutes) {
        /** Kept even at worst, not kept even as planned, or in between. */
        public Verdict verdict() {
            return Check.judge(minutes, stage.comparison(), stage.maxMinutes().orElse(Double.POSITIVE_INFINITY));
        }
    }

    /** The worst of the stages; empty without a schedule. */
    public Optional<Verdict> verdict() {
        return rule.map(schedule -> verdict(stages));
    }

    private static Verdict verdict(List<Stage> stages) {
        return stages.stream().map(Stage::verdict).reduce(Verdict.MET, Verdict::and);
    }

    /**
     * Ice that melts for each kilogram of food, in kg: its heat over the heat of melting, 3.5 kJ/(kg K) and 333.6 kJ/kg
     * (computed). About 0.6 kg; as much ice as food leaves room for losses and warm water.
     *
     * @param toCelsius what the food is brought down to, in °C
     */
    public static double iceMelted(double fromCelsius, double toCelsius) {
        return MEAT_HEAT * (fromCelsius - toCelsius) / ICE_LATENT_HEAT;
    }

    static ChillPlan of(PlannedCook cook, HeatFigures heat, CookSimulation simulation, double fromCelsius) {
        ChillMedium medium = cook.chill();
        CoreCurve planned = CoreRise.of(
                        cook.piece(),
                        heat.conductivity(),
                        heat.diffusivity(),
                        medium.coefficient().typical())
                .curve(fromCelsius, medium.celsius(), 0);
        CoreCurve slow = CoreRise.of(
                        simulation.slowestPiece(),
                        heat.conductivity(),
                        heat.slowDiffusivity(),
                        medium.slowCoefficient())
                .curve(fromCelsius, medium.celsius(), 0);
        Optional<CoolingRule> best = Optional.empty();
        List<Stage> stages = List.of();
        for (CoolingRule rule : cook.authority().cooling()) {
            if (isOpen(rule, cook.form())) {
                List<Stage> timed = time(rule, planned, slow);
                if (best.isEmpty() || Comparator.<Verdict>naturalOrder().compare(verdict(timed), verdict(stages)) < 0) {
                    best = Optional.of(rule);
                    stages = timed;
                }
            }
        }
        return new ChillPlan(medium, fromCelsius, planned, best, stages, slow.fallsTo(FRIDGE));
    }

    /** Schedules for cured or salted food are not planned with, nor those without a figure. */
    private static boolean isOpen(CoolingRule rule, Form form) {
        CoolingRule.Condition condition = rule.condition();
        return condition.nitritePpmAtLeast().isEmpty()
                && condition.brinePercentAtLeast().isEmpty()
                && (!condition.intactOnly() || form == Form.INTACT)
                && rule.stages().stream().anyMatch(stage -> stage.maxMinutes().isPresent());
    }

    private static List<Stage> time(CoolingRule rule, CoreCurve planned, CoreCurve slow) {
        List<StageTime> nominal = clock(planned).time(rule);
        List<StageTime> worst = clock(slow).time(rule);
        List<Stage> stages = new ArrayList<>();
        for (int i = 0; i < nominal.size(); i++) {
            double asPlanned = minutes(nominal.get(i));
            stages.add(new Stage(
                    nominal.get(i).stage(),
                    new Bounded(Math.max(asPlanned, minutes(worst.get(i))), asPlanned, asPlanned)));
        }
        return stages;
    }

    private static double minutes(StageTime time) {
        return time.ended() ? time.shortestMinutes() : Double.POSITIVE_INFINITY;
    }

    private static CoolingClock clock(CoreCurve core) {
        Trace trace = core.trace("core", 0, core.minute(core.size() - 1) + SETTLED_FOR);
        return CoolingClock.straight(
                trace, Double.POSITIVE_INFINITY, new CoolingClock.Events(OptionalLong.of(0), OptionalLong.of(0)));
    }
}
