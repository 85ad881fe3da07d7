package org.holdproof.core.heat;

/**
 * The boiling point of pure water: saturation temperature by IAPWS-IF97 region 4, pressure by the ISO 2533 standard
 * atmosphere. Weather moves it by about 0.3 °C for each kPa.
 */
public final class BoilingTemperature {
    private static final double[] N = {
        0.11670521452767e4,
        -0.72421316703206e6,
        -0.17073846940092e2,
        0.12020824702470e5,
        -0.32325550322333e7,
        0.14915108613530e2,
        -0.48232657361591e4,
        0.40511340542057e6,
        -0.23855557567849,
        0.65017534844798e3
    };

    private BoilingTemperature() {}

    /**
     * Boiling point in °C in the standard atmosphere.
     *
     * @param metres height above sea level, -430 to 11000 m
     * @throws IllegalArgumentException outside that range
     */
    public static double atAltitude(double metres) {
        if (!(metres >= -430 && metres <= 11_000)) {
            throw new IllegalArgumentException("altitude of " + metres + " m");
        }
        double kilopascals = 101.325 * Math.pow(1 - 0.0065 * metres / 288.15, 5.255880);
        return atPressure(kilopascals);
    }

    /**
     * Boiling point in °C at a station pressure, in kPa (1 to 1000), by the backward equation of region 4 (IAPWS R7-97
     * equation 31).
     *
     * @throws IllegalArgumentException outside that range
     */
    public static double atPressure(double kilopascals) {
        if (!(kilopascals >= 1 && kilopascals <= 1000)) {
            throw new IllegalArgumentException("pressure of " + kilopascals + " kPa");
        }
        double beta = Math.pow(kilopascals / 1000, 0.25);
        double e = beta * beta + N[2] * beta + N[5];
        double f = N[0] * beta * beta + N[3] * beta + N[6];
        double g = N[1] * beta * beta + N[4] * beta + N[7];
        double d = 2 * g / (-f - Math.sqrt(f * f - 4 * e * g));
        double sum = N[9] + d;
        double kelvin = (sum - Math.sqrt(sum * sum - 4 * (N[8] + N[9] * d))) / 2;
        return kelvin - 273.15;
    }
}
