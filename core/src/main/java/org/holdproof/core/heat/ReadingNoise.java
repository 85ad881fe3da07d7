package org.holdproof.core.heat;

import java.util.Arrays;
import org.holdproof.core.log.Trace;

/** How far a probe's readings scatter about a smooth course. */
final class ReadingNoise {
    private ReadingNoise() {}

    /** Standard deviation of the readings' own scatter, from the median size of their second differences, in °C. */
    static double of(Trace core) {
        int count = core.size() - 2;
        if (count < 1) {
            return 0;
        }
        double[] bends = new double[count];
        for (int i = 0; i < count; i++) {
            bends[i] = Math.abs(core.celsius(i) - 2 * core.celsius(i + 1) + core.celsius(i + 2));
        }
        Arrays.sort(bends);
        // for Gaussian scatter σ the second difference has σ√6 and a median size of 0.6745 of that
        return bends[count / 2] / (0.6745 * Math.sqrt(6));
    }
}
