package org.holdproof.core.kinetics;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.rules.ThermalDeath;

/**
 * Log-linear death by the slowest of several lines at each temperature: the largest D-value governs. Nothing below the
 * highest floor, no faster than at the caps.
 */
public final class SlowestDeath {
    private static final List<String> VEGETATIVE = List.of("vegetative-cautious-low", "vegetative-cautious-high");
    private static final String PERFRINGENS_CELLS = "perfringens-cells";

    private final List<ThermalDeath> lines;
    private final List<LethalRate> rates;
    /** Temperatures between which one line is the slowest throughout, rising. */
    private final double[] edges;

    private SlowestDeath(List<ThermalDeath> lines) {
        if (lines.isEmpty()) {
            throw new IllegalArgumentException("no line of death");
        }
        this.lines = List.copyOf(lines);
        rates = lines.stream().map(LethalRate::of).toList();
        Set<Double> found = new TreeSet<>(List.of(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY));
        for (ThermalDeath line : lines) {
            found.add(line.floorCelsius());
            found.add(line.capCelsius());
            for (ThermalDeath other : lines) {
                if (line.zCelsius() != other.zCelsius()) {
                    found.add(crossing(line, other));
                }
            }
        }
        edges = found.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private static double crossing(ThermalDeath one, ThermalDeath other) {
        double difference = Math.log10(one.dMinutes() / other.dMinutes())
                + one.referenceCelsius() / one.zCelsius()
                - other.referenceCelsius() / other.zCelsius();
        return difference / (1 / one.zCelsius() - 1 / other.zCelsius());
    }

    /**
     * The slowest of some lines.
     *
     * @throws IllegalArgumentException if there is none
     */
    public static SlowestDeath of(List<ThermalDeath> lines) {
        return new SlowestDeath(lines);
    }

    /**
     * The cautious line for vegetative cells beyond the regulatory tables, whatever the species: the slower of the two
     * published lines for L. monocytogenes, from 54.4 °C. It says nothing of spores, viruses, parasites, cured, salted or
     * fatty rolled pieces and dry surfaces, nor where the core probe was not at the coldest point.
     *
     * @throws IllegalArgumentException if the library has no such lines
     */
    public static SlowestDeath vegetative(RuleLibrary rules) {
        return new SlowestDeath(VEGETATIVE.stream().map(id -> line(rules, id)).toList());
    }

    /**
     * Growing cells of C. perfringens that saw a slow come-up, from 55 °C. Its spores no such cook kills.
     *
     * @throws IllegalArgumentException if the library has no such line
     */
    public static SlowestDeath perfringensCells(RuleLibrary rules) {
        return new SlowestDeath(List.of(line(rules, PERFRINGENS_CELLS)));
    }

    private static ThermalDeath line(RuleLibrary rules, String id) {
        return rules.rules(ThermalDeath.class)
                .find(id)
                .orElseThrow(() -> new IllegalArgumentException("no kinetics " + id));
    }

    /** The temperature, in °C, below which nothing is credited. */
    public double floorCelsius() {
        return lines.stream().mapToDouble(ThermalDeath::floorCelsius).max().orElseThrow();
    }

    /** Decimal reductions a minute at a temperature in °C. */
    public double log10PerMinute(double celsius) {
        int governing = governing(celsius);
        return rates.get(governing).at(celsius) / lines.get(governing).dMinutes();
    }

    private int governing(double celsius) {
        int governing = 0;
        double slowest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < lines.size(); i++) {
            double rate = rates.get(i).at(celsius) / lines.get(i).dMinutes();
            if (rate < slowest) {
                slowest = rate;
                governing = i;
            }
        }
        return governing;
    }

    /** Decimal reductions while the food goes from one temperature to another in a straight line: the exact integral. */
    public double alongLine(double fromCelsius, double toCelsius, double minutes) {
        double low = Math.min(fromCelsius, toCelsius);
        double high = Math.max(fromCelsius, toCelsius);
        if (high - low < TemperatureUnit.SLACK_CELSIUS) {
            return log10PerMinute(high) * minutes;
        }
        double sum = 0;
        for (int i = 0; i + 1 < edges.length; i++) {
            double from = Math.max(low, edges[i]);
            double to = Math.min(high, edges[i + 1]);
            if (to > from) {
                int governing = governing((from + to) / 2);
                sum += rates.get(governing).equivalentMinutes(from, to, minutes * (to - from) / (high - low))
                        / lines.get(governing).dMinutes();
            }
        }
        return sum;
    }

    /**
     * Decimal reductions over a trace. Worst: each reading less the tolerance, the lower of two readings between them,
     * nothing in a gap. Nominal: a straight line between readings. Best: the mirror of worst, in a gap the hotter of its
     * two ends.
     *
     * @param toleranceCelsius how far a reading may lie from the truth, in °C, not negative
     * @param gapMinutes an interval longer than this is a gap
     */
    public Bounded log10Reduction(Trace trace, double toleranceCelsius, double gapMinutes) {
        double worst = 0;
        double nominal = 0;
        double best = 0;
        for (int i = 0; i + 1 < trace.size(); i++) {
            double minutes = trace.minutesAfter(i);
            double first = trace.celsius(i);
            double second = trace.celsius(i + 1);
            boolean seen = minutes <= gapMinutes;
            worst += seen ? log10PerMinute(Math.min(first, second) - toleranceCelsius) * minutes : 0;
            nominal += alongLine(first, second, minutes);
            best += log10PerMinute(Math.max(first, second) + toleranceCelsius) * minutes;
        }
        return new Bounded(worst, nominal, best);
    }

    /** The lines it takes the slowest of. */
    public List<ThermalDeath> lines() {
        return lines;
    }
}
