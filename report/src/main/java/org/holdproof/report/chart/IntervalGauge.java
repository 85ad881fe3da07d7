package org.holdproof.report.chart;

import java.awt.Color;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.report.draw.Box;
import org.holdproof.report.draw.Palette;
import org.holdproof.report.draw.Pen;
import org.holdproof.report.draw.Stroke;

/**
 * A figure against its limit in one line of print: the side of the limit that is asked for is shaded, the bar runs from
 * worst to best, its tick is the nominal figure. An end nobody can bound is an arrow.
 *
 * @param floor whether more is better
 */
public record IntervalGauge(Bounded figure, double limit, boolean floor, Color colour) {
    private static final double PAD = 0.35;

    /** Draws the gauge into a box. */
    public void draw(Pen pen, Box box) {
        double low = limit;
        double high = limit;
        for (double value : new double[] {figure.worst(), figure.nominal(), figure.best()}) {
            if (Double.isFinite(value)) {
                low = Math.min(low, value);
                high = Math.max(high, value);
            }
        }
        double room = high > low ? (high - low) * PAD : Math.max(1, Math.abs(limit) * PAD);
        Scale scale = new Scale(box, low - room, high + room);
        double atLimit = scale.x(limit);
        Box asked = floor
                ? new Box(atLimit, box.y() + 1.5, box.right() - atLimit, box.height() - 3)
                : new Box(box.x(), box.y() + 1.5, atLimit - box.x(), box.height() - 3);
        pen.fill(asked, Palette.BETWEEN);
        pen.line(box.x(), box.centreY(), box.right(), box.centreY(), Stroke.solid(Palette.RULE, 0.5));

        double left = scale.x(Math.min(figure.worst(), figure.best()));
        double right = scale.x(Math.max(figure.worst(), figure.best()));
        double thin = Math.max(0, 1.6 - (right - left)) / 2;
        pen.fill(new Box(left - thin, box.centreY() - 1.8, right - left + 2 * thin, 3.6), colour);
        arrow(pen, box, Math.min(figure.worst(), figure.best()) == Double.NEGATIVE_INFINITY, left, -1);
        arrow(pen, box, Math.max(figure.worst(), figure.best()) == Double.POSITIVE_INFINITY, right, 1);
        if (Double.isFinite(figure.nominal())) {
            double x = scale.x(figure.nominal());
            pen.line(x, box.centreY() - 3.6, x, box.centreY() + 3.6, Stroke.solid(colour, 1));
        }
        pen.line(atLimit, box.y(), atLimit, box.bottom(), Stroke.solid(Palette.INK, 1.1));
    }

    private void arrow(Pen pen, Box box, boolean endless, double x, int direction) {
        if (endless) {
            pen.shape(
                    new double[] {x, x - direction * 5.0, x - direction * 5.0},
                    new double[] {box.centreY(), box.centreY() - 4, box.centreY() + 4},
                    colour);
        }
    }

    private record Scale(Box box, double low, double high) {
        double x(double value) {
            double share = (Math.max(low, Math.min(high, value)) - low) / (high - low);
            return box.x() + box.width() * share;
        }
    }
}
