package org.holdproof.core.heat;

import java.util.Arrays;
import org.holdproof.core.log.Trace;

/** Readings as a running median has them, so that a few strays move nothing. */
final class Steadied {
    private Steadied() {}

    /**
     * The median of each reading and those around it; of an even number, at the ends, the lower.
     *
     * @param strays how many strays in a row shall move nothing: as many readings are taken on either side
     */
    static double[] of(Trace trace, int strays) {
        double[] steady = new double[trace.size()];
        double[] around = new double[2 * strays + 1];
        for (int i = 0; i < steady.length; i++) {
            int from = Math.max(0, i - strays);
            int to = Math.min(steady.length, i + strays + 1);
            for (int j = from; j < to; j++) {
                around[j - from] = trace.celsius(j);
            }
            Arrays.sort(around, 0, to - from);
            steady[i] = around[(to - from - 1) / 2];
        }
        return steady;
    }
}
