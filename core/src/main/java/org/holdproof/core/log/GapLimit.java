package org.holdproof.core.log;

import java.util.Arrays;
import java.util.OptionalDouble;

/** The longest interval between two readings that is not yet a gap. */
public final class GapLimit {
    /** Longest interval ever bridged, in minutes, whatever the logger's rhythm. */
    public static final double CEILING_MINUTES = 30;

    private static final double FLOOR_MINUTES = 5;
    private static final double MEDIANS = 3;

    private GapLimit() {}

    /**
     * The limit for a trace, in minutes: the rule's own where it names one, otherwise the larger of 5 minutes and three
     * times the median interval; never more than {@value #CEILING_MINUTES} minutes. (The ceiling is the sampling
     * interval of the FSIS Cooking Guideline 2021, page 75.)
     */
    public static double minutes(Trace trace, OptionalDouble namedByRule) {
        double own = namedByRule.orElseGet(() -> Math.max(FLOOR_MINUTES, MEDIANS * medianMinutes(trace)));
        return Math.min(own, CEILING_MINUTES);
    }

    /** The limit for one channel of a log, in minutes, where no rule names one; as {@link #minutes(Trace, OptionalDouble)}. */
    public static double minutes(ProbeLog log, int channel) {
        // most logs write more often than every 100 s: then the floor holds, and no interval need be sorted
        long floorHolds = Math.round(FLOOR_MINUTES / MEDIANS * 60_000);
        int intervals = -1;
        int close = 0;
        long before = 0;
        for (int row = 0; row < log.rows(); row++) {
            if (!Double.isNaN(log.celsius(channel, row))) {
                long millis = log.millis(row);
                close += intervals >= 0 && millis - before <= floorHolds ? 1 : 0;
                intervals++;
                before = millis;
            }
        }
        if (close > intervals / 2) {
            return FLOOR_MINUTES;
        }
        return minutes(log.trace(channel), OptionalDouble.empty());
    }

    /** The median interval between readings, in minutes; 0 with fewer than two readings. */
    public static double medianMinutes(Trace trace) {
        int intervals = trace.size() - 1;
        if (intervals < 1) {
            return 0;
        }
        double[] minutes = new double[intervals];
        for (int i = 0; i < intervals; i++) {
            minutes[i] = trace.minutesAfter(i);
        }
        Arrays.sort(minutes);
        int middle = intervals / 2;
        return intervals % 2 == 1 ? minutes[middle] : (minutes[middle - 1] + minutes[middle]) / 2;
    }
}
