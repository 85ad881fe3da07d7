package org.holdproof.core.plan;

import java.util.stream.DoubleStream;
import org.holdproof.core.heat.Piece;
import org.holdproof.core.heat.PieceState;
import org.holdproof.core.heat.PieceTemperatures;
import org.holdproof.core.heat.ThermalProperties;
import org.holdproof.core.heat.smoke.Arrival;
import org.holdproof.core.heat.smoke.SmokeForecast;
import org.holdproof.core.quantity.Bounded;

/**
 * What the smoke leaves of a piece when it goes into the bag. A prediction: nothing is proven by it.
 *
 * @param coreCelsius worst: wet for ever, thicker, in colder air, with the slowest diffusivity; best: the fast surface
 * @param slowCelsius the core with the slow surface and all else as planned
 * @param evaporatedPercent of the raw weight; worst: the most
 * @param ahead the same smoke going on, for {@link #coreReaches}
 */
public record SmokedCore(Bounded coreCelsius, double slowCelsius, Bounded evaporatedPercent, SmokeForecast ahead) {
    /** How much longer than planned the smoke is looked ahead. */
    private static final double LONGEST_MINUTES = 48 * 60;

    static SmokedCore of(SmokeStep step, Piece piece, ThermalProperties food, double start, double slowestCore) {
        SmokeForecast ahead = SmokeForecast.of(piece, food, PieceState.uniform(start), step.smoke(LONGEST_MINUTES));
        double likely = coreAt(ahead.nominal(), step.minutes());
        double[] lost = DoubleStream.of(
                        lostAt(ahead.slow(), step.minutes()),
                        lostAt(ahead.nominal(), step.minutes()),
                        lostAt(ahead.fast(), step.minutes()))
                .sorted()
                .toArray();
        return new SmokedCore(
                new Bounded(slowestCore, likely, coreAt(ahead.fast(), step.minutes())),
                coreAt(ahead.slow(), step.minutes()),
                new Bounded(lost[2], lostAt(ahead.nominal(), step.minutes()), lost[0]),
                ahead);
    }

    /** When the core comes to a temperature if it stays in the smoker, in minutes. */
    public Arrival coreReaches(double celsius) {
        return ahead.coreReaches(celsius);
    }

    private static double coreAt(PieceTemperatures run, double minute) {
        int i = after(run, minute);
        return between(run, i, minute, run.coreCelsius(i - 1), run.coreCelsius(i));
    }

    private static double lostAt(PieceTemperatures run, double minute) {
        int i = after(run, minute);
        return 100 * between(run, i, minute, run.evaporatedShare(i - 1), run.evaporatedShare(i));
    }

    private static int after(PieceTemperatures run, double minute) {
        int i = 1;
        while (i < run.size() - 1 && run.minute(i) < minute) {
            i++;
        }
        return i;
    }

    private static double between(PieceTemperatures run, int i, double minute, double before, double after) {
        double share = (minute - run.minute(i - 1)) / (run.minute(i) - run.minute(i - 1));
        return before + share * (after - before);
    }
}
