package org.holdproof.core.heat;

import org.holdproof.core.log.Trace;

/** A trace with readings evenly left out: conduction smooths what lies between, and every reading costs a step. */
public final class Thinned {
    private Thinned() {}

    /** At most about {@code most} readings, the first and the last among them. */
    public static Trace to(Trace trace, int most) {
        int size = trace.size();
        if (size <= most) {
            return trace;
        }
        long[] millis = new long[most];
        double[] celsius = new double[most];
        for (int i = 0; i < most; i++) {
            int from = (int) ((long) i * (size - 1) / (most - 1));
            millis[i] = trace.millis(from);
            celsius[i] = trace.celsius(from);
        }
        return new Trace(trace.channel(), millis, celsius);
    }
}
