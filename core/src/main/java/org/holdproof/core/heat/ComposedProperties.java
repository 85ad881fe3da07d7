package org.holdproof.core.heat;

import org.holdproof.core.heat.Composition.Path;

/**
 * Properties from composition, tabulated once by temperature because a solution asks for them at every node and step.
 * Between entries the line is straight; the polynomials bend by less than 1e-6 of the value between two of them.
 */
final class ComposedProperties implements ThermalProperties {
    private static final int LOWEST_CELSIUS = 0;
    private static final int HIGHEST_CELSIUS = 150;
    private static final int ENTRIES_PER_CELSIUS = 4;

    private final Composition composition;
    private final double[] conductivity;
    private final double[] heatCapacity;

    ComposedProperties(Composition composition, Path path) {
        this.composition = composition;
        int count = (HIGHEST_CELSIUS - LOWEST_CELSIUS) * ENTRIES_PER_CELSIUS + 1;
        conductivity = new double[count];
        heatCapacity = new double[count];
        for (int i = 0; i < count; i++) {
            double celsius = LOWEST_CELSIUS + (double) i / ENTRIES_PER_CELSIUS;
            conductivity[i] = conductivityOf(path, celsius);
            heatCapacity[i] = density(celsius) * specificHeat(celsius);
        }
    }

    private double conductivityOf(Path path, double celsius) {
        double density = density(celsius);
        double sum = 0;
        for (FoodPart part : FoodPart.values()) {
            double volumeFraction = density * composition.fraction(part) / part.density(celsius);
            double own = part.conductivity(celsius);
            sum += path == Path.PARALLEL ? volumeFraction * own : volumeFraction / own;
        }
        return path == Path.PARALLEL ? sum : 1 / sum;
    }

    /** In kg/m³. */
    private double density(double celsius) {
        double volume = 0;
        for (FoodPart part : FoodPart.values()) {
            volume += composition.fraction(part) / part.density(celsius);
        }
        return 1 / volume;
    }

    /** In J/(kg K). */
    private double specificHeat(double celsius) {
        double heat = 0;
        for (FoodPart part : FoodPart.values()) {
            heat += composition.fraction(part) * part.specificHeat(celsius);
        }
        return heat;
    }

    @Override
    public double conductivity(double celsius) {
        return between(conductivity, celsius);
    }

    @Override
    public double heatCapacity(double celsius) {
        return between(heatCapacity, celsius);
    }

    @Override
    public boolean isConstant() {
        return false;
    }

    private static double between(double[] table, double celsius) {
        double held = Math.min(Math.max(celsius, LOWEST_CELSIUS), HIGHEST_CELSIUS);
        double place = (held - LOWEST_CELSIUS) * ENTRIES_PER_CELSIUS;
        int below = Math.min((int) place, table.length - 2);
        return table[below] + (place - below) * (table[below + 1] - table[below]);
    }
}
