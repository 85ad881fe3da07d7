package org.holdproof.core.heat;

import java.util.Arrays;

/**
 * The coarsest steps a run is marched in. They land on every change of the medium and on every asked minute, start
 * short where the medium jumps, and lengthen with the time since, as the disturbance spreads and smooths. A finer march
 * splits them; those that a dense log or a dense list of asked minutes has already made short are split later.
 */
final class StepPlan {
    /** A step is at most this part of the time since the last jump. */
    private static final double GROWTH = 0.15;

    /** After a kink of the medium, its slope may change the medium by this much within the first step, in °C. */
    private static final double KINK_CELSIUS = 1;

    /** The longest step while a surface dries: its wetness changes with what it loses. */
    private static final double LONGEST_BARE_SECONDS = 240;

    private int count;
    private double[] startSeconds = new double[256];
    private double[] lengthSeconds = new double[256];
    private double[] allowedSeconds = new double[256];
    private int[] segment = new int[256];
    private final int[] stepsBefore;

    /**
     * @param shortestSeconds the step after a jump
     * @param atMinutes ascending, from 0, within the schedule
     */
    StepPlan(MediumSchedule schedule, double shortestSeconds, double[] atMinutes) {
        stepsBefore = new int[atMinutes.length];
        int asked = 0;
        double clock = 0;
        double sinceJump = 0;
        for (int s = 0; s < schedule.segments() && asked < atMinutes.length; s++) {
            if (s > 0) {
                sinceJump = settled(schedule, s, sinceJump);
            }
            // the last segment also takes an asked minute that rounding has put just past its end
            double cap = schedule.exposure(s).isPresent() ? LONGEST_BARE_SECONDS : Double.POSITIVE_INFINITY;
            double end = s == schedule.segments() - 1 ? Double.POSITIVE_INFINITY : schedule.endMinute(s) * 60;
            while (asked < atMinutes.length) {
                double next = atMinutes[asked] * 60;
                double stop = Math.min(next, end);
                while (clock < stop) {
                    double left = stop - clock;
                    double longest = Math.min(cap, Math.max(shortestSeconds, GROWTH * sinceJump));
                    double pieces = Math.ceil(left / longest * (1 - 1e-12));
                    double step = pieces <= 1 ? left : left / pieces;
                    add(clock, step, longest, s);
                    clock = pieces <= 1 ? stop : clock + step;
                    sinceJump += step;
                }
                if (next > end) {
                    break;
                }
                stepsBefore[asked++] = count;
            }
        }
        startSeconds = Arrays.copyOf(startSeconds, count);
        lengthSeconds = Arrays.copyOf(lengthSeconds, count);
        allowedSeconds = Arrays.copyOf(allowedSeconds, count);
        segment = Arrays.copyOf(segment, count);
    }

    private static double settled(MediumSchedule schedule, int s, double sinceJump) {
        boolean jumps = schedule.fromCelsius(s) != schedule.toCelsius(s - 1)
                || schedule.coefficient(s) != schedule.coefficient(s - 1)
                || !schedule.exposure(s).equals(schedule.exposure(s - 1));
        if (jumps) {
            return 0;
        }
        double bend = Math.abs(schedule.slope(s) - schedule.slope(s - 1)) / 60;
        return bend == 0 ? sinceJump : Math.min(sinceJump, KINK_CELSIUS / bend / GROWTH);
    }

    private void add(double start, double length, double allowed, int inSegment) {
        if (count == lengthSeconds.length) {
            startSeconds = Arrays.copyOf(startSeconds, 2 * count);
            lengthSeconds = Arrays.copyOf(lengthSeconds, 2 * count);
            allowedSeconds = Arrays.copyOf(allowedSeconds, 2 * count);
            segment = Arrays.copyOf(segment, 2 * count);
        }
        startSeconds[count] = start;
        lengthSeconds[count] = length;
        allowedSeconds[count] = allowed;
        segment[count++] = inSegment;
    }

    int steps() {
        return count;
    }

    double startSeconds(int step) {
        return startSeconds[step];
    }

    double lengthSeconds(int step) {
        return lengthSeconds[step];
    }

    /** In how many equal parts a march of a fineness (1 the coarsest) takes a step. */
    int parts(int step, int fineness) {
        return (int) Math.max(1, Math.ceil(fineness * lengthSeconds[step] / allowedSeconds[step] * (1 - 1e-12)));
    }

    int segment(int step) {
        return segment[step];
    }

    /** How many steps lie before the asked minute of this index. */
    int stepsBefore(int asked) {
        return stepsBefore[asked];
    }
}
