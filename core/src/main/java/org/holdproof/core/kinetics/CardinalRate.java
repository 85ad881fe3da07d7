package org.holdproof.core.kinetics;

import org.holdproof.core.rules.GrowthModel;

/**
 * The growth rate by cardinal temperatures (Rosso and others 1993, Journal of Theoretical Biology 162:447-463): with
 * {@code a = Topt - Tmin},
 *
 * <pre>mu = mu_opt (T - Tmax)(T - Tmin)^2 / (a [a (T - Topt) - (Topt - Tmax)(Topt + Tmin - 2 T)])</pre>
 *
 * between Tmin and Tmax, and 0 elsewhere. It rises to Topt and falls from there.
 */
final class CardinalRate {
    /** Largest relative slope of the denominator over half a piece for which the series is used unsplit. */
    private static final double STEEPEST = 0.3;

    private final double min;
    private final double optimum;
    private final double max;
    private final double optimumPerHour;
    private final double denominatorSlope;

    CardinalRate(GrowthModel model) {
        min = model.minCelsius();
        optimum = model.optimumCelsius();
        max = model.maxCelsius();
        optimumPerHour = model.optimumLnPerHour();
        denominatorSlope = (optimum - min) * ((optimum - min) + 2 * (optimum - max));
    }

    double min() {
        return min;
    }

    double max() {
        return max;
    }

    double optimumPerHour() {
        return optimumPerHour;
    }

    /** The rate at a temperature in °C, in natural-log units an hour. */
    double at(double celsius) {
        if (celsius <= min || celsius >= max) {
            return 0;
        }
        return optimumPerHour * (celsius - max) * (celsius - min) * (celsius - min) / denominator(celsius);
    }

    /** The fastest rate between two temperatures. */
    double fastest(double lowCelsius, double highCelsius) {
        return at(Math.min(Math.max(optimum, lowCelsius), highCelsius));
    }

    private double denominator(double celsius) {
        return (optimum - min)
                * ((optimum - min) * (celsius - optimum) - (optimum - max) * (optimum + min - 2 * celsius));
    }

    /**
     * Mean rate over the temperatures between two, both inside the growth range: exact but for rounding. The equation
     * is a cubic over a straight line; about the middle of the piece the line's reciprocal is a geometric series,
     * integrated term by term. A piece too wide for it to converge quickly is halved.
     */
    double mean(double lowCelsius, double highCelsius) {
        double middle = (lowCelsius + highCelsius) / 2;
        double half = (highCelsius - lowCelsius) / 2;
        double line = denominator(middle);
        double slope = denominatorSlope * half / line;
        if (Math.abs(slope) > STEEPEST) {
            return (mean(lowCelsius, middle) + mean(middle, highCelsius)) / 2;
        }
        double above = middle - min;
        double below = middle - max;
        double square = slope * slope;
        double fifth = fifths(square);
        double third = 1.0 / 3 + square * fifth;
        double first = 1 + square * third;
        double cubic = above * above * below * first
                - (above * above + 2 * above * below) * half * slope * third
                + (2 * above + below) * half * half * third
                - half * half * half * slope * fifth;
        return optimumPerHour * cubic / line;
    }

    /** Sum of {@code square^i / (2 i + 5)}. */
    private static double fifths(double square) {
        double sum = 0;
        double power = 1;
        for (int divisor = 5; power > 1e-18; divisor += 2) {
            sum += power / divisor;
            power *= square;
        }
        return sum;
    }
}
