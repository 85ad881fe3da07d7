package org.holdproof.core.heat;

import java.util.Optional;
import org.holdproof.core.log.Trace;

/**
 * What surrounded a piece while it was heated, as far as the record says.
 *
 * @param hottestSoFar the hottest it can have been up to each instant, logged or by its set point; at least one reading
 * @param logged its readings, where it was logged all the time
 * @param inWater whether it was water all the time: in air heat reaches the surface slowly
 */
public record Surroundings(Trace hottestSoFar, Optional<Trace> logged, boolean inWater) {

    /** @throws IllegalArgumentException if there is no reading */
    public Surroundings {
        if (hottestSoFar.isEmpty() || logged.filter(Trace::isEmpty).isPresent()) {
            throw new IllegalArgumentException("surroundings without a reading");
        }
    }

    /** Water that was logged. */
    public static Surroundings water(Trace logged) {
        return new Surroundings(hottestSoFar(logged), Optional.of(logged), true);
    }

    /** The running maximum of a trace. */
    public static Trace hottestSoFar(Trace trace) {
        long[] millis = new long[trace.size()];
        double[] hottest = new double[trace.size()];
        for (int i = 0; i < hottest.length; i++) {
            millis[i] = trace.millis(i);
            hottest[i] = i == 0 ? trace.celsius(i) : Math.max(hottest[i - 1], trace.celsius(i));
        }
        return new Trace(trace.channel(), millis, hottest);
    }

    /** The hottest it ever was, in °C. */
    public double hottest() {
        return hottestSoFar.celsius(hottestSoFar.size() - 1);
    }
}
