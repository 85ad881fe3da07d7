package org.holdproof.core.measure;

import java.util.Optional;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.LethalityRow;

/** When a trace first proved a published row. */
public final class FirstMet {
    private FirstMet() {}

    /**
     * The reading at which the row was proven: readings less the tolerance at or above its temperature, without a gap,
     * for its time.
     */
    public static Optional<Long> millis(Trace trace, LethalityRow row, double toleranceCelsius, double gapMinutes) {
        double level = row.at().celsius() - TemperatureUnit.SLACK_CELSIUS + toleranceCelsius;
        long needed = Math.round(row.seconds() * 1000);
        long from = Long.MIN_VALUE;
        for (int i = 0; i < trace.size(); i++) {
            boolean above = trace.celsius(i) >= level;
            boolean joined = i > 0 && from != Long.MIN_VALUE && trace.minutesAfter(i - 1) <= gapMinutes;
            if (!above) {
                from = Long.MIN_VALUE;
                continue;
            }
            if (!joined) {
                from = trace.millis(i);
            }
            if (trace.millis(i) - from >= needed) {
                return Optional.of(trace.millis(i));
            }
        }
        return Optional.empty();
    }
}
