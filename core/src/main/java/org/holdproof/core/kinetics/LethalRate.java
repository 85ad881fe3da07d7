package org.holdproof.core.kinetics;

import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.ThermalDeath;

/**
 * The lethal rate of the general method: minutes at the reference temperature that one minute at another temperature is
 * worth, {@code L = 10^((T - Tref) / z)} (Bigelow's general method; Ball and Olson 1957). Nothing below the floor, no
 * more than at the cap above it.
 */
public final class LethalRate {
    private static final double LN_10 = Math.log(10);

    private final double referenceCelsius;
    private final double zCelsius;
    private final double floorCelsius;
    private final double capCelsius;

    /**
     * @param referenceCelsius reference temperature, in °C
     * @param zCelsius z-value, a difference in °C, positive
     * @param floorCelsius no credit below it; may be negative infinity
     * @param capCelsius no faster above it; may be positive infinity
     */
    public LethalRate(double referenceCelsius, double zCelsius, double floorCelsius, double capCelsius) {
        this.referenceCelsius = referenceCelsius;
        this.zCelsius = zCelsius;
        this.floorCelsius = floorCelsius;
        this.capCelsius = capCelsius;
    }

    /** The rate of an organism's death, in minutes at its reference temperature for each minute. */
    public static LethalRate of(ThermalDeath death) {
        return new LethalRate(death.referenceCelsius(), death.zCelsius(), death.floorCelsius(), death.capCelsius());
    }

    /** The rate at a temperature in °C; dimensionless. */
    public double at(double celsius) {
        return celsius < floorCelsius - TemperatureUnit.SLACK_CELSIUS ? 0 : uncut(Math.min(celsius, capCelsius));
    }

    /**
     * Equivalent minutes at the reference temperature while the food goes from one temperature to another in a straight
     * line: the exact integral, {@code t z / (ln 10 (T2 - T1)) (L2 - L1)} where neither floor nor cap is crossed.
     */
    public double equivalentMinutes(double fromCelsius, double toCelsius, double minutes) {
        double low = Math.min(fromCelsius, toCelsius);
        double high = Math.max(fromCelsius, toCelsius);
        double rise = high - low;
        if (rise < TemperatureUnit.SLACK_CELSIUS) {
            return at(high) * minutes;
        }
        double creditedFrom = Math.max(low, floorCelsius);
        double creditedTo = Math.min(high, capCelsius);
        double between =
                creditedTo > creditedFrom ? (creditedTo - creditedFrom) / rise * meanRate(creditedFrom, creditedTo) : 0;
        double capped = high > capCelsius ? (high - Math.max(low, capCelsius)) / rise * uncut(capCelsius) : 0;
        return (between + capped) * minutes;
    }

    /** Mean rate over a straight rise, written so that a small rise loses no digits. */
    private double meanRate(double lowCelsius, double highCelsius) {
        double exponent = LN_10 * (highCelsius - lowCelsius) / zCelsius;
        double growth = exponent == 0 ? 1 : Math.expm1(exponent) / exponent;
        return uncut(lowCelsius) * growth;
    }

    private double uncut(double celsius) {
        return Math.exp(LN_10 * (celsius - referenceCelsius) / zCelsius);
    }
}
