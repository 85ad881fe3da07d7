package org.holdproof.core.kinetics;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.GrowthModel;

/**
 * How fast an organism grows at a temperature: by one model, or by the fastest of several at each temperature where
 * nobody knows which of them fits the food. Zero outside the models' ranges.
 */
public final class GrowthRate {
    /** Where two models' rates cross is looked for in steps of this many °C, then found by halving. */
    private static final double SEARCH_CELSIUS = 0.05;

    private static final int HALVINGS = 50;

    private final List<CardinalRate> rates;
    /** Temperatures between which one model is the fastest throughout, rising. */
    private final double[] edges;

    private GrowthRate(List<GrowthModel> models) {
        if (models.isEmpty()) {
            throw new IllegalArgumentException("no growth model");
        }
        rates = models.stream().map(CardinalRate::new).toList();
        Set<Double> found = new TreeSet<>();
        for (int i = 0; i < rates.size(); i++) {
            found.add(rates.get(i).min());
            found.add(rates.get(i).max());
            for (int j = 0; j < i; j++) {
                addCrossings(rates.get(i), rates.get(j), found);
            }
        }
        edges = found.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** The rate by one model. */
    public static GrowthRate of(GrowthModel model) {
        return new GrowthRate(List.of(model));
    }

    /**
     * At each temperature the fastest of several models.
     *
     * @throws IllegalArgumentException if there is none
     */
    public static GrowthRate fastestOf(List<GrowthModel> models) {
        return new GrowthRate(models);
    }

    private static void addCrossings(CardinalRate one, CardinalRate other, Set<Double> found) {
        double from = Math.max(one.min(), other.min());
        double to = Math.min(one.max(), other.max());
        for (double low = from; low < to; low += SEARCH_CELSIUS) {
            double high = Math.min(low + SEARCH_CELSIUS, to);
            double before = one.at(low) - other.at(low);
            double after = one.at(high) - other.at(high);
            if (before * after < 0) {
                found.add(crossing(one, other, low, high));
            }
        }
    }

    private static double crossing(CardinalRate one, CardinalRate other, double low, double high) {
        boolean falling = one.at(low) > other.at(low);
        double from = low;
        double to = high;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (from + to) / 2;
            if (one.at(middle) > other.at(middle) == falling) {
                from = middle;
            } else {
                to = middle;
            }
        }
        return (from + to) / 2;
    }

    /** The temperature, in °C, at and above which nothing grows. */
    public double maxCelsius() {
        return edges[edges.length - 1];
    }

    /** The rate at a temperature in °C, in natural-log units an hour. */
    public double at(double celsius) {
        double fastest = 0;
        for (CardinalRate rate : rates) {
            fastest = Math.max(fastest, rate.at(celsius));
        }
        return fastest;
    }

    /** The fastest rate at any temperature at all, in natural-log units an hour. */
    public double fastest() {
        double fastest = 0;
        for (CardinalRate rate : rates) {
            fastest = Math.max(fastest, rate.optimumPerHour());
        }
        return fastest;
    }

    /** The fastest rate at any temperature from one to another, in natural-log units an hour. */
    public double fastest(double lowCelsius, double highCelsius) {
        double fastest = 0;
        for (CardinalRate rate : rates) {
            fastest = Math.max(fastest, rate.fastest(lowCelsius, highCelsius));
        }
        return fastest;
    }

    /** The slowest rate at any temperature from one to another, in natural-log units an hour. */
    public double slowest(double lowCelsius, double highCelsius) {
        // one model has no dip inside its range; the fastest of several dips only where they change places
        double slowest = Math.min(at(lowCelsius), at(highCelsius));
        for (double edge : edges) {
            if (edge > lowCelsius && edge < highCelsius) {
                slowest = Math.min(slowest, at(edge));
            }
        }
        return slowest;
    }

    /**
     * Growth, in natural-log units, that the rate allows while the food goes from one temperature to another in a
     * straight line. Exact but for rounding: no step length enters.
     */
    public double alongLine(double fromCelsius, double toCelsius, double minutes) {
        double low = Math.min(fromCelsius, toCelsius);
        double high = Math.max(fromCelsius, toCelsius);
        double hours = minutes / 60;
        if (high - low < TemperatureUnit.SLACK_CELSIUS) {
            return at(low) * hours;
        }
        double sum = 0;
        for (int i = 0; i + 1 < edges.length; i++) {
            double from = Math.max(low, edges[i]);
            double to = Math.min(high, edges[i + 1]);
            if (to > from) {
                sum += (to - from) * governing(edges[i], edges[i + 1]).mean(from, to);
            }
        }
        return Math.max(0, sum / (high - low) * hours);
    }

    private CardinalRate governing(double low, double high) {
        double middle = (low + high) / 2;
        CardinalRate governing = rates.get(0);
        for (CardinalRate rate : rates) {
            if (rate.at(middle) > governing.at(middle)) {
                governing = rate;
            }
        }
        return governing;
    }
}
