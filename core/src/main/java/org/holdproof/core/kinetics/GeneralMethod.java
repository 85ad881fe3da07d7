package org.holdproof.core.kinetics;

import java.util.ArrayList;
import java.util.List;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.rules.ThermalDeath;

/**
 * LethalityMargin lethality of a logged temperature, several organisms in one pass.
 *
 * <p>Worst: each reading less the tolerance, the lower of two readings between them, nothing in a gap. Nominal: a
 * straight line between readings. Best: the mirror of worst, in a gap the hotter of its two ends.
 */
public final class GeneralMethod {
    private final List<ThermalDeath> organisms;
    private final LethalRate[] rates;
    private final double toleranceCelsius;
    private final double gapMinutes;

    /**
     * @param toleranceCelsius how far a reading may lie from the truth, in °C, not negative
     * @param gapMinutes an interval longer than this is a gap
     */
    public GeneralMethod(List<ThermalDeath> organisms, double toleranceCelsius, double gapMinutes) {
        this.organisms = List.copyOf(organisms);
        this.rates = organisms.stream().map(LethalRate::of).toArray(LethalRate[]::new);
        this.toleranceCelsius = toleranceCelsius;
        this.gapMinutes = gapMinutes;
    }

    /** Log10 reductions of each organism over the whole trace, in the organisms' order. */
    public List<Bounded> log10Reductions(Trace trace) {
        double[] worst = new double[rates.length];
        double[] nominal = new double[rates.length];
        double[] best = new double[rates.length];
        for (int i = 0; i + 1 < trace.size(); i++) {
            add(trace, i, worst, nominal, best);
        }
        List<Bounded> reductions = new ArrayList<>(rates.length);
        for (int k = 0; k < rates.length; k++) {
            double d = organisms.get(k).dMinutes();
            reductions.add(new Bounded(worst[k] / d, nominal[k] / d, best[k] / d));
        }
        return reductions;
    }

    /** Log10 reduction of the first organism after each reading. */
    public Bounded[] cumulative(Trace trace) {
        double d = organisms.get(0).dMinutes();
        double[] worst = new double[rates.length];
        double[] nominal = new double[rates.length];
        double[] best = new double[rates.length];
        Bounded[] curve = new Bounded[trace.size()];
        for (int i = 0; i < trace.size(); i++) {
            if (i > 0) {
                add(trace, i - 1, worst, nominal, best);
            }
            curve[i] = new Bounded(worst[0] / d, nominal[0] / d, best[0] / d);
        }
        return curve;
    }

    private void add(Trace trace, int i, double[] worst, double[] nominal, double[] best) {
        double minutes = trace.minutesAfter(i);
        double first = trace.celsius(i);
        double second = trace.celsius(i + 1);
        double coldest = Math.min(first, second) - toleranceCelsius;
        double hottest = Math.max(first, second) + toleranceCelsius;
        boolean seen = minutes <= gapMinutes;
        for (int k = 0; k < rates.length; k++) {
            worst[k] += seen ? rates[k].at(coldest) * minutes : 0;
            nominal[k] += rates[k].equivalentMinutes(first, second, minutes);
            best[k] += rates[k].at(hottest) * minutes;
        }
    }
}
