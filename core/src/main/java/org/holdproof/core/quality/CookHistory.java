package org.holdproof.core.quality;

import java.util.Arrays;
import org.holdproof.core.log.Trace;

/** A piece's temperatures through a cook, planned or logged: its core and its mean, straight between the points. */
public final class CookHistory {
    private final double[] minutes;
    private final double[] coreCelsius;
    private final double[] meanCelsius;

    private CookHistory(double[] minutes, double[] coreCelsius, double[] meanCelsius) {
        this.minutes = minutes;
        this.coreCelsius = coreCelsius;
        this.meanCelsius = meanCelsius;
    }

    /**
     * A history of core and mean.
     *
     * @param minutes strictly rising, at least one
     * @param coreCelsius at the centre
     * @param meanCelsius over the volume
     * @throws IllegalArgumentException if the lengths differ, the minutes do not rise or a value is not finite
     */
    public static CookHistory of(double[] minutes, double[] coreCelsius, double[] meanCelsius) {
        if (minutes.length == 0 || minutes.length != coreCelsius.length || minutes.length != meanCelsius.length) {
            throw new IllegalArgumentException(
                    minutes.length + " minutes, " + coreCelsius.length + " cores, " + meanCelsius.length + " means");
        }
        for (int i = 0; i < minutes.length; i++) {
            boolean rises = i == 0 || minutes[i] > minutes[i - 1];
            if (!rises
                    || !Double.isFinite(minutes[i])
                    || !Double.isFinite(coreCelsius[i])
                    || !Double.isFinite(meanCelsius[i])) {
                throw new IllegalArgumentException("point " + i + ": minute " + minutes[i] + ", core " + coreCelsius[i]
                        + " °C, mean " + meanCelsius[i] + " °C");
            }
        }
        return new CookHistory(minutes.clone(), coreCelsius.clone(), meanCelsius.clone());
    }

    /**
     * A history of which only the core is known. While a piece heats its core lags the mean, so that the loss of a short
     * cook is understated; in a hold the two meet.
     *
     * @see #of(double[], double[], double[])
     */
    public static CookHistory ofCore(double[] minutes, double[] coreCelsius) {
        return of(minutes, coreCelsius, coreCelsius);
    }

    /**
     * A logged core, from its first reading on.
     *
     * @throws IllegalArgumentException if there is no reading
     */
    public static CookHistory ofCore(Trace core) {
        double[] minutes = new double[core.size()];
        double[] celsius = new double[core.size()];
        for (int i = 0; i < minutes.length; i++) {
            minutes[i] = (core.millis(i) - core.firstMillis()) / 60_000.0;
            celsius[i] = core.celsius(i);
        }
        return ofCore(minutes, celsius);
    }

    public int size() {
        return minutes.length;
    }

    /** The minute of point {@code i}. */
    public double minute(int i) {
        return minutes[i];
    }

    /** The core at point {@code i}, in °C. */
    public double coreCelsius(int i) {
        return coreCelsius[i];
    }

    /** The mean over the volume at point {@code i}, in °C. */
    public double meanCelsius(int i) {
        return meanCelsius[i];
    }

    public double lastMinute() {
        return minutes[minutes.length - 1];
    }

    /** The hottest the core was, in °C. */
    public double hottestCoreCelsius() {
        return Arrays.stream(coreCelsius).max().orElseThrow();
    }

    /** The mean of the core over the whole history, in °C. */
    double meanCoreCelsius() {
        double sum = 0;
        for (int i = 1; i < minutes.length; i++) {
            sum += (coreCelsius[i - 1] + coreCelsius[i]) / 2 * (minutes[i] - minutes[i - 1]);
        }
        return minutes.length == 1 ? coreCelsius[0] : sum / (lastMinute() - minutes[0]);
    }

    /** How long the core was at a temperature or above, in minutes. */
    public double minutesAtOrAbove(double celsius) {
        double above = 0;
        for (int i = 1; i < minutes.length; i++) {
            double cold = Math.min(coreCelsius[i - 1], coreCelsius[i]);
            double hot = Math.max(coreCelsius[i - 1], coreCelsius[i]);
            double share = cold >= celsius ? 1 : hot < celsius ? 0 : (hot - celsius) / (hot - cold);
            above += share * (minutes[i] - minutes[i - 1]);
        }
        return above;
    }

    /**
     * The history up to a minute: cut short, or held at its last temperatures until then.
     *
     * @throws IllegalArgumentException if the minute is before the first point
     */
    public CookHistory until(double minute) {
        if (!(minute >= minutes[0])) {
            throw new IllegalArgumentException("minute " + minute + " is before the first, " + minutes[0]);
        }
        int kept = 0;
        while (kept < minutes.length && minutes[kept] < minute) {
            kept++;
        }
        double[] at = Arrays.copyOf(minutes, kept + 1);
        double[] core = Arrays.copyOf(coreCelsius, kept + 1);
        double[] mean = Arrays.copyOf(meanCelsius, kept + 1);
        at[kept] = minute;
        if (kept == minutes.length) {
            core[kept] = coreCelsius[kept - 1];
            mean[kept] = meanCelsius[kept - 1];
        } else if (kept > 0) {
            double share = (minute - minutes[kept - 1]) / (minutes[kept] - minutes[kept - 1]);
            core[kept] = coreCelsius[kept - 1] + share * (coreCelsius[kept] - coreCelsius[kept - 1]);
            mean[kept] = meanCelsius[kept - 1] + share * (meanCelsius[kept] - meanCelsius[kept - 1]);
        }
        return new CookHistory(at, core, mean);
    }
}
