package org.holdproof.core.quality;

import java.util.Arrays;

/**
 * A slab that dries in a smoker, reckoned as simply as can be: explicit steps, the surface wet to a part of it. It checks
 * the shipped ranges of evaporation, which were derived so; the product's own smoker is another.
 *
 * @param coreCelsius at the end
 * @param evaporatedPercent of the raw weight
 */
record DryingSlab(double coreCelsius, double evaporatedPercent) {
    private static final double CONDUCTIVITY = 0.48;
    private static final double DIFFUSIVITY = 1.2e-7;
    private static final int CELLS = 20;
    private static final double STEP_SECONDS = 10;
    private static final double LATENT_HEAT = 2.35e6;
    private static final double MEAT_DENSITY = 1060;
    /** Density and heat of air times the Lewis number to two thirds. */
    private static final double AIR_HEAT = 1.0 * 1030 * 0.9;

    static DryingSlab smoked(
            double thicknessMillimetres,
            double airCelsius,
            double hours,
            double wetness,
            double coefficient,
            double dewPointCelsius) {
        double cell = thicknessMillimetres / 2000 / CELLS;
        double inside = CONDUCTIVITY / (cell / 2);
        double vapour = saturation(dewPointCelsius) * 0.018015 / (8.314462618 * (airCelsius + 273.15));
        double[] celsius = new double[CELLS];
        Arrays.fill(celsius, 5);
        double surface = 5;
        double lost = 0;
        long steps = Math.round(hours * 3600 / STEP_SECONDS);
        for (long step = 0; step < steps; step++) {
            double flow = 0;
            for (int i = 0; i < 8; i++) {
                double at = saturation(surface) * 0.018015 / (8.314462618 * (surface + 273.15));
                flow = Math.max(0, wetness * coefficient / AIR_HEAT * (at - vapour));
                surface = 0.5 * surface
                        + 0.5
                                * (inside * celsius[CELLS - 1] + coefficient * airCelsius - LATENT_HEAT * flow)
                                / (inside + coefficient);
            }
            double inflow = 0;
            double[] next = new double[CELLS];
            for (int i = 0; i < CELLS; i++) {
                double outflow = i == CELLS - 1
                        ? inside * (surface - celsius[i])
                        : CONDUCTIVITY * (celsius[i + 1] - celsius[i]) / cell;
                next[i] = celsius[i] + STEP_SECONDS * (outflow - inflow) / (CONDUCTIVITY / DIFFUSIVITY * cell);
                inflow = outflow;
            }
            celsius = next;
            lost += flow * STEP_SECONDS;
        }
        return new DryingSlab(celsius[0], 100 * lost / (MEAT_DENSITY * thicknessMillimetres / 2000));
    }

    /** In pascal, by Magnus with the constants of Alduchov and Eskridge 1996, from memory. */
    private static double saturation(double celsius) {
        return 610.94 * Math.exp(17.625 * celsius / (celsius + 243.04));
    }
}
