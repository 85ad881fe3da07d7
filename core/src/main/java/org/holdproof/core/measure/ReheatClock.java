package org.holdproof.core.measure;

import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.TemperatureUnit;

/** The time a reheated food takes from the cold to its target. */
public final class ReheatClock {
    private ReheatClock() {}

    /**
     * Minutes from leaving one temperature upward to first reaching another; infinite where the target is not reached.
     * A trace that begins above the first temperature counts from its first reading.
     *
     * @param fromCelsius where the clock starts, in °C
     * @param targetCelsius where it stops, in °C
     * @throws IllegalArgumentException if the trace is empty
     */
    public static Bounded minutes(Trace trace, double fromCelsius, double targetCelsius, double toleranceCelsius) {
        if (trace.isEmpty()) {
            throw new IllegalArgumentException("no readings to time");
        }
        double target = targetCelsius - TemperatureUnit.SLACK_CELSIUS;
        int surely = firstAtOrAbove(trace, target + toleranceCelsius);
        int nominally = firstAtOrAbove(trace, target);
        int possibly = firstAtOrAbove(trace, target - toleranceCelsius);
        double from = fromCelsius + TemperatureUnit.SLACK_CELSIUS;
        int surelyCold = lastAtOrBelow(trace, from - toleranceCelsius, possibly);
        int nominallyCold = lastAtOrBelow(trace, from, nominally);
        int possiblyCold = lastAtOrBelow(trace, from + toleranceCelsius, possibly);
        double worst = arrival(trace, surely) - minutesAt(trace, Math.max(0, surelyCold));
        double nominal = crossing(trace, nominally, targetCelsius) - leaving(trace, nominallyCold, fromCelsius);
        double best = minutesAt(trace, Math.max(0, possibly - 1))
                - minutesAt(trace, Math.min(possiblyCold + 1, trace.size() - 1));
        if (possibly == trace.size()) {
            best = Double.POSITIVE_INFINITY;
        }
        return new Bounded(worst, nominal, Math.max(0, Math.min(best, nominal)));
    }

    private static double arrival(Trace trace, int i) {
        return i == trace.size() ? Double.POSITIVE_INFINITY : minutesAt(trace, i);
    }

    private static double crossing(Trace trace, int i, double celsius) {
        if (i == trace.size()) {
            return Double.POSITIVE_INFINITY;
        }
        return i == 0 ? 0 : between(trace, i - 1, celsius);
    }

    private static double leaving(Trace trace, int lastCold, double celsius) {
        return lastCold < 0 || lastCold == trace.size() - 1 ? 0 : between(trace, lastCold, celsius);
    }

    private static double between(Trace trace, int i, double celsius) {
        double share = (celsius - trace.celsius(i)) / (trace.celsius(i + 1) - trace.celsius(i));
        return minutesAt(trace, i) + Math.min(1, Math.max(0, share)) * trace.minutesAfter(i);
    }

    private static int firstAtOrAbove(Trace trace, double celsius) {
        int i = 0;
        while (i < trace.size() && trace.celsius(i) < celsius) {
            i++;
        }
        return i;
    }

    private static int lastAtOrBelow(Trace trace, double celsius, int before) {
        int i = Math.min(before, trace.size()) - 1;
        while (i >= 0 && trace.celsius(i) > celsius) {
            i--;
        }
        return i;
    }

    private static double minutesAt(Trace trace, int i) {
        return (trace.millis(i) - trace.firstMillis()) / 60_000.0;
    }
}
