package org.holdproof.core.measure;

import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.TemperatureUnit;

/** The time a trace spends strictly between two temperatures. */
public final class BandTime {
    private BandTime() {}

    /**
     * Minutes in the band. Worst: every interval that may have touched it counts whole. Best: an interval counts only
     * if both its readings were surely inside. Nominal: straight lines between readings.
     *
     * @param lowerCelsius lower end, in °C
     * @param upperCelsius upper end, in °C
     */
    public static Bounded minutes(Trace trace, double lowerCelsius, double upperCelsius, double toleranceCelsius) {
        double worst = 0;
        double nominal = 0;
        double best = 0;
        for (int i = 0; i + 1 < trace.size(); i++) {
            double minutes = trace.minutesAfter(i);
            double cold = Math.min(trace.celsius(i), trace.celsius(i + 1));
            double hot = Math.max(trace.celsius(i), trace.celsius(i + 1));
            boolean touched = hot + toleranceCelsius > lowerCelsius + TemperatureUnit.SLACK_CELSIUS
                    && cold - toleranceCelsius < upperCelsius - TemperatureUnit.SLACK_CELSIUS;
            boolean inside = cold - toleranceCelsius > lowerCelsius && hot + toleranceCelsius < upperCelsius;
            worst += touched ? minutes : 0;
            nominal += minutes * share(cold, hot, lowerCelsius, upperCelsius);
            best += inside ? minutes : 0;
        }
        return new Bounded(worst, nominal, best);
    }

    /** The share of a straight line from {@code cold} to {@code hot} that lies in the band. */
    static double share(double cold, double hot, double lower, double upper) {
        if (hot - cold < TemperatureUnit.SLACK_CELSIUS) {
            return hot > lower + TemperatureUnit.SLACK_CELSIUS && cold < upper - TemperatureUnit.SLACK_CELSIUS ? 1 : 0;
        }
        return Math.max(0, Math.min(hot, upper) - Math.max(cold, lower)) / (hot - cold);
    }
}
