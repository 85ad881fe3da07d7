package org.holdproof.core.heat;

/** How food conducts and stores heat, by temperature. Water frozen in it is not covered. */
public interface ThermalProperties {

    /** Thermal conductivity, in W/(m K). */
    double conductivity(double celsius);

    /** Density times specific heat, in J/(m³ K). */
    double heatCapacity(double celsius);

    /** Whether both are the same at every temperature. */
    boolean isConstant();

    /** Thermal diffusivity, in m²/s. */
    default double diffusivity(double celsius) {
        return conductivity(celsius) / heatCapacity(celsius);
    }

    /**
     * Properties that do not change with temperature.
     *
     * @param conductivity in W/(m K)
     * @param diffusivity in m²/s
     * @throws IllegalArgumentException if either is not positive and finite
     */
    static ThermalProperties constant(double conductivity, double diffusivity) {
        return new ConstantProperties(conductivity, diffusivity);
    }
}
