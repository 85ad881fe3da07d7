package org.holdproof.report.chart;

import java.util.List;
import org.holdproof.report.draw.Box;
import org.holdproof.report.draw.Lettering;
import org.holdproof.report.draw.Palette;
import org.holdproof.report.draw.Pen;
import org.holdproof.report.draw.Stroke;

/** What every chart shares: the axes' lines, ticks and figures. */
final class ChartFrame {
    static final Lettering TICK = Lettering.soft(7.4);
    static final Lettering NOTE = Lettering.plain(7.4);
    static final Lettering NOTE_BOLD = Lettering.bold(7.4);

    /** Room left of and right of the plot for the figures of an axis. */
    static final double AXIS_ROOM = 26;

    /** Room under the plot for the clock and the date. */
    static final double CLOCK_ROOM = 21;

    private static final Stroke GRID = Stroke.solid(Palette.GRID, 0.5);
    private static final Stroke EDGE = Stroke.solid(Palette.SOFT, 0.6);
    private static final double TICK_LENGTH = 3;

    private ChartFrame() {}

    static void grid(Pen pen, Box plot, TimeAxis time, ValueAxis values, List<Double> ticks) {
        for (double tick : ticks) {
            pen.line(plot.x(), values.y(tick), plot.right(), values.y(tick), GRID);
        }
        for (TimeAxis.Tick tick : time.ticks(pen.type(), TICK)) {
            double x = time.x(tick.epochMillis());
            pen.line(x, plot.y(), x, plot.bottom(), GRID);
        }
    }

    static void edge(Pen pen, Box plot) {
        pen.frame(plot, EDGE);
    }

    static void valuesLeft(Pen pen, Box plot, ValueAxis values, List<Double> ticks) {
        for (double tick : ticks) {
            double y = values.y(tick);
            pen.line(plot.x() - TICK_LENGTH, y, plot.x(), y, EDGE);
            pen.textRight(TICK, ValueAxis.label(tick), plot.x() - TICK_LENGTH - 2, y - TICK.line() / 2);
        }
    }

    static void valuesRight(Pen pen, Box plot, ValueAxis values, List<Double> ticks) {
        for (double tick : ticks) {
            double y = values.y(tick);
            pen.line(plot.right(), y, plot.right() + TICK_LENGTH, y, EDGE);
            pen.text(TICK, ValueAxis.label(tick), plot.right() + TICK_LENGTH + 2, y - TICK.line() / 2);
        }
    }

    static void clock(Pen pen, Box plot, TimeAxis time) {
        List<TimeAxis.Tick> ticks = time.ticks(pen.type(), TICK);
        double top = plot.bottom() + TICK_LENGTH + 0.5;
        double used = Double.NEGATIVE_INFINITY;
        for (TimeAxis.Tick tick : ticks) {
            double x = time.x(tick.epochMillis());
            double half = pen.type().width(TICK, tick.time()) / 2;
            pen.line(x, plot.bottom(), x, plot.bottom() + TICK_LENGTH, EDGE);
            // On both sides of a break two ticks may stand closer than their words are wide.
            if (x - half > used + 2) {
                pen.textCentred(TICK, tick.time(), x, top);
                used = x + half;
            }
        }
        double nextLeft = Double.POSITIVE_INFINITY;
        for (int i = ticks.size() - 1; i >= 0; i--) {
            TimeAxis.Tick tick = ticks.get(i);
            if (tick.date().isEmpty()) {
                continue;
            }
            double width = pen.type().width(NOTE_BOLD, tick.date());
            double left = Math.min(time.x(tick.epochMillis()) - width / 2, nextLeft - width - 5);
            if (left < plot.x() - AXIS_ROOM) {
                continue;
            }
            pen.text(NOTE_BOLD, tick.date(), left, tick.time().isEmpty() ? top : top + TICK.line());
            nextLeft = left;
        }
    }
}
