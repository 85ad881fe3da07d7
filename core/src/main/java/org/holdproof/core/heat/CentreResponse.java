package org.holdproof.core.heat;

import java.util.Arrays;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.commons.math3.special.BesselJ;
import org.apache.commons.math3.special.Gamma;

/**
 * The centre of a body whose surface takes the medium's temperature at once, by its modes: each closes on the medium
 * like {@code e^(−z² Fo)}, and the centre is their weighted sum. For a shape factor β the {@code z} are the zeros of the
 * Bessel function of order {@code ν = (β − 1)/2}, and a mode's weight at the centre is
 * {@code 2 (z/2)^ν / (Γ(ν + 1) z J_(ν+1)(z))} (Carslaw and Jaeger 1959). Exact for a medium that runs straight from one
 * instant to the next, but for the modes left out, which are taken to have closed.
 */
final class CentreResponse {
    /** Modes beyond this many show within a second of a jump only. */
    private static final int MOST_MODES = 80;

    /** A mode whose exponent has passed this has closed. */
    private static final double CLOSED = 20;

    private static final Map<Double, CentreResponse> KNOWN = new ConcurrentHashMap<>();

    private final double order;
    private final double[] squares = new double[MOST_MODES];
    private final double[] weights = new double[MOST_MODES];
    private int known;
    private final double steepest;

    private CentreResponse(double shapeFactor) {
        order = (shapeFactor - 1) / 2;
        steepest = steepest(16);
    }

    /** The response of a shape, β from 0 (slab) to 2 (sphere). */
    static CentreResponse of(double shapeFactor) {
        return KNOWN.computeIfAbsent(shapeFactor, CentreResponse::new);
    }

    /** The largest rate at which the centre can answer a jump of 1 at the surface, in 1 per unit of Fourier number. */
    double steepest() {
        return steepest;
    }

    private double steepest(int modes) {
        prepare(modes);
        double largest = 0;
        // every shape's centre is steepest between these; its peak is flat, so that the step costs less than 1e-4
        for (double fourier = 0.02; fourier < 0.25; fourier += 0.001) {
            double rate = 0;
            for (int n = 0; n < modes; n++) {
                rate += weights[n] * squares[n] * Math.exp(-squares[n] * fourier);
            }
            largest = Math.max(largest, rate);
        }
        return largest;
    }

    /**
     * The centre's temperature at the asked minutes.
     *
     * @param startCelsius throughout at minute 0
     * @param fourierAMinute the Fourier number one minute adds
     * @param atMinutes ascending, from 0
     */
    double[] follow(double startCelsius, MediumSchedule medium, double fourierAMinute, double[] atMinutes) {
        int modes = modes(fourierAMinute, atMinutes);
        double[] rate = new double[modes];
        // the weights alternate in sign: halving the last one used makes their sum 1 nearly
        double[] weight = new double[modes];
        double leftWeight = 1;
        double leftLag = 1 / (4 * (order + 1));
        for (int n = 0; n < modes; n++) {
            rate[n] = squares[n] * fourierAMinute;
            weight[n] = n == modes - 1 ? weights[n] / 2 : weights[n];
            leftWeight -= weight[n];
            leftLag -= weight[n] / squares[n];
        }
        Modes run = new Modes(rate, startCelsius);
        double[] found = new double[atMinutes.length];
        int segment = 0;
        double clock = 0;
        for (int i = 0; i < found.length; i++) {
            while (segment + 1 < medium.segments() && medium.endMinute(segment) < atMinutes[i]) {
                run.advance(medium, segment, clock, medium.endMinute(segment));
                clock = medium.endMinute(segment);
                segment++;
            }
            run.advance(medium, segment, clock, atMinutes[i]);
            clock = atMinutes[i];
            double celsius =
                    leftWeight * medium.celsius(segment, clock) - leftLag * medium.slope(segment) / fourierAMinute;
            for (int n = 0; n < modes; n++) {
                celsius += weight[n] * run.celsius[n];
            }
            found[i] = clock == 0 ? startCelsius : celsius;
        }
        return found;
    }

    /** As many modes as have not closed within a usual step. */
    private int modes(double fourierAMinute, double[] atMinutes) {
        double usual = atMinutes[atMinutes.length - 1] / atMinutes.length;
        int modes = 8;
        // the n-th zero lies near nπ
        while (modes < MOST_MODES && Math.PI * Math.PI * modes * modes * fourierAMinute * usual < CLOSED) {
            modes += 8;
        }
        prepare(modes);
        return modes;
    }

    private synchronized void prepare(int modes) {
        for (; known < modes; known++) {
            double z = zero(known + 1);
            squares[known] = z * z;
            weights[known] = 2 * Math.pow(z / 2, order) / (Gamma.gamma(order + 1) * z * BesselJ.value(order + 1, z));
        }
    }

    /** The n-th zero of the Bessel function, from McMahon's first terms by Newton's method. */
    private double zero(int n) {
        double far = (n + order / 2 - 0.25) * Math.PI;
        double z = far - (4 * order * order - 1) / (8 * far);
        for (int step = 0; step < 20; step++) {
            double next = BesselJ.value(order + 1, z);
            double value = 2 * (order + 1) / z * next - BesselJ.value(order + 2, z);
            double move = value / (order / z * value - next);
            z -= move;
            if (Math.abs(move) < 1e-12 * z) {
                break;
            }
        }
        return z;
    }

    /** Every mode's temperature as time goes on. */
    private static final class Modes {
        private final double[] rate;
        private final double[] celsius;
        private final double[] left;
        private double step = Double.NaN;

        Modes(double[] rate, double startCelsius) {
            this.rate = rate;
            celsius = new double[rate.length];
            left = new double[rate.length];
            Arrays.fill(celsius, startCelsius);
        }

        void advance(MediumSchedule medium, int segment, double fromMinute, double toMinute) {
            double minutes = toMinute - fromMinute;
            if (!(minutes > 0)) {
                return;
            }
            if (minutes != step) {
                for (int n = 0; n < rate.length; n++) {
                    left[n] = Math.exp(-rate[n] * minutes);
                }
                step = minutes;
            }
            double before = medium.celsius(segment, fromMinute);
            double slope = medium.slope(segment);
            double after = before + slope * minutes;
            for (int n = 0; n < rate.length; n++) {
                double behind = slope / rate[n];
                celsius[n] = after - behind + (celsius[n] - before + behind) * left[n];
            }
        }
    }
}
