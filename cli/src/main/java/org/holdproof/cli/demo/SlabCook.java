package org.holdproof.cli.demo;

import java.util.Arrays;
import java.util.List;

/**
 * The demo's simulation: conduction in a slab, heated and cooled alike from both faces, with constant properties; an
 * explicit finite-difference march over half the thickness. Invented data, no proof of anything.
 */
final class SlabCook {
    /** In m²/s; within the handbook range for beef (1.05e-7 to 1.52e-7). */
    private static final double DIFFUSIVITY = 1.30e-7;

    /** In W/(m K); a textbook's value for beef. */
    private static final double CONDUCTIVITY = 0.47;

    private static final int CELLS = 20;
    private static final int SECONDS_A_STEP = 2;
    private static final int STEPS_A_MINUTE = 60 / SECONDS_A_STEP;

    private SlabCook() {}

    /** The core's temperature at the start of every minute, in °C. */
    static double[] coreByMinute(double thicknessMillimetres, double startCelsius, List<Surroundings> course) {
        double cell = thicknessMillimetres / 2000 / CELLS;
        double fourier = DIFFUSIVITY * SECONDS_A_STEP / (cell * cell);
        double[] celsius = new double[CELLS + 1];
        Arrays.fill(celsius, startCelsius);
        double[] core =
                new double[course.stream().mapToInt(Surroundings::minutes).sum()];
        int minute = 0;
        for (Surroundings around : course) {
            double biot = around.coefficient() * cell / CONDUCTIVITY;
            for (int i = 0; i < around.minutes(); i++) {
                core[minute++] = celsius[0];
                for (int step = 0; step < STEPS_A_MINUTE; step++) {
                    celsius = next(celsius, fourier, biot, around.felt());
                }
            }
        }
        return core;
    }

    /** One step: symmetric at the middle (first cell), exchanging heat with the surroundings at the face (last). */
    private static double[] next(double[] now, double fourier, double biot, double felt) {
        double[] next = new double[now.length];
        int face = now.length - 1;
        next[0] = now[0] + 2 * fourier * (now[1] - now[0]);
        for (int i = 1; i < face; i++) {
            next[i] = now[i] + fourier * (now[i + 1] - 2 * now[i] + now[i - 1]);
        }
        next[face] = now[face] + 2 * fourier * (now[face - 1] - now[face] + biot * (felt - now[face]));
        return next;
    }
}
