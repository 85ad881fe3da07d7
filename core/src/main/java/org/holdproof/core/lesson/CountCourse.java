package org.holdproof.core.lesson;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.kinetics.GrowthChoice;
import org.holdproof.core.kinetics.GrowthRate;
import org.holdproof.core.kinetics.GrowthState;
import org.holdproof.core.kinetics.GrowthThenDeath;
import org.holdproof.core.kinetics.SlowestDeath;
import org.holdproof.core.log.Trace;
import org.holdproof.core.rules.Citation;
import org.holdproof.core.rules.GrowthLag;
import org.holdproof.core.rules.GrowthModel;
import org.holdproof.core.rules.GrowthModel.Concern;
import org.holdproof.core.rules.RuleLibrary;

/**
 * The count of one organism's growing cells along a core's temperature, as change in logs from the start: the high end
 * without lag, the low end with one, where a lag is known. Spores are not counted: no such bath kills them.
 *
 * <p>Direction and order of size, not a safety limit.
 */
public final class CountCourse {
    /** The organism whose cells saw the slow come-up their own line of death stands for. */
    static final String PERFRINGENS = "C. perfringens";

    private final GrowthChoice choice;
    private final Trace core;
    private final double start;
    private final GrowthThenDeath.Course high;
    private final Optional<GrowthThenDeath.Course> low;

    private CountCourse(
            GrowthChoice choice,
            Trace core,
            double start,
            GrowthThenDeath.Course high,
            Optional<GrowthThenDeath.Course> low) {
        this.choice = choice;
        this.core = core;
        this.start = start;
        this.high = high;
        this.low = low;
    }

    /** The courses of every organism the species is screened for. */
    static List<CountCourse> along(Trace core, RuleLibrary rules, String species) {
        return GrowthChoice.forSpecies(rules, species).stream()
                .map(choice -> of(core, choice, death(rules, choice.organism())))
                .toList();
    }

    private static SlowestDeath death(RuleLibrary rules, String organism) {
        return organism.equals(PERFRINGENS) ? SlowestDeath.perfringensCells(rules) : SlowestDeath.vegetative(rules);
    }

    private static CountCourse of(Trace core, GrowthChoice choice, SlowestDeath death) {
        double start = choice.models().stream()
                .mapToDouble(GrowthModel::startLog10)
                .max()
                .orElseThrow();
        double ceiling = choice.models().stream()
                .mapToDouble(GrowthModel::ceilingLog10)
                .max()
                .orElseThrow();
        GrowthThenDeath law = new GrowthThenDeath(GrowthRate.fastestOf(choice.models()), ceiling, death);
        return new CountCourse(
                choice,
                core,
                start,
                law.along(core, GrowthState.withoutLag(start)),
                choice.lag().map(lag -> law.along(core, GrowthState.withLag(start, lag.q0()))));
    }

    public String organism() {
        return choice.organism();
    }

    public List<GrowthModel> models() {
        return choice.models();
    }

    /** The lag the low end counts; empty where none is known and only the high end stands. */
    public Optional<GrowthLag> lag() {
        return choice.lag();
    }

    /** The count assumed at the start, in log10 CFU/g. */
    public double startLog10() {
        return start;
    }

    public int size() {
        return core.size();
    }

    /** Hours from the start to reading {@code i}. */
    public double hours(int i) {
        return (core.millis(i) - core.firstMillis()) / 3_600_000.0;
    }

    /** The change without lag at reading {@code i}, in log10. */
    public double high(int i) {
        return high.log10PerGram(i) - start;
    }

    /** The change with lag at reading {@code i}, in log10; without a known lag the same as {@link #high}. */
    public double low(int i) {
        return low.orElse(high).log10PerGram(i) - start;
    }

    /** The largest change on the way, without lag, in log10. */
    public double peakHigh() {
        return high.peakLog10PerGram() - start;
    }

    /** The largest change on the way, with lag, in log10. */
    public double peakLow() {
        return low.orElse(high).peakLog10PerGram() - start;
    }

    /** The change at the end, without lag, in log10. */
    public double endHigh() {
        return high(size() - 1);
    }

    /** The change at the end, with lag, in log10. */
    public double endLow() {
        return low(size() - 1);
    }

    /** The largest change on the way in whole logs: {@code +5 to +7}. */
    public String peakText() {
        return low.isPresent() ? WholeLogs.range(peakLow(), peakHigh()) : WholeLogs.upTo(peakHigh());
    }

    /** The change at the end in whole logs. */
    public String endText() {
        return low.isPresent() ? WholeLogs.range(endLow(), endHigh()) : WholeLogs.upTo(endHigh());
    }

    /** The count that is a danger in itself, as a change from the start in log10. */
    public OptionalDouble concernChange() {
        return concern().isPresent() ? OptionalDouble.of(concern().get().log10() - start) : OptionalDouble.empty();
    }

    Optional<Concern> concern() {
        return choice.models().stream()
                .flatMap(model -> model.concern().stream())
                .findFirst();
    }

    /** When the high end first reaches the count that is a danger in itself, in hours; empty if it does not. */
    public OptionalDouble concernHours() {
        OptionalDouble change = concernChange();
        if (change.isEmpty()) {
            return OptionalDouble.empty();
        }
        for (int i = 0; i < size(); i++) {
            if (high(i) >= change.getAsDouble()) {
                return OptionalDouble.of(i == 0 ? hours(i) : hoursAt(change.getAsDouble(), i));
            }
        }
        return OptionalDouble.empty();
    }

    /** Between two points of the course, straight in log10: the growth of either side of an hour is not put off to it. */
    private double hoursAt(double change, int after) {
        double part = (change - high(after - 1)) / (high(after) - high(after - 1));
        return hours(after - 1) + part * (hours(after) - hours(after - 1));
    }

    List<Citation> citations() {
        return choice.models().stream().map(GrowthModel::citation).toList();
    }
}
