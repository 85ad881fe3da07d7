package org.holdproof.core.heat;

import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.holdproof.core.log.Trace;

/** Made-up logs of made-up pieces, as a probe with noise and a last digit would have logged them. */
final class SyntheticLog {
    static final long ZERO = 1_700_000_000_000L;

    private SyntheticLog() {}

    static double[] minutes(int count, double interval) {
        return IntStream.range(0, count).mapToDouble(i -> i * interval).toArray();
    }

    static Trace trace(String channel, double[] minutes, double[] celsius) {
        long[] millis = new long[minutes.length];
        for (int i = 0; i < minutes.length; i++) {
            millis[i] = ZERO + Math.round(minutes[i] * 60_000);
        }
        return new Trace(channel, millis, celsius);
    }

    /** The readings with Gaussian noise, rounded to the last digit a logger keeps (0: not rounded). */
    static double[] noisy(double[] celsius, double noise, double digit, SplittableRandom random) {
        double[] noisy = new double[celsius.length];
        for (int i = 0; i < celsius.length; i++) {
            double reading = celsius[i] + noise * random.nextGaussian();
            noisy[i] = digit == 0 ? reading : Math.round(reading / digit) * digit;
        }
        return noisy;
    }

    static double[] held(double celsius, int count) {
        return IntStream.range(0, count).mapToDouble(i -> celsius).toArray();
    }
}
