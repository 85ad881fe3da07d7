package org.holdproof.core.quality;

/**
 * A first-order rate that rises with temperature after Arrhenius:
 * {@code k = k_ref exp(-Ea/R (1/T - 1/T_ref))}.
 *
 * @param perMinute the rate at the reference, 1/min
 * @param referenceCelsius the reference, in °C
 * @param kilojoulesPerMole the activation energy
 */
public record ArrheniusRate(double perMinute, double referenceCelsius, double kilojoulesPerMole) {
    /** Molar gas constant, J/(mol K), exact to its digits: CODATA 2018. */
    private static final double GAS_CONSTANT = 8.314462618;

    private static final double ZERO_CELSIUS = 273.15;

    /** The nodes and weights of Gauss and Legendre's rule of three points on 0 to 1. */
    private static final double[] NODES = {0.5 - Math.sqrt(0.15), 0.5, 0.5 + Math.sqrt(0.15)};

    private static final double[] WEIGHTS = {5 / 18.0, 8 / 18.0, 5 / 18.0};

    /** @throws IllegalArgumentException if rate or energy is not positive or the reference not finite */
    public ArrheniusRate {
        if (!(perMinute > 0) || !(kilojoulesPerMole > 0) || !Double.isFinite(referenceCelsius)) {
            throw new IllegalArgumentException(
                    perMinute + " 1/min at " + referenceCelsius + " °C, " + kilojoulesPerMole + " kJ/mol");
        }
    }

    /** The rate at a temperature, 1/min. */
    public double at(double celsius) {
        return perMinute
                * Math.exp(-kilojoulesPerMole
                        * 1000
                        / GAS_CONSTANT
                        * (1 / (celsius + ZERO_CELSIUS) - 1 / (referenceCelsius + ZERO_CELSIUS)));
    }

    /** The mean rate over a straight line from one temperature to another near it, 1/min. */
    double mean(double fromCelsius, double toCelsius) {
        if (fromCelsius == toCelsius) {
            return at(fromCelsius);
        }
        double sum = 0;
        for (int i = 0; i < NODES.length; i++) {
            sum += WEIGHTS[i] * at(fromCelsius + NODES[i] * (toCelsius - fromCelsius));
        }
        return sum;
    }
}
