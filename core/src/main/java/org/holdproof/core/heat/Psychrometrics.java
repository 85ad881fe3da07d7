package org.holdproof.core.heat;

import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * Water vapour over water and in air, by the equations of ASHRAE Handbook Fundamentals 2017, chapter 1: saturation after
 * Hyland and Wexler 1983 (equation 6), the rest for ideal gases. From 0 to 200 °C, at the pressure given.
 */
public final class Psychrometrics {
    /** Standard atmosphere at sea level, in Pa. */
    public static final double SEA_LEVEL_PASCAL = 101_325;

    /** Molar mass of water over that of dry air. */
    private static final double MASS_RATIO = 0.621945;

    private static final double ZERO_CELSIUS = 273.15;
    private static final double COLDEST_WET_BULB = -40;
    private static final double WET_BULB_TOLERANCE = 1e-9;
    private static final int MOST_TRIES = 200;

    private Psychrometrics() {}

    /** Pressure of vapour in equilibrium with water of a temperature in °C, in Pa. */
    public static double saturationPascal(double celsius) {
        double k = celsius + ZERO_CELSIUS;
        return Math.exp(-5.8002206e3 / k
                + 1.3914993
                + k * (-4.8640239e-2 + k * (4.1764768e-5 - k * 1.4452093e-8))
                + 6.5459673 * Math.log(k));
    }

    /** The part by which the saturation pressure grows a kelvin, in 1/K. */
    static double saturationGrowth(double celsius) {
        double k = celsius + ZERO_CELSIUS;
        return 5.8002206e3 / (k * k) - 4.8640239e-2 + k * (2 * 4.1764768e-5 - 3 * 1.4452093e-8 * k) + 6.5459673 / k;
    }

    /**
     * Heat that evaporating a kilogram of water takes, in J/kg: a straight line through the steam tables, at most 0.4 %
     * high from 0 to 100 °C.
     */
    public static double latentHeat(double celsius) {
        return LATENT_AT_ZERO - LATENT_SLOPE * celsius;
    }

    static final double LATENT_AT_ZERO = 2.501e6;
    static final double LATENT_SLOPE = 2361;

    /** Pressure of the vapour in air that holds {@code humidityRatio} kg of it a kg of dry air, in Pa. */
    public static double vapourPascal(double humidityRatio, double pressurePascal) {
        return pressurePascal * humidityRatio / (MASS_RATIO + humidityRatio);
    }

    /**
     * Kilograms of vapour a kilogram of dry air.
     *
     * @throws IllegalArgumentException if the vapour's pressure is not below the air's
     */
    public static double humidityRatio(double vapourPascal, double pressurePascal) {
        if (!(vapourPascal >= 0) || !(vapourPascal < pressurePascal)) {
            throw new IllegalArgumentException("vapour of " + vapourPascal + " Pa in air of " + pressurePascal + " Pa");
        }
        return MASS_RATIO * vapourPascal / (pressurePascal - vapourPascal);
    }

    /**
     * What a dry-bulb and a wet-bulb reading say of the air, in kg/kg: equation 33 of the chapter.
     *
     * @throws IllegalArgumentException if the wet bulb is hotter than the air, or no air is as dry as the two say
     */
    public static double humidityRatioAt(double airCelsius, double wetBulbCelsius, double pressurePascal) {
        double saturation = saturationPascal(wetBulbCelsius);
        if (!(wetBulbCelsius <= airCelsius) || !(saturation < pressurePascal)) {
            throw new IllegalArgumentException("a wet bulb of " + wetBulbCelsius + " °C in air of " + airCelsius
                    + " °C: it lies between the driest air's and the air's own, below boiling");
        }
        double ratio = ratioAt(airCelsius, wetBulbCelsius, humidityRatio(saturation, pressurePascal));
        if (!(ratio >= 0)) {
            throw new IllegalArgumentException("a wet bulb of " + wetBulbCelsius + " °C in air of " + airCelsius
                    + " °C is lower than the driest air's");
        }
        return ratio;
    }

    private static double ratioAt(double air, double wetBulb, double saturated) {
        return ((2501 - 2.326 * wetBulb) * saturated - 1.006 * (air - wetBulb)) / (2501 + 1.86 * air - 4.186 * wetBulb);
    }

    /** Thermodynamic wet-bulb temperature of air, in °C; the air's own where it can hold no more vapour. */
    public static double wetBulbCelsius(double airCelsius, double humidityRatio, double pressurePascal) {
        if (wetBulbExcess(airCelsius, airCelsius, humidityRatio, pressurePascal) <= 0) {
            return airCelsius;
        }
        return new BrentSolver(WET_BULB_TOLERANCE)
                .solve(
                        MOST_TRIES,
                        wetBulb -> wetBulbExcess(wetBulb, airCelsius, humidityRatio, pressurePascal),
                        COLDEST_WET_BULB,
                        airCelsius);
    }

    /** How much wetter air with this wet bulb would be; beyond boiling any air is drier. */
    private static double wetBulbExcess(double wetBulb, double air, double humidityRatio, double pressurePascal) {
        double saturation = saturationPascal(wetBulb);
        return saturation >= pressurePascal
                ? 1
                : ratioAt(air, wetBulb, humidityRatio(saturation, pressurePascal)) - humidityRatio;
    }
}
