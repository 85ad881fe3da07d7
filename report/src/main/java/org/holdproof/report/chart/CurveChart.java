package org.holdproof.report.chart;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.holdproof.core.verdict.Curve;
import org.holdproof.report.draw.Box;
import org.holdproof.report.draw.Lettering;
import org.holdproof.report.draw.Palette;
import org.holdproof.report.draw.Pen;
import org.holdproof.report.draw.Stroke;

/**
 * A figure over the clock as the band between its worst and its best case, with the nominal line.
 *
 * @param fromMillis left edge, in milliseconds since 1970-01-01T00:00Z
 * @param toMillis right edge, after the left one
 * @param points of the figure
 * @param target a level line; empty for none
 * @param targetLabel its name
 * @param top the highest value shown; what lies above is cut off, which the chart says
 */
public record CurveChart(
        long fromMillis,
        long toMillis,
        ZoneId zone,
        List<Curve.Point> points,
        String unit,
        OptionalDouble target,
        String targetLabel,
        double top,
        List<TimeMark> marks) {
    private static final Stroke WORST = Stroke.solid(Palette.CORE, 1.4);
    private static final Stroke NOMINAL = Stroke.dashed(Palette.CORE, 0.9, 3, 1.5);
    private static final Stroke BEST = Stroke.solid(Palette.OTHER_CORE, 0.7);
    private static final Stroke TARGET = Stroke.dashed(Palette.LIMIT, 0.9, 4, 2);
    private static final Lettering LABEL = ChartFrame.NOTE;
    private static final Lettering TARGET_LABEL = ChartFrame.NOTE_BOLD.in(Palette.LIMIT);
    private static final double HEAD = 11;

    public CurveChart {
        points = List.copyOf(points);
        marks = List.copyOf(marks);
    }

    /** Draws the chart into a box. */
    public void draw(Pen pen, Box box) {
        double foot = ChartFrame.CLOCK_ROOM + LABEL.line() + 1;
        Box plot = new Box(
                box.x() + ChartFrame.AXIS_ROOM,
                box.y() + HEAD,
                box.width() - 2 * ChartFrame.AXIS_ROOM,
                box.height() - HEAD - foot);
        TimeAxis time = new TimeAxis(plot.x(), plot.width(), fromMillis, toMillis, zone);
        ValueAxis axis = ValueAxis.around(plot.y(), plot.height(), 0, top, (int) Math.max(2, plot.height() / 24));
        List<Double> ticks = axis.ticks((int) Math.max(2, plot.height() / 24));
        Placement placement = new Placement(plot);

        ChartFrame.grid(pen, plot, time, axis, ticks);
        pen.within(plot, () -> {
            band(pen, time, axis);
            line(pen, time, axis, placement, BEST, Curve.Point::best);
            line(pen, time, axis, placement, NOMINAL, Curve.Point::nominal);
            line(pen, time, axis, placement, WORST, Curve.Point::worst);
            for (TimeMark mark : marks) {
                double left = time.x(mark.fromMillis());
                double right = time.x(mark.toMillis());
                Stroke side = Stroke.dashed(Palette.INK, 0.5, 2, 1.5);
                pen.line(left, plot.y(), left, plot.bottom(), side);
                pen.line(right, plot.y(), right, plot.bottom(), side);
                Box bar = new Box(left, plot.bottom() - 3.2, Math.max(right - left, 1.5), 3.2);
                pen.fill(bar, Palette.INK);
                placement.addLabel(bar);
            }
        });
        target.ifPresent(level -> {
            double y = axis.y(level);
            pen.line(plot.x(), y, plot.right(), y, TARGET);
            double width = pen.type().width(TARGET_LABEL, targetLabel) + 4;
            List<Box> spots = new ArrayList<>();
            for (double x : new double[] {plot.x() + 2, plot.centreX() - width / 2, plot.right() - width - 2}) {
                spots.add(new Box(x, y - LABEL.line() - 1.5, width, LABEL.line()));
                spots.add(new Box(x, y + 1.5, width, LABEL.line()));
            }
            placement.place(spots).ifPresent(spot -> {
                pen.fill(spot.inset(0.5), Palette.PAPER);
                pen.text(TARGET_LABEL, targetLabel, spot.x() + 2, spot.y());
            });
        });
        if (points.stream().allMatch(point -> point.best() <= 0)) {
            nothing(pen, plot, placement);
        }
        ChartFrame.edge(pen, plot);
        ChartFrame.valuesLeft(pen, plot, axis, ticks);
        pen.text(ChartFrame.NOTE_BOLD, unit, box.x(), box.y());
        ChartFrame.clock(pen, plot, time);
        legend(pen, plot);
    }

    /** A line along the foot of the plot is easily missed. */
    private static void nothing(Pen pen, Box plot, Placement placement) {
        String words = "nothing credited at any time, even at best";
        double width = pen.type().width(ChartFrame.NOTE_BOLD, words);
        Box spot = new Box(plot.centreX() - width / 2, plot.bottom() - 20, width, LABEL.line());
        placement.place(List.of(spot)).ifPresent(free -> pen.text(ChartFrame.NOTE_BOLD, words, free.x(), free.y()));
    }

    private interface Level {
        double of(Curve.Point point);
    }

    private void band(Pen pen, TimeAxis time, ValueAxis axis) {
        int size = points.size();
        if (size < 2) {
            return;
        }
        double[] xs = new double[2 * size];
        double[] ys = new double[2 * size];
        for (int i = 0; i < size; i++) {
            Curve.Point point = points.get(i);
            xs[i] = time.x(point.epochMillis());
            ys[i] = height(axis, point.best());
            xs[2 * size - 1 - i] = xs[i];
            ys[2 * size - 1 - i] = height(axis, point.worst());
        }
        pen.shape(xs, ys, Palette.TOLERANCE);
    }

    private void line(Pen pen, TimeAxis time, ValueAxis axis, Placement placement, Stroke stroke, Level level) {
        if (points.size() < 2) {
            return;
        }
        double[] xs = new double[points.size()];
        double[] ys = new double[points.size()];
        for (int i = 0; i < xs.length; i++) {
            xs[i] = time.x(points.get(i).epochMillis());
            ys[i] = height(axis, level.of(points.get(i)));
        }
        pen.path(xs, ys, stroke);
        placement.addCurve(xs, ys);
    }

    /** Far above the plot a line only has to stay above it: PDF readers limit the size of coordinates. */
    private static double height(ValueAxis axis, double value) {
        return axis.y(Math.min(value, axis.high() + (axis.high() - axis.low())));
    }

    private void legend(Pen pen, Box plot) {
        double y = plot.bottom() + ChartFrame.CLOCK_ROOM;
        double x = plot.x();
        x = sample(pen, x, y, WORST, "worst case");
        x = sample(pen, x, y, NOMINAL, "nominal");
        x = sample(pen, x, y, BEST, "best case");
        boolean cut = points.stream().anyMatch(point -> point.best() > top);
        if (cut) {
            pen.text(LABEL, "the curve goes on above the chart", x, y);
        }
    }

    private static double sample(Pen pen, double x, double y, Stroke stroke, String words) {
        double middle = y + LABEL.line() / 2;
        pen.line(x, middle, x + 18, middle, stroke);
        pen.text(LABEL, words, x + 21, y);
        return x + 21 + pen.type().width(LABEL, words) + 12;
    }
}
