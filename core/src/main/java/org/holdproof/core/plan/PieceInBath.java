package org.holdproof.core.plan;

import java.util.Arrays;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.holdproof.core.heat.Conduction;
import org.holdproof.core.heat.MediumSchedule;
import org.holdproof.core.heat.PieceState;
import org.holdproof.core.heat.PieceTemperatures;
import org.holdproof.core.heat.ThermalProperties;
import org.holdproof.core.quality.CookHistory;

/**
 * How a piece, once bagged, answers a bath of any set point. With properties that do not change with temperature the
 * answer is the sum of two: what is left of the state it went in with, and the share it has taken of the bath.
 */
final class PieceInBath {
    private static final int POINTS = 120;
    private static final double TOLERANCE = 0.02;
    private static final double ROUNDING_MINUTES = 1e-6;

    /** What went before the bath; its last point is the bath's minute 0. */
    private final double[] minutesBefore;

    private final double[] coreBefore;
    private final double[] meanBefore;
    private final double[] minutes;
    private final PieceTemperatures left;
    private final PieceTemperatures share;

    private PieceInBath(
            double[] minutesBefore,
            double[] coreBefore,
            double[] meanBefore,
            double[] minutes,
            PieceTemperatures left,
            PieceTemperatures share) {
        this.minutesBefore = minutesBefore;
        this.coreBefore = coreBefore;
        this.meanBefore = meanBefore;
        this.minutes = minutes;
        this.left = left;
        this.share = share;
    }

    /** A piece straight from the cold. */
    static PieceInBath cold(PlannedCook cook, HeatFigures heat, double[] askedMinutes) {
        double start = cook.startCelsius();
        return of(
                new double[] {0},
                new double[] {start},
                new double[] {start},
                PieceState.uniform(start),
                cook,
                heat,
                askedMinutes);
    }

    /** A piece out of the smoker. */
    static PieceInBath smoked(PieceTemperatures smoke, PlannedCook cook, HeatFigures heat, double[] askedMinutes) {
        double[] minutes = new double[smoke.size()];
        double[] mean = new double[smoke.size()];
        for (int i = 0; i < minutes.length; i++) {
            minutes[i] = smoke.minute(i);
            mean[i] = smoke.meanCelsius(i);
        }
        return of(minutes, smoke.coreCelsius(), mean, smoke.end(), cook, heat, askedMinutes);
    }

    private static PieceInBath of(
            double[] minutesBefore,
            double[] coreBefore,
            double[] meanBefore,
            PieceState state,
            PlannedCook cook,
            HeatFigures heat,
            double[] askedMinutes) {
        double last = Arrays.stream(askedMinutes).max().orElseThrow();
        double[] minutes = apart(DoubleStream.concat(
                        Arrays.stream(askedMinutes),
                        IntStream.range(0, POINTS).mapToDouble(i -> last * i * i / POINTS / POINTS))
                .sorted()
                .toArray());
        Conduction conduction =
                Conduction.of(cook.piece(), ThermalProperties.constant(heat.conductivity(), heat.diffusivity()));
        MediumSchedule nothing = MediumSchedule.held(0, heat.bathCoefficient());
        return new PieceInBath(
                minutesBefore,
                coreBefore,
                meanBefore,
                minutes,
                conduction.within(TOLERANCE).run(state, nothing, minutes),
                conduction.within(TOLERANCE / 100).run(PieceState.uniform(1), nothing, minutes));
    }

    /** Points further apart than rounding. */
    private static double[] apart(double[] sorted) {
        double[] kept = new double[sorted.length];
        int count = 0;
        for (double minute : sorted) {
            if (count == 0 || minute > kept[count - 1] + ROUNDING_MINUTES) {
                kept[count++] = minute;
            }
        }
        return Arrays.copyOf(kept, count);
    }

    /** The whole history, from the start of the cook, with a bath of one set point. */
    CookHistory in(double bathCelsius) {
        int before = minutesBefore.length;
        int count = before + minutes.length - 1;
        double[] at = Arrays.copyOf(minutesBefore, count);
        double[] core = Arrays.copyOf(coreBefore, count);
        double[] mean = Arrays.copyOf(meanBefore, count);
        for (int i = 1; i < minutes.length; i++) {
            at[before - 1 + i] = minutesBefore[before - 1] + minutes[i];
            core[before - 1 + i] = left.coreCelsius(i) + bathCelsius * (1 - share.coreCelsius(i));
            mean[before - 1 + i] = left.meanCelsius(i) + bathCelsius * (1 - share.meanCelsius(i));
        }
        return CookHistory.of(at, core, mean);
    }
}
