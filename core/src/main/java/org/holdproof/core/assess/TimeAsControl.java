package org.holdproof.core.assess;

import java.util.List;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.TimeLimit;
import org.holdproof.core.verdict.Check;

/** Food kept safe by time alone, judged by what its label and the kitchen's notes say. */
public final class TimeAsControl {
    private TimeAsControl() {}

    /**
     * What is known of one food out of temperature control.
     *
     * @param spellMinutes each spell outside temperature control, in minutes
     * @param startCelsius the food's temperature when its time started, in °C
     * @param warmestCelsius the warmest it was meanwhile, in °C
     * @param marked whether it bears the mark the rule asks for
     * @param earlierPeriods how many such periods it had before
     */
    public record TimeOut(
            List<Double> spellMinutes, double startCelsius, double warmestCelsius, boolean marked, int earlierPeriods) {
        public TimeOut {
            spellMinutes = List.copyOf(spellMinutes);
        }

        public double minutes() {
            return spellMinutes.stream().mapToDouble(Double::doubleValue).sum();
        }
    }

    /** Whether a food kept the rule: started where it asks, within its time, below its ceiling, marked. */
    public static boolean keeps(TimeLimit limit, TimeOut out) {
        return startsRight(limit, out.startCelsius())
                && (!limit.marked() || out.marked())
                && (limit.count() != TimeLimit.Count.ONE_PERIOD || out.earlierPeriods() == 0)
                && limit.timeComparison().holds(out.minutes(), limit.maxMinutes(), Check.FIGURE_SLACK)
                && limit.ceiling().stream().allMatch(ceiling -> limit.ceilingComparison()
                        .holds(out.warmestCelsius(), ceiling.celsius(), TemperatureUnit.SLACK_CELSIUS));
    }

    private static boolean startsRight(TimeLimit limit, double celsius) {
        if (limit.coldStart().isEmpty() && limit.hotStart().isEmpty()) {
            return true;
        }
        return limit.coldStart()
                        .map(Boundary::celsius)
                        .filter(cold -> celsius <= cold + TemperatureUnit.SLACK_CELSIUS)
                        .isPresent()
                || limit.hotStart()
                        .map(Boundary::celsius)
                        .filter(hot -> celsius >= hot - TemperatureUnit.SLACK_CELSIUS)
                        .isPresent();
    }
}
