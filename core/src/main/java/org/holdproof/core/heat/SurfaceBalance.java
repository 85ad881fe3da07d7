package org.holdproof.core.heat;

/**
 * Heat and water through one exposed surface. It leaves its results in fields, as a march asks it thousands of times.
 */
final class SurfaceBalance {
    private static final double STEFAN_BOLTZMANN = 5.670374e-8;
    private static final double ZERO_CELSIUS = 273.15;
    private static final double MOLAR_MASS_OF_WATER = 0.018015;

    /** Of moist air at constant pressure, in J/(mol K); from memory. */
    private static final double MOLAR_HEAT = 29.3;

    /** Lewis number of water vapour in air to the power 2/3; between 0.86 and 1 where read. */
    private static final double LEWIS = 0.90;

    /** Water activity of fresh meat; from memory. */
    private static final double WATER_ACTIVITY = 0.99;

    /** A surface at the boiling point: its vapour is held at this part of the air's pressure, where the law still ends. */
    private static final double BOILING = 0.95;

    private static final double CONVERGED_CELSIUS = 1e-7;
    private static final double LOWEST_CELSIUS = -60;
    private static final double HIGHEST_CELSIUS = 400;
    private static final int MOST_TRIES = 60;

    private final Exposure exposure;
    private final double transfer;
    private final double radiation;
    private final double dryPascal;

    /** Into the piece, in W/m². */
    double heat;

    /** How the heat changes with the surface's temperature, in W/(m² K); never positive. */
    double slope;

    /** Water leaving, in kg/(m² s); negative where it condenses. */
    double leaving;

    SurfaceBalance(Exposure exposure) {
        this.exposure = exposure;
        transfer = MOLAR_MASS_OF_WATER * exposure.convection() / (MOLAR_HEAT * LEWIS);
        radiation = exposure.emissivity() * STEFAN_BOLTZMANN;
        dryPascal = exposure.pressurePascal()
                - Psychrometrics.vapourPascal(exposure.humidityRatio(), exposure.pressurePascal());
    }

    Exposure exposure() {
        return exposure;
    }

    /** The balance at a surface temperature and an air temperature, in °C, with a wetness. */
    void at(double surface, double air, double wetness) {
        double pressure = exposure.pressurePascal();
        double own = WATER_ACTIVITY * Psychrometrics.saturationPascal(surface);
        boolean boils = own > BOILING * pressure;
        if (boils) {
            own = BOILING * pressure;
        }
        double drive = Math.log(dryPascal / (pressure - own));
        double open = drive >= 0 ? wetness : 1;
        leaving = open * transfer * drive;
        double kelvin = surface + ZERO_CELSIUS;
        double airKelvin = air + ZERO_CELSIUS;
        double cube = kelvin * kelvin * kelvin;
        double airSquare = airKelvin * airKelvin;
        double latent = Psychrometrics.latentHeat(surface);
        heat = exposure.convection() * (air - surface)
                + radiation * (airSquare * airSquare - cube * kelvin)
                - latent * leaving;
        double steeper =
                boils ? 0 : open * transfer * own * Psychrometrics.saturationGrowth(surface) / (pressure - own);
        slope = -exposure.convection()
                - 4 * radiation * cube
                - latent * steeper
                + Psychrometrics.LATENT_SLOPE * leaving;
    }

    /**
     * The surface temperature {@code x = base + answer · heat(x)}, and the balance at it. The heat falls as x rises, so that
     * there is one; Newton's method finds it inside a bracket.
     *
     * @param answer kelvin a W/m²; infinite: the temperature at which no heat enters
     * @param guess where to begin, in °C
     */
    double settle(double base, double answer, double air, double wetness, double guess) {
        double low = LOWEST_CELSIUS;
        double high = HIGHEST_CELSIUS;
        double own = Double.isInfinite(answer) ? 0 : 1;
        double factor = Double.isInfinite(answer) ? 1 : answer;
        double x = guess;
        for (int i = 0; i < MOST_TRIES; i++) {
            at(x, air, wetness);
            double miss = own * (x - base) - factor * heat;
            if (miss > 0) {
                high = x;
            } else {
                low = x;
            }
            double next = x - miss / (own - factor * slope);
            if (!(next > low && next < high)) {
                next = (low + high) / 2;
            }
            if (Math.abs(next - x) < CONVERGED_CELSIUS) {
                return next;
            }
            x = next;
        }
        return x;
    }
}
