package org.holdproof.core.heat;

import java.util.OptionalLong;
import org.holdproof.core.log.GapLimit;
import org.holdproof.core.log.Trace;

/**
 * Readings held against the most a core can rise or fall from one to the next, whatever has happened to the piece.
 * Nothing need be known of the medium but how hot and how cold it can have been at most.
 */
public final class CoreSteps {
    /** Ice water: colder air gives its heat off so slowly that no thicker piece falls faster in it. */
    public static final double COLDEST_CELSIUS = 0;

    /** How long a probe may have been out of the food, in minutes; common practice, no source. */
    private static final double OUT_MINUTES = 15;

    private static final double LEAST_EXCESS_CELSIUS = 0.5;
    private static final double NOISE_MULTIPLES = 3.5;
    private static final int STRAY_READINGS = 2;

    private final Trace core;
    private final double[] steady;
    private final double steepestAMinute;
    private final double intervalMinutes;
    private final double threshold;

    /**
     * @param core readings, at least one
     * @param hottestCelsius the hottest the piece's surface can have been
     * @param coldestCelsius the coldest it can have been
     */
    public CoreSteps(Trace core, Piece piece, double hottestCelsius, double coldestCelsius) {
        this.core = core;
        steady = Steadied.of(core, STRAY_READINGS);
        steepestAMinute = new FastestCore(piece)
                .steepestAMinute(Math.max(0, hottestCelsius - Math.min(coldestCelsius, COLDEST_CELSIUS)));
        intervalMinutes = GapLimit.medianMinutes(core);
        threshold = Math.max(LEAST_EXCESS_CELSIUS, NOISE_MULTIPLES * ReadingNoise.of(core));
    }

    /**
     * The readings with every one that stands higher than a core can have risen from the readings before it, or can fall
     * to those after it, lowered to what it can have been.
     */
    public Trace credited() {
        double[] risen = risen();
        double[] falling = new double[steady.length];
        for (int i = steady.length - 1; i >= 0; i--) {
            falling[i] = i == steady.length - 1
                    ? steady[i]
                    : Math.min(steady[i], falling[i + 1] + steepestAMinute * core.minutesAfter(i));
        }
        double[] credited = new double[steady.length];
        long[] millis = new long[steady.length];
        for (int i = 0; i < credited.length; i++) {
            double most = Math.min(risen[i], falling[i]);
            millis[i] = core.millis(i);
            credited[i] = core.celsius(i) > most + threshold ? most : core.celsius(i);
        }
        return new Trace(core.channel(), millis, credited);
    }

    /** The first reading of a rise further than a core can rise, where more readings in a row than a few strays lie beyond it. */
    public OptionalLong impossibleRise() {
        double[] risen = risen();
        return beyond(i -> core.celsius(i) - risen[i]);
    }

    /**
     * The first reading of a fall further than a core can fall that the readings do not take back, where more readings
     * than a few strays lie beyond it. Where the core must be colder than a limit by then, nothing is asked of it.
     *
     * @param coldCelsius that limit, in °C
     */
    public OptionalLong impossibleFall(double coldCelsius) {
        double[] after = hottestSoonAfter();
        double[] fallen = new double[steady.length];
        for (int i = 0; i < fallen.length; i++) {
            double here = Math.min(steady[i], after[i]);
            fallen[i] = i == 0 ? here : Math.max(here, fallen[i - 1] - steepestAMinute * core.minutesAfter(i - 1));
        }
        return beyond(i -> fallen[i] > coldCelsius ? fallen[i] - after[i] : 0);
    }

    private double[] risen() {
        double[] risen = new double[steady.length];
        for (int i = 0; i < risen.length; i++) {
            risen[i] =
                    i == 0 ? steady[i] : Math.min(steady[i], risen[i - 1] + steepestAMinute * core.minutesAfter(i - 1));
        }
        return risen;
    }

    /** The hottest reading from each on, for as long as a probe may have been out: a core in the cold only falls. */
    private double[] hottestSoonAfter() {
        int size = core.size();
        double[] hottest = new double[size];
        // the readings that may still be the hottest of some window, the earliest in time on top
        int[] candidates = new int[size];
        int bottom = 0;
        int top = 0;
        for (int i = size - 1; i >= 0; i--) {
            while (top > bottom && core.celsius(candidates[top - 1]) <= core.celsius(i)) {
                top--;
            }
            candidates[top++] = i;
            while (core.millis(candidates[bottom]) - core.millis(i) > OUT_MINUTES * 60_000) {
                bottom++;
            }
            hottest[i] = core.celsius(candidates[bottom]);
        }
        return hottest;
    }

    /** The first of more readings in a row than a few strays that lie beyond what a core can do. */
    private OptionalLong beyond(Excess excess) {
        double grace = threshold + steepestAMinute * intervalMinutes;
        int inARow = 0;
        for (int i = 0; i < steady.length; i++) {
            inARow = excess.of(i) > grace ? inARow + 1 : 0;
            if (inARow > STRAY_READINGS) {
                return OptionalLong.of(core.millis(i - STRAY_READINGS));
            }
        }
        return OptionalLong.empty();
    }

    private interface Excess {
        double of(int reading);
    }
}
