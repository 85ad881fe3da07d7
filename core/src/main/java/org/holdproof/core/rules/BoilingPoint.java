package org.holdproof.core.rules;

import java.util.OptionalDouble;
import org.holdproof.core.quantity.Boundary;

/**
 * Where pure water boils, for a thermometer's boiling check.
 *
 * @param altitudeMetres above sea level in the standard atmosphere; empty where only the pressure is given
 * @param kilopascals the pressure at the place itself, not reduced to sea level
 * @param at the boiling point as printed
 * @param tolerance how far the printed figure may be off or a reading may differ, in the scale of {@code at}
 */
public record BoilingPoint(
        String id, OptionalDouble altitudeMetres, double kilopascals, Boundary at, double tolerance, Citation citation)
        implements Rule {
    @Override
    public String title() {
        return "Boiling point at " + kilopascals + " kPa";
    }
}
