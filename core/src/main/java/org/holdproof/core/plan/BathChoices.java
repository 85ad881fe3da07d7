package org.holdproof.core.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.quality.QualityModels;
import org.holdproof.core.quality.QualityOutlook;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.rules.TrimmedCut;

/**
 * Set points by hours for one piece: how long each must stay to be safe at worst, and what each stay is likely to do, so
 * that the cook can choose.
 *
 * @param like the cook every line is like, but for bath and stay
 * @param hours the stays, rising
 * @param rows one set point each
 */
public record BathChoices(PlannedCook like, List<Double> hours, List<Row> rows) {
    private static final List<Double> USUAL_HOURS = List.of(6.0, 12.0, 18.0, 24.0, 36.0, 48.0);
    private static final double FAHRENHEIT_STEP = 5;
    private static final double CELSIUS_STEP = 3;
    private static final int USUAL_BATHS = 9;

    public BathChoices {
        hours = List.copyOf(hours);
        rows = List.copyOf(rows);
    }

    /**
     * One set point.
     *
     * @param plan what covers the worst there, or why nothing does
     * @param outlooks one a stay
     */
    public record Row(Boundary bath, Plan plan, List<QualityOutlook> outlooks) {
        public Row {
            outlooks = List.copyOf(outlooks);
        }

        /** Minutes in the bath that cover the worst; empty where there is no safe plan. */
        public OptionalDouble safeMinutes() {
            return plan instanceof BathPlan safe ? OptionalDouble.of(safe.bathMinutes()) : OptionalDouble.empty();
        }

        /** Whether a stay of so many hours covers the worst. */
        public boolean isSafe(double hours) {
            return safeMinutes().isPresent() && hours * 60 >= safeMinutes().getAsDouble();
        }
    }

    /**
     * The choices for a cook; its own set point does not matter.
     *
     * @param cut its cut and trim, if said
     * @throws UnplannableException if a set point lies outside its range, the cook has a fixed stay, or the cut is another
     *     animal's
     */
    public static BathChoices of(
            RuleLibrary library,
            PlannedCook like,
            HeatFigures heat,
            Optional<TrimmedCut> cut,
            List<Boundary> baths,
            List<Double> hours) {
        if (like.bathMinutes().isPresent()) {
            throw new UnplannableException("the choice is of stays too: leave out the time in the bath");
        }
        double[] stays = hours.stream().mapToDouble(stay -> stay * 60).toArray();
        PlannedQuality quality = PlannedQuality.of(QualityModels.of(library), like, heat, cut, stays);
        List<Row> rows = new ArrayList<>();
        for (Boundary bath : baths) {
            PlannedCook cook = like.with(like.thicknessMillimetres(), bath.celsius());
            rows.add(new Row(bath, Plan.of(cook, heat, library), quality.outlooks(bath.celsius(), stays)));
        }
        return new BathChoices(like, hours, rows);
    }

    /** Stays a kitchen reckons with, in hours. */
    public static List<Double> usualHours() {
        return USUAL_HOURS;
    }

    /**
     * Set points from the lowest that can have a plan up, round figures of the authority's leading scale.
     *
     * @throws UnplannableException if the authority names no rule for the food
     */
    public static List<Boundary> usualBaths(PlannedCook like) {
        TemperatureUnit unit = new PlanWording(like.authority().units()).leading();
        double step = unit == TemperatureUnit.FAHRENHEIT ? FAHRENHEIT_STEP : CELSIUS_STEP;
        double lowest = PlanTable.usualBaths(like).get(0).value();
        double first = unit == TemperatureUnit.FAHRENHEIT ? Math.ceil(lowest / step) * step : lowest;
        List<Boundary> baths = new ArrayList<>();
        for (int i = 0; i < USUAL_BATHS; i++) {
            baths.add(new Boundary(first + i * step, unit));
        }
        return List.copyOf(baths);
    }
}
