package org.holdproof.core.heat;

/**
 * Bare meat in air: convection, radiation from surroundings as hot as the air, and water that evaporates or condenses.
 * With the surface at T, the heat that enters a square metre is {@code h (T_air − T) + ε σ (T_air⁴ − T⁴) − L E}, and the
 * water that leaves it {@code E = φ · M_w h / (C Le^(2/3)) · ln((P − p_air) / (P − a_w p(T)))}: the Lewis relation in molar
 * form, whose logarithm is exact for strong evaporation. Air wetter than the surface condenses on it, dry or not.
 *
 * @param convection h, in W/(m² K)
 * @param emissivity ε times how much of the surroundings it sees, 0 to 1
 * @param humidityRatio of the air, in kg of vapour a kg of dry air
 * @param wetness how the surface dries
 * @param pressurePascal of the air
 */
public record Exposure(
        double convection, double emissivity, double humidityRatio, Wetness wetness, double pressurePascal) {

    /** @throws IllegalArgumentException if a value is out of range */
    public Exposure {
        if (!(convection >= 0)
                || !Double.isFinite(convection)
                || !(emissivity >= 0)
                || !(emissivity <= 1)
                || !(humidityRatio >= 0)
                || !Double.isFinite(humidityRatio)
                || !(pressurePascal > 0)
                || !Double.isFinite(pressurePascal)) {
            throw new IllegalArgumentException("not an exposure: " + convection + " W/(m² K), emissivity " + emissivity
                    + ", " + humidityRatio + " kg/kg, " + pressurePascal + " Pa");
        }
    }

    /** At sea level. */
    public static Exposure of(double convection, double emissivity, double humidityRatio, Wetness wetness) {
        return new Exposure(convection, emissivity, humidityRatio, wetness, Psychrometrics.SEA_LEVEL_PASCAL);
    }

    /** The same in air of another humidity, in kg/kg. */
    public Exposure inAirOf(double otherHumidityRatio) {
        return new Exposure(convection, emissivity, otherHumidityRatio, wetness, pressurePascal);
    }

    /**
     * The temperature at which a surface of one wetness takes up no heat: what a piece long in this air comes to, in °C.
     *
     * @param share of a wet surface's evaporation, 0 to 1
     */
    public double settlesAtCelsius(double airCelsius, double share) {
        SurfaceBalance balance = new SurfaceBalance(this);
        return balance.settle(airCelsius, Double.POSITIVE_INFINITY, airCelsius, share, airCelsius);
    }
}
