package org.holdproof.core.verdict;

import java.util.List;

/**
 * A figure over time, thinned for drawing: at every instant its worst, nominal and best value.
 *
 * @param title what it shows
 * @param unit of the values
 */
public record Curve(String title, String unit, List<Point> points) {
    public Curve {
        points = List.copyOf(points);
    }

    /** One instant. */
    public record Point(long epochMillis, double worst, double nominal, double best) {}
}
