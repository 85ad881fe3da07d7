package org.holdproof.core.log;

import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * The longest interval between two readings that is not yet a gap. The rhythm it is measured by is local: the intervals
 * just before and just after the one in question. What was logged hours later says nothing about it.
 */
public final class GapLimit {
    /** Longest interval ever bridged, in minutes, whatever the logger's rhythm. */
    public static final double CEILING_MINUTES = 30;

    /** No interval up to this one, in minutes, is ever a gap. */
    public static final double FLOOR_MINUTES = 5;

    private static final double MEDIANS = 3;
    private static final long CEILING_MILLIS = Math.round(CEILING_MINUTES * 60_000);
    private static final long FLOOR_MILLIS = Math.round(FLOOR_MINUTES * 60_000);

    /** Intervals looked at on either side: the fewest of which one odd one moves no median. */
    private static final int NEIGHBOURS = 3;

    private GapLimit() {}

    /**
     * The limit for the interval from reading {@code i} to the one after it, in minutes: the larger of
     * {@value #FLOOR_MINUTES} minutes and three times the rhythm around it, never more than {@value #CEILING_MINUTES}
     * minutes. (The ceiling is the sampling interval of the FSIS Cooking Guideline 2021, page 75.)
     *
     * <p>The rhythm is the larger of two medians, of up to three intervals before and of up to three after, so that a
     * logger may change its rhythm. Neither looks past an interval longer than the ceiling. A median of an even number is
     * the smaller of its two middle ones. One interval alone on a side is no rhythm, unless there is no other.
     */
    public static double around(Trace trace, int i) {
        return millisAround(trace, i) / 60_000.0;
    }

    /** Whether the interval from reading {@code i} to the one after it is a gap; exactly at its limit it is none. */
    public static boolean isGap(Trace trace, int i) {
        long interval = trace.millis(i + 1) - trace.millis(i);
        if (interval <= FLOOR_MILLIS || interval > CEILING_MILLIS) {
            return interval > FLOOR_MILLIS;
        }
        return interval > millisAround(trace, i);
    }

    private static long millisAround(Trace trace, int i) {
        long[] before = new long[NEIGHBOURS];
        int earlier = 0;
        for (int j = i - 1; j >= 0 && earlier < NEIGHBOURS; j--) {
            long interval = trace.millis(j + 1) - trace.millis(j);
            if (interval > CEILING_MILLIS) {
                break;
            }
            before[earlier++] = interval;
        }
        long[] after = new long[NEIGHBOURS];
        int later = 0;
        for (int j = i + 1; j + 1 < trace.size() && later < NEIGHBOURS; j++) {
            long interval = trace.millis(j + 1) - trace.millis(j);
            if (interval > CEILING_MILLIS) {
                break;
            }
            after[later++] = interval;
        }
        int least = Math.max(earlier, later) >= 2 ? 2 : 1;
        long rhythm = Math.max(median(before, earlier, least), median(after, later, least));
        return Math.min(CEILING_MILLIS, Math.max(FLOOR_MILLIS, Math.round(MEDIANS) * rhythm));
    }

    /** The median of the first {@code count}; 0 where they are fewer than {@code least}. */
    private static long median(long[] intervals, int count, int least) {
        if (count < least) {
            return 0;
        }
        Arrays.sort(intervals, 0, count);
        return intervals[(count - 1) / 2];
    }

    /**
     * The limit for a whole trace, in minutes: the rule's own where it names one, otherwise the larger of 5 minutes and
     * three times the median interval; never more than {@value #CEILING_MINUTES} minutes.
     */
    public static double minutes(Trace trace, OptionalDouble namedByRule) {
        double own = namedByRule.orElseGet(() -> Math.max(FLOOR_MINUTES, MEDIANS * medianMinutes(trace)));
        return Math.min(own, CEILING_MINUTES);
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
