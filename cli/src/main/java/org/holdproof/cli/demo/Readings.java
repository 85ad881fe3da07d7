package org.holdproof.cli.demo;

import java.time.ZonedDateTime;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.holdproof.core.heat.Conduction;
import org.holdproof.core.heat.MediumSchedule;
import org.holdproof.core.heat.Piece;
import org.holdproof.core.heat.ThermalProperties;

/**
 * A simulated log: one reading a minute of a core, an air and a bath probe, with the small unrest of a real sensor from
 * a fixed seed.
 */
final class Readings {
    /** Conductivity in W/(m K) and diffusivity in m²/s: a textbook's value, and one within the handbooks' range for beef. */
    private static final ThermalProperties MEAT = ThermalProperties.constant(0.47, 1.30e-7);

    private static final double SLAB = 0;

    /** Standard deviation of a reading's noise, in °C. */
    private static final double NOISE = 0.05;

    /** A thermostat lets hot air swing this far either way, in °C, this often, in minutes. */
    private static final double SWING = 3;

    private static final double SWING_MINUTES = 23;
    private static final double HOT_AIR = 40;

    /** A probe beside the meat comes this part closer to a new temperature every minute. */
    private static final double PROBE_SHARE = 0.08;

    private final ZonedDateTime start;
    private final double[] core;
    private final double[] air;
    private final double[] bath;
    private final Lost lost;

    /**
     * The minutes nothing was recorded.
     *
     * @param from the first of them
     * @param to the first minute recorded again
     */
    record Lost(int from, int to) {
        static final Lost NOTHING = new Lost(0, 0);

        boolean covers(int minute) {
            return minute >= from && minute < to;
        }
    }

    /**
     * @param start the first reading's time on the kitchen's clock
     * @param course what the meat lies in, one thing after another
     */
    Readings(
            ZonedDateTime start,
            double thicknessMillimetres,
            double startCelsius,
            List<Surroundings> course,
            Lost lost,
            long seed) {
        this.start = start;
        this.lost = lost;
        Random noise = new Random(seed);
        core = simulated(thicknessMillimetres, startCelsius, course);
        air = new double[core.length];
        bath = new double[core.length];
        double airShown = course.get(0).air();
        double bathShown = course.get(0).bath();
        int minute = 0;
        for (Surroundings around : course) {
            for (int i = 0; i < around.minutes(); i++) {
                airShown += PROBE_SHARE * (around.air() - airShown);
                bathShown += PROBE_SHARE * (around.bath() - bathShown);
                double swing = around.air() > HOT_AIR ? SWING * Math.sin(2 * Math.PI * i / SWING_MINUTES) : 0;
                core[minute] = shown(core[minute], noise);
                air[minute] = shown(airShown + swing, noise);
                bath[minute] = shown(bathShown, noise);
                minute++;
            }
        }
    }

    private static double[] simulated(double thicknessMillimetres, double startCelsius, List<Surroundings> course) {
        int minutes = course.stream().mapToInt(Surroundings::minutes).sum();
        MediumSchedule schedule =
                MediumSchedule.of(course.stream().map(Surroundings::segment).toList());
        return Conduction.of(Piece.of(thicknessMillimetres, SLAB), MEAT)
                .run(
                        startCelsius,
                        schedule,
                        IntStream.range(0, minutes).asDoubleStream().toArray())
                .coreCelsius();
    }

    int minutes() {
        return core.length;
    }

    boolean isLost(int minute) {
        return lost.covers(minute);
    }

    ZonedDateTime time(int minute) {
        return start.plusMinutes(minute);
    }

    /** Core, air and bath at a minute, in °C; a log prints them to 0.1 of its own unit. */
    double[] row(int minute) {
        return new double[] {core[minute], air[minute], bath[minute]};
    }

    private static double shown(double celsius, Random noise) {
        return celsius + NOISE * noise.nextGaussian();
    }
}
