package org.holdproof.core.kinetics;

import java.util.List;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.rules.GrowthModel;

/**
 * Modelled growth over a stretch of a logged temperature: a come-up, a cooling, a low bath.
 *
 * <p>Growth does not rise with temperature throughout, so that neither end of a reading's tolerance is always the worse.
 * Worst: over each interval the fastest rate at any temperature from the colder reading less the tolerance to the hotter
 * one plus it; in a gap, which hides anything, the fastest rate there is. Nominal: a straight line between readings,
 * integrated exactly. Best: the mirror of worst, the slowest rate at any such temperature, in a gap too.
 */
public final class GrowthScreen {
    private GrowthScreen() {}

    /**
     * Screens each organism. Death is not counted, so that growth at the end of the stretch is its peak.
     *
     * @param trace the stretch; one with fewer than two readings shows nothing and gives no range
     * @param toleranceCelsius how far a reading may lie from the truth, in °C, not negative
     * @param gapMinutes an interval longer than this is a gap
     * @param vegetativeCellsKilled whether a cook before the stretch surely killed all growing cells, so that an organism
     *     with a known lag starts from its spores
     */
    public static List<GrowthRange> of(
            Trace trace,
            List<GrowthChoice> organisms,
            double toleranceCelsius,
            double gapMinutes,
            boolean vegetativeCellsKilled) {
        if (trace.size() < 2) {
            return List.of();
        }
        return organisms.stream()
                .map(organism -> range(trace, organism, toleranceCelsius, gapMinutes, vegetativeCellsKilled))
                .toList();
    }

    private static GrowthRange range(
            Trace trace,
            GrowthChoice organism,
            double toleranceCelsius,
            double gapMinutes,
            boolean vegetativeCellsKilled) {
        Bounded potential = potential(trace, GrowthRate.fastestOf(organism.models()), toleranceCelsius, gapMinutes);
        double start = GrowthRange.start(organism.models());
        double ceiling = organism.models().stream()
                .mapToDouble(GrowthModel::ceilingLog10)
                .max()
                .orElseThrow();
        Bounded withoutLag = increase(GrowthState.withoutLag(start), potential, ceiling);
        return new GrowthRange(
                organism.organism(),
                organism.models(),
                withoutLag,
                organism.lag()
                        .filter(lag -> vegetativeCellsKilled)
                        .map(lag -> new GrowthRange.Lagging(
                                lag, increase(GrowthState.withLag(start, lag.q0()), potential, ceiling))),
                hasGap(trace, gapMinutes));
    }

    private static boolean hasGap(Trace trace, double gapMinutes) {
        for (int i = 0; i + 1 < trace.size(); i++) {
            if (trace.minutesAfter(i) > gapMinutes) {
                return true;
            }
        }
        return false;
    }

    private static Bounded increase(GrowthState start, Bounded potential, double ceilingLog10) {
        return new Bounded(
                start.after(potential.worst(), ceilingLog10).log10PerGram() - start.log10PerGram(),
                start.after(potential.nominal(), ceilingLog10).log10PerGram() - start.log10PerGram(),
                start.after(potential.best(), ceilingLog10).log10PerGram() - start.log10PerGram());
    }

    /**
     * The integral of the growth rate over a trace, in natural-log units: what {@link GrowthState#after} takes. Those of
     * two adjoining traces add up to that of both.
     */
    public static Bounded potential(Trace trace, GrowthRate rate, double toleranceCelsius, double gapMinutes) {
        double worst = 0;
        double nominal = 0;
        double best = 0;
        for (int i = 0; i + 1 < trace.size(); i++) {
            double minutes = trace.minutesAfter(i);
            double hours = minutes / 60;
            double coldest = Math.min(trace.celsius(i), trace.celsius(i + 1)) - toleranceCelsius;
            double hottest = Math.max(trace.celsius(i), trace.celsius(i + 1)) + toleranceCelsius;
            worst += (minutes > gapMinutes ? rate.fastest() : rate.fastest(coldest, hottest)) * hours;
            nominal += rate.alongLine(trace.celsius(i), trace.celsius(i + 1), minutes);
            best += rate.slowest(coldest, hottest) * hours;
        }
        return new Bounded(worst, nominal, best);
    }
}
