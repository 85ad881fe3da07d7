package org.holdproof.core.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.verdict.Verdict;

/**
 * Thickness by set point: the time in the bath that covers the worst, as {@link Plan} has it; a cell without a plan is
 * empty.
 */
public final class PlanTable {
    private static final double[] USUAL_THICKNESSES = {10, 15, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70};
    private static final int USUAL_BATHS = 9;
    private static final double FAHRENHEIT_STEP = 3;
    private static final double CELSIUS_STEP = 2;

    private final PlannedCook like;
    private final HeatFigures heat;
    private final List<Double> thicknesses;
    private final List<Boundary> baths;
    private final Cell[][] cells;

    private PlanTable(
            PlannedCook like, HeatFigures heat, List<Double> thicknesses, List<Boundary> baths, Cell[][] cells) {
        this.like = like;
        this.heat = heat;
        this.thicknesses = List.copyOf(thicknesses);
        this.baths = List.copyOf(baths);
        this.cells = cells;
    }

    /**
     * A table for cooks like one; its own thickness and set point do not matter.
     *
     * @param thicknessesMillimetres its rows
     * @param baths its columns
     * @throws UnplannableException if a thickness or a set point lies outside its range, the authority names no rule
     *     for the food, or the cook has a smoke step or a fixed time in the bath
     */
    public static PlanTable of(
            PlannedCook like, HeatFigures heat, List<Double> thicknessesMillimetres, List<Boundary> baths) {
        if (like.smoke().isPresent() || like.bathMinutes().isPresent()) {
            throw new UnplannableException(
                    "a table is of baths alone: leave out the smoke step and the time in the bath");
        }
        Pasteurization rule = rule(like);
        Cell[][] cells = new Cell[thicknessesMillimetres.size()][baths.size()];
        for (int row = 0; row < cells.length; row++) {
            double thickness = thicknessesMillimetres.get(row);
            CookSimulation simulation =
                    new CookSimulation(like.with(thickness, baths.get(0).celsius()), heat);
            CoreRise planned = simulation.plannedRise();
            CoreRise slowest = simulation.slowestRise();
            for (int column = 0; column < baths.size(); column++) {
                PlannedCook cook = like.with(thickness, baths.get(column).celsius());
                cells[row][column] = cell(cook, rule, planned, slowest);
            }
        }
        return new PlanTable(like, heat, thicknessesMillimetres, baths, cells);
    }

    /**
     * One time in the bath.
     *
     * @param minutes not a number: no safe plan
     * @param comeUpUnproven whether a limit on the heating is not kept at worst
     */
    private record Cell(double minutes, boolean comeUpUnproven) {
        static final Cell NONE = new Cell(Double.NaN, false);
    }

    private static Pasteurization rule(PlannedCook like) {
        Optional<Pasteurization> rule =
                Pasteurization.of(like.authority(), like.species(), like.form(), like.fatPercent());
        return rule.orElseThrow(
                () -> new UnplannableException(NoPlan.unruled(like).reason()));
    }

    private static Cell cell(PlannedCook cook, Pasteurization rule, CoreRise plannedRise, CoreRise slowestRise) {
        if (cook.bathCelsius() < rule.lowestCelsius()) {
            return Cell.NONE;
        }
        CoreCurve planned = plannedRise.curve(cook.startCelsius(), cook.bathCelsius(), 0);
        CoreCurve slowest = slowestRise.curve(cook.startCelsius(), cook.bathCelsius() - CookSimulation.BATH_CELSIUS, 0);
        OptionalDouble safe = rule.safeMinute(planned);
        OptionalDouble covering = rule.safeMinute(slowest);
        if (safe.isEmpty() || covering.isEmpty()) {
            return Cell.NONE;
        }
        double longest = Math.max(safe.getAsDouble(), covering.getAsDouble());
        List<TimeInRange> ranges = Plan.ranges(cook, TimedCores.of(slowest, longest, planned, safe.getAsDouble()));
        if (ranges.stream().anyMatch(range -> range.verdict() == Verdict.NOT_MET)) {
            return Cell.NONE;
        }
        return new Cell(longest, ranges.stream().anyMatch(range -> range.verdict() != Verdict.MET));
    }

    /** Thicknesses a kitchen has, in mm: those the published bath-time tables hold. */
    public static List<Double> usualThicknesses() {
        List<Double> usual = new ArrayList<>();
        for (double thickness : USUAL_THICKNESSES) {
            usual.add(thickness);
        }
        return List.copyOf(usual);
    }

    /**
     * Set points from the lowest that can have a plan on, whole degrees of the authority's leading scale.
     *
     * @throws UnplannableException if the authority names no rule for the food
     */
    public static List<Boundary> usualBaths(PlannedCook like) {
        TemperatureUnit unit = new PlanWording(like.authority().units()).leading();
        double lowest = unit.fromCelsius(rule(like).lowestCelsius() + 2 * CookSimulation.BATH_CELSIUS);
        double step = unit == TemperatureUnit.FAHRENHEIT ? FAHRENHEIT_STEP : CELSIUS_STEP;
        List<Boundary> baths = new ArrayList<>();
        for (int i = 0; i < USUAL_BATHS; i++) {
            baths.add(new Boundary(Math.ceil(lowest - 1e-9) + i * step, unit));
        }
        return List.copyOf(baths);
    }

    /** What {@link #text} puts behind a time whose come-up is not kept at worst. */
    public static final String UNPROVEN = "!";

    /** What the mark means, a sentence. */
    public static final String UNPROVEN_WORDS =
            UNPROVEN + " come-up not kept at worst: only a log of the core proves it.";

    /**
     * A cell as a wall shows it, up to the next five minutes: {@code 3 h 45}, {@code 0 h 50}; a dash without a plan;
     * {@value #UNPROVEN} behind it where the come-up is not kept at worst.
     */
    public String text(int row, int column) {
        if (minutes(row, column).isEmpty()) {
            return "–";
        }
        long whole = 5 * (long) Math.ceil(cells[row][column].minutes() / 5 - 1e-9);
        String mark = isComeUpUnproven(row, column) ? UNPROVEN : "";
        return whole / 60 + " h " + String.format(Locale.ROOT, "%02d", whole % 60) + mark;
    }

    /** The cook every cell is like, but for thickness and set point. */
    public PlannedCook like() {
        return like;
    }

    public HeatFigures heat() {
        return heat;
    }

    /** The rows, in mm. */
    public List<Double> thicknessesMillimetres() {
        return thicknesses;
    }

    /** The columns. */
    public List<Boundary> baths() {
        return baths;
    }

    /** Minutes in the bath that cover the worst; empty where there is no safe plan. */
    public OptionalDouble minutes(int row, int column) {
        double cell = cells[row][column].minutes();
        return Double.isNaN(cell) ? OptionalDouble.empty() : OptionalDouble.of(cell);
    }

    /** Whether a limit on the heating is kept as planned but not at worst. */
    public boolean isComeUpUnproven(int row, int column) {
        return cells[row][column].comeUpUnproven();
    }

    /** Whether any cell's is. */
    public boolean hasComeUpUnproven() {
        return Stream.of(cells).flatMap(Stream::of).anyMatch(Cell::comeUpUnproven);
    }
}
