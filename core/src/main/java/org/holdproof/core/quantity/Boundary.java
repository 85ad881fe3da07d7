package org.holdproof.core.quantity;

/**
 * A temperature as a rule prints it: figure and scale. 130 °F is not 54.4 °C.
 *
 * @param value the printed figure
 * @param unit the scale it is printed in
 */
public record Boundary(double value, TemperatureUnit unit) {
    /** The printed temperature, converted exactly, in °C. */
    public double celsius() {
        return unit.toCelsius(value);
    }

    /** As printed: {@code 130 °F}. */
    public String text() {
        String figure = value == Math.rint(value) ? Long.toString((long) value) : Double.toString(value);
        return figure + " " + unit.symbol();
    }
}
