package org.holdproof.core.standing;

import java.util.Optional;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.holdproof.core.log.Trace;

/**
 * Which way a probe goes now: a straight line through the last quarter of an hour, beside one through the quarter before
 * it. A prediction, never a proof.
 *
 * @param celsiusAMinute its present pace
 * @param surely whether the pace differs from none by more than the readings' scatter
 * @param quickening whether the pace may still be growing: then no straight line bounds what comes
 */
record Trend(double celsiusAMinute, boolean surely, boolean quickening) {
    private static final double MINUTES = 15;
    private static final int FEWEST_READINGS = 4;
    private static final double DEVIATIONS = 2;
    private static final double ROUNDING = 1e-9;

    /** The trend at a trace's end; empty where too few readings lie in either quarter. */
    static Optional<Trend> of(Trace trace) {
        SimpleRegression now = new SimpleRegression();
        SimpleRegression before = new SimpleRegression();
        for (int i = trace.size() - 1; i >= 0; i--) {
            double ago = (trace.lastMillis() - trace.millis(i)) / 60_000.0;
            if (ago > 2 * MINUTES) {
                break;
            }
            (ago <= MINUTES ? now : before).addData(-ago, trace.celsius(i));
        }
        if (now.getN() < FEWEST_READINGS || before.getN() < FEWEST_READINGS) {
            return Optional.empty();
        }
        double scatter = DEVIATIONS * Math.hypot(now.getSlopeStdErr(), before.getSlopeStdErr()) + ROUNDING;
        double pace = now.getSlope();
        double earlier = Math.signum(pace) * before.getSlope();
        return Optional.of(new Trend(
                pace,
                Math.abs(pace) > DEVIATIONS * now.getSlopeStdErr() + ROUNDING,
                Math.abs(pace) > earlier + scatter));
    }

    /** The soonest a temperature can be reached at a pace that grows no more, in minutes from the last reading. */
    Optional<Double> soonestMinutes(double fromCelsius, double toCelsius) {
        double way = toCelsius - fromCelsius;
        return quickening || !surely || way * celsiusAMinute <= 0
                ? Optional.empty()
                : Optional.of(way / celsiusAMinute);
    }
}
