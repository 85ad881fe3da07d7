package org.holdproof.report.draw;

import java.awt.Color;

/**
 * A line's look.
 *
 * @param width in points
 * @param dash length of a dash, in points; 0 for an unbroken line
 * @param space between dashes, in points
 */
public record Stroke(Color colour, double width, double dash, double space) {
    public static Stroke solid(Color colour, double width) {
        return new Stroke(colour, width, 0, 0);
    }

    public static Stroke dashed(Color colour, double width, double dash, double space) {
        return new Stroke(colour, width, dash, space);
    }
}
