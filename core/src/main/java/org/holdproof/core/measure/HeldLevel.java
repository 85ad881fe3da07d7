package org.holdproof.core.measure;

import java.util.OptionalLong;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Comparison;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.verdict.Verdict;

/**
 * A temperature kept on one side of a limit: the coldest reading where it must stay above, the warmest where it must
 * stay below.
 *
 * @param celsius the deciding temperature, in °C; worst is infinite where a gap hides anything
 * @param breachMillis when the straight line between readings first left the limit
 */
public record HeldLevel(Bounded celsius, OptionalLong breachMillis) {

    /**
     * Finds the deciding temperature of a trace.
     *
     * @param limitCelsius the limit, in °C
     * @param toleranceCelsius how far a reading may lie from the truth, in °C
     * @param gapMinutes an interval longer than this is a gap
     * @throws IllegalArgumentException if the trace is empty
     */
    public static HeldLevel of(
            Trace trace, Comparison comparison, double limitCelsius, double toleranceCelsius, double gapMinutes) {
        if (trace.isEmpty()) {
            throw new IllegalArgumentException("no readings to judge");
        }
        double against = comparison.isFloor() ? -1 : 1;
        double extreme = against * trace.celsius(0);
        boolean gap = false;
        OptionalLong breach = OptionalLong.empty();
        for (int i = 0; i < trace.size(); i++) {
            extreme = Math.max(extreme, against * trace.celsius(i));
            gap |= i > 0 && trace.minutesAfter(i - 1) > gapMinutes;
            if (breach.isEmpty() && !comparison.holds(trace.celsius(i), limitCelsius, TemperatureUnit.SLACK_CELSIUS)) {
                breach = OptionalLong.of(i == 0 ? trace.firstMillis() : crossing(trace, i, limitCelsius));
            }
        }
        double nominal = against * extreme;
        double worst = gap ? against * Double.POSITIVE_INFINITY : nominal + against * toleranceCelsius;
        return new HeldLevel(new Bounded(worst, nominal, nominal - against * toleranceCelsius), breach);
    }

    /** The judgement against the limit. */
    public Verdict judge(Comparison comparison, double limitCelsius) {
        return Verdict.of(celsius, comparison, limitCelsius, TemperatureUnit.SLACK_CELSIUS);
    }

    private static long crossing(Trace trace, int i, double limitCelsius) {
        double share = (limitCelsius - trace.celsius(i - 1)) / (trace.celsius(i) - trace.celsius(i - 1));
        return trace.millis(i - 1) + Math.round(share * (trace.millis(i) - trace.millis(i - 1)));
    }
}
