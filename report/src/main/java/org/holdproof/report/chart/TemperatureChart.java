package org.holdproof.report.chart;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.wording.Wording;
import org.holdproof.report.draw.Box;
import org.holdproof.report.draw.Lettering;
import org.holdproof.report.draw.Palette;
import org.holdproof.report.draw.Pen;
import org.holdproof.report.draw.Stroke;

/**
 * Temperatures over the clock: traces with their tolerance, stages, limits, deadlines, spells without readings, and the
 * parts of the record that decided. A label that finds no free place is left out, never laid over another.
 *
 * @param fromMillis left edge, in milliseconds since 1970-01-01T00:00Z
 * @param toMillis right edge, after the left one
 * @param leftOut stretches within it that are drawn as a narrow break, in order and apart
 * @param units the scales of the axes, the first on the left, the second, where there is one, on the right
 */
public record TemperatureChart(
        long fromMillis,
        long toMillis,
        List<Span> leftOut,
        ZoneId zone,
        List<TemperatureUnit> units,
        List<TemperatureTrace> traces,
        List<StageBand> stages,
        List<LimitLine> limits,
        List<Deadline> deadlines,
        List<Blank> blanks,
        List<TimeMark> marks) {

    private static final double STAGE_BAND = 13;
    private static final double STAGE_LABEL = 9;
    private static final double LEGEND_SAMPLE = 18;
    private static final double LEGEND_GAP = 12;
    private static final double MARK = 3.2;
    private static final int MOST_LEGEND_LINES = 2;
    private static final int MOST_NAMED_BLANKS = 3;
    private static final double MARGIN_CELSIUS = 3;

    private static final Lettering LABEL = ChartFrame.NOTE;
    private static final Lettering LIMIT_LABEL = ChartFrame.NOTE_BOLD.in(Palette.LIMIT);
    private static final Stroke LIMIT = Stroke.dashed(Palette.LIMIT, 0.9, 4, 2);
    private static final Stroke DUE = Stroke.solid(Palette.LIMIT, 0.9);
    private static final Stroke HATCH = Stroke.solid(Palette.HATCH, 0.45);
    private static final Stroke BROKEN = Stroke.dashed(Palette.SOFT, 0.7, 2, 2);
    private static final Stroke BOUNDARY = Stroke.dashed(Palette.HATCH, 0.5, 1, 2);

    public TemperatureChart {
        leftOut = List.copyOf(leftOut);
        units = List.copyOf(units);
        traces = List.copyOf(traces);
        stages = List.copyOf(stages);
        limits = List.copyOf(limits);
        deadlines = List.copyOf(deadlines);
        blanks = List.copyOf(blanks);
        marks = List.copyOf(marks);
    }

    /** How many columns a plot of this width can show, for {@link Thinning}. */
    public static int columns(double width) {
        return (int) Math.max(1, Math.round((width - 2 * ChartFrame.AXIS_ROOM) * 2));
    }

    /** Draws the chart into a box. */
    public void draw(Pen pen, Box box) {
        List<List<LegendEntry>> legend = legend(pen, box.width());
        double head = stages.isEmpty() ? 9 : STAGE_BAND + STAGE_LABEL + 1;
        double foot = ChartFrame.CLOCK_ROOM + legend.size() * (LABEL.line() + 1);
        Box plot = new Box(
                box.x() + ChartFrame.AXIS_ROOM,
                box.y() + head,
                box.width() - 2 * ChartFrame.AXIS_ROOM,
                box.height() - head - foot);
        TimeAxis time = new TimeAxis(plot.x(), plot.width(), fromMillis, toMillis, zone, leftOut);
        TemperatureUnit leading = units.get(0);
        ValueAxis axis = temperatures(plot, leading);
        int tickCount = (int) Math.max(2, plot.height() / 24);

        stageBoundaries(pen, plot, time);
        ChartFrame.grid(pen, plot, time, axis, axis.ticks(tickCount));
        pen.within(plot, () -> {
            late(pen, plot, time, axis);
            tolerance(pen, time, axis);
        });
        Placement placement = new Placement(plot);
        for (Blank blank : blanks) {
            clipped(plot, time, blank.fromMillis(), blank.toMillis()).ifPresent(part -> pen.hatch(part, 4, HATCH));
        }
        pen.within(plot, () -> {
            for (LimitLine limit : limits) {
                double y = axis.y(leading.fromCelsius(limit.celsius()));
                pen.line(time.x(limit.fromMillis()), y, time.x(limit.toMillis()), y, LIMIT);
            }
            due(pen, plot, time, axis);
            traces(pen, time, axis, placement);
        });
        markBars(pen, plot, time, placement);
        breaks(pen, plot, time, placement);
        ChartFrame.edge(pen, plot);
        ChartFrame.valuesLeft(pen, plot, axis, axis.ticks(tickCount));
        pen.text(ChartFrame.NOTE_BOLD, leading.symbol(), box.x(), plot.y() - LABEL.line() - 2);
        if (units.size() > 1) {
            secondScale(pen, box, plot, axis, tickCount);
        }
        ChartFrame.clock(pen, plot, time);
        stageBands(pen, plot, time);
        labels(pen, plot, time, axis, placement);
        drawLegend(pen, box, plot.bottom() + ChartFrame.CLOCK_ROOM, legend);
    }

    /** A band without anything in it where the axis leaves a stretch out, with how long it is. */
    private void breaks(Pen pen, Box plot, TimeAxis time, Placement placement) {
        for (Span gone : leftOut) {
            Box band = new Box(time.x(gone.fromMillis()), plot.y(), TimeAxis.BREAK, plot.height());
            pen.fill(band, Palette.PAPER);
            for (double x : new double[] {band.x(), band.right()}) {
                pen.line(x, band.y(), x, band.bottom(), BROKEN);
            }
            String length = Wording.minutes(gone.minutes());
            String whole = length + " left out";
            String words = pen.type().width(LABEL, whole) + 4 <= band.height() ? whole : length;
            pen.textUpwards(LABEL, words, band.centreX(), band.centreY());
            placement.addLabel(band);
        }
    }

    private double leading(double celsius) {
        return units.get(0).fromCelsius(celsius);
    }

    private ValueAxis temperatures(Box plot, TemperatureUnit leading) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (TemperatureTrace trace : traces) {
            for (Thinning.Run run : trace.runs()) {
                for (int i = 0; i < run.size(); i++) {
                    if (run.millis(i) >= fromMillis && run.millis(i) <= toMillis) {
                        low = Math.min(low, run.celsius(i) - trace.toleranceCelsius());
                        high = Math.max(high, run.celsius(i) + trace.toleranceCelsius());
                    }
                }
            }
        }
        for (LimitLine limit : limits) {
            low = Math.min(low, limit.celsius() - MARGIN_CELSIUS);
            high = Math.max(high, limit.celsius() + MARGIN_CELSIUS);
        }
        for (Deadline deadline : deadlines) {
            low = Math.min(low, deadline.celsius() - MARGIN_CELSIUS);
            high = Math.max(high, deadline.celsius() + MARGIN_CELSIUS);
        }
        if (low > high) {
            low = 0;
            high = 100;
        }
        return ValueAxis.around(
                plot.y(), plot.height(), leading.fromCelsius(low), leading.fromCelsius(Math.max(high, low + 1)), (int)
                        Math.max(2, plot.height() / 9));
    }

    private void secondScale(Pen pen, Box box, Box plot, ValueAxis axis, int tickCount) {
        TemperatureUnit leading = units.get(0);
        TemperatureUnit second = units.get(1);
        ValueAxis other = new ValueAxis(
                axis.top(),
                axis.height(),
                second.fromCelsius(leading.toCelsius(axis.low())),
                second.fromCelsius(leading.toCelsius(axis.high())));
        ChartFrame.valuesRight(pen, plot, other, other.ticks(tickCount));
        pen.textRight(ChartFrame.NOTE_BOLD, second.symbol(), box.right(), plot.y() - LABEL.line() - 2);
    }

    private Optional<Box> clipped(Box plot, TimeAxis time, long from, long to) {
        double left = Math.max(plot.x(), time.x(from));
        double right = Math.min(plot.right(), time.x(to));
        return right - left < 0.3
                ? Optional.empty()
                : Optional.of(new Box(left, plot.y(), right - left, plot.height()));
    }

    private void stageBoundaries(Pen pen, Box plot, TimeAxis time) {
        for (StageBand stage : stages) {
            for (long edge : new long[] {stage.fromMillis(), stage.toMillis()}) {
                double x = time.x(edge);
                if (x > plot.x() + 0.5 && x < plot.right() - 0.5) {
                    pen.line(x, plot.y(), x, plot.bottom(), BOUNDARY);
                }
            }
        }
    }

    private void stageBands(Pen pen, Box plot, TimeAxis time) {
        double top = plot.y() - STAGE_BAND;
        Placement names = new Placement(new Box(
                plot.x() - ChartFrame.AXIS_ROOM, top - STAGE_LABEL - 1, plot.width() + 2 * ChartFrame.AXIS_ROOM, 12));
        Lettering inside = Lettering.bold(7.8);
        for (StageBand stage : stages) {
            double left = Math.max(plot.x(), time.x(stage.fromMillis()));
            double right = Math.min(plot.right(), time.x(stage.toMillis()));
            if (stage.fromMillis() > toMillis || stage.toMillis() < fromMillis) {
                continue;
            }
            double width = pen.type().width(inside, stage.label());
            if (!stage.isMoment()) {
                Box band = new Box(left, top, Math.max(right - left, 0.8), STAGE_BAND);
                pen.fill(band, stage.tint());
                pen.frame(band, Stroke.solid(Palette.SOFT, 0.5));
                if (width + 4 <= right - left) {
                    pen.textCentred(inside, stage.label(), band.centreX(), top + 2);
                    continue;
                }
            } else {
                pen.shape(
                        new double[] {left - 2.5, left + 2.5, left},
                        new double[] {plot.y() - 4.5, plot.y() - 4.5, plot.y()},
                        Palette.INK);
            }
            double middle = stage.isMoment() ? left : (left + right) / 2;
            double small = pen.type().width(LABEL, stage.label());
            List<Box> candidates = new ArrayList<>();
            for (double at : new double[] {middle - small / 2, middle - 2, middle - small + 2}) {
                candidates.add(new Box(at, top - STAGE_LABEL - 0.5, small + 3, LABEL.line()));
            }
            names.place(candidates).ifPresent(spot -> {
                pen.text(LABEL, stage.label(), spot.x(), spot.y());
                if (stage.isMoment()) {
                    pen.line(middle, top - 0.5, middle, plot.y() - 4.5, Stroke.solid(Palette.INK, 0.5));
                }
            });
        }
    }

    /** The field a cooling curve must keep out of, right of each deadline and above its temperature. */
    private void late(Pen pen, Box plot, TimeAxis time, ValueAxis axis) {
        for (Deadline deadline : deadlines) {
            double left = time.x(deadline.dueMillis());
            double y = axis.y(leading(deadline.celsius()));
            if (left < plot.right() && y > plot.y()) {
                pen.fill(new Box(left, plot.y(), plot.right() - left, y - plot.y()), new java.awt.Color(0xF4EAEF));
            }
        }
    }

    private void due(Pen pen, Box plot, TimeAxis time, ValueAxis axis) {
        for (Deadline deadline : deadlines) {
            double y = axis.y(leading(deadline.celsius()));
            double x = time.x(deadline.dueMillis());
            pen.line(time.x(deadline.startMillis()), y, Math.min(x, plot.right()), y, LIMIT);
            pen.line(x, plot.y(), x, y, DUE);
            pen.disc(x, y, 2, Palette.LIMIT);
        }
    }

    private void tolerance(Pen pen, TimeAxis time, ValueAxis axis) {
        for (TemperatureTrace trace : traces) {
            if (trace.toleranceCelsius() <= 0) {
                continue;
            }
            for (Thinning.Run run : trace.runs()) {
                int size = run.size();
                double[] xs = new double[2 * size];
                double[] ys = new double[2 * size];
                for (int i = 0; i < size; i++) {
                    xs[i] = time.x(run.millis(i));
                    ys[i] = axis.y(leading(run.celsius(i) + trace.toleranceCelsius()));
                    xs[2 * size - 1 - i] = xs[i];
                    ys[2 * size - 1 - i] = axis.y(leading(run.celsius(i) - trace.toleranceCelsius()));
                }
                pen.shape(xs, ys, Palette.TOLERANCE);
            }
        }
    }

    private void traces(Pen pen, TimeAxis time, ValueAxis axis, Placement placement) {
        for (int i = traces.size() - 1; i >= 0; i--) {
            TemperatureTrace trace = traces.get(i);
            for (Thinning.Run run : trace.runs()) {
                double[] xs = new double[run.size()];
                double[] ys = new double[run.size()];
                for (int point = 0; point < xs.length; point++) {
                    xs[point] = time.x(run.millis(point));
                    ys[point] = axis.y(leading(run.celsius(point)));
                }
                if (xs.length == 1) {
                    pen.disc(xs[0], ys[0], 2.2, trace.stroke().colour());
                } else {
                    pen.path(xs, ys, trace.stroke());
                }
                placement.addCurve(xs, ys);
            }
        }
    }

    private void markBars(Pen pen, Box plot, TimeAxis time, Placement placement) {
        for (TimeMark mark : marks) {
            clipped(plot, time, mark.fromMillis(), mark.toMillis()).ifPresent(part -> {
                Box bar = new Box(part.x(), plot.bottom() - MARK, Math.max(part.width(), 1.5), MARK);
                pen.fill(bar, Palette.INK);
                Stroke side = Stroke.dashed(Palette.INK, 0.5, 2, 1.5);
                pen.line(part.x(), plot.y(), part.x(), plot.bottom(), side);
                pen.line(part.right(), plot.y(), part.right(), plot.bottom(), side);
                placement.addLabel(bar);
            });
        }
    }

    private void labels(Pen pen, Box plot, TimeAxis time, ValueAxis axis, Placement placement) {
        for (TimeMark mark : marks) {
            double left = Math.max(plot.x(), time.x(mark.fromMillis()));
            double right = Math.min(plot.right(), time.x(mark.toMillis()));
            List<Box> spots = new ArrayList<>();
            double width = pen.type().width(ChartFrame.NOTE_BOLD, mark.label()) + 4;
            for (double y = plot.bottom() - MARK - LABEL.line() - 1; y > plot.centreY(); y -= LABEL.line()) {
                addAlong(spots, plot, left, right, width, y);
            }
            write(pen, placement, spots, ChartFrame.NOTE_BOLD, mark.label());
        }
        for (Deadline deadline : deadlines) {
            double y = axis.y(leading(deadline.celsius()));
            double x = time.x(deadline.dueMillis());
            double width = pen.type().width(LIMIT_LABEL, deadline.label()) + 4;
            List<Box> spots = new ArrayList<>();
            spots.add(new Box(x + 3, y - LABEL.line() - 2, width, LABEL.line()));
            spots.add(new Box(x + 3, y + 2, width, LABEL.line()));
            spots.add(new Box(x - width - 3, y + 2, width, LABEL.line()));
            spots.add(new Box(x - width - 3, y - LABEL.line() - 2, width, LABEL.line()));
            addAlong(spots, plot, time.x(deadline.startMillis()), x, width, y + 2);
            addAlong(spots, plot, time.x(deadline.startMillis()), x, width, y - LABEL.line() - 2);
            write(pen, placement, spots, LIMIT_LABEL, deadline.label());
        }
        for (LimitLine limit : limits) {
            double y = axis.y(leading(limit.celsius()));
            double left = Math.max(plot.x(), time.x(limit.fromMillis()));
            double right = Math.min(plot.right(), time.x(limit.toMillis()));
            double width = pen.type().width(LIMIT_LABEL, limit.label()) + 4;
            List<Box> spots = new ArrayList<>();
            addAlong(spots, plot, left, right, width, y + 1.5);
            addAlong(spots, plot, left, right, width, y - LABEL.line() - 1.5);
            addAlong(spots, plot, left, right, width, y + 2 + LABEL.line());
            write(pen, placement, spots, LIMIT_LABEL, limit.label());
        }
        blanks.stream()
                .flatMap(blank -> clipped(plot, time, blank.fromMillis(), blank.toMillis()).stream())
                .sorted(Comparator.comparingDouble(Box::width).reversed())
                .limit(MOST_NAMED_BLANKS)
                .forEach(part -> nameBlank(pen, placement, part));
    }

    private static void addAlong(List<Box> spots, Box plot, double left, double right, double width, double y) {
        double height = LABEL.line();
        double[] starts = {
            right - width,
            left,
            (left + right - width) / 2,
            left + (right - left - width) / 4,
            left + (right - left - width) * 3 / 4,
            right,
            left - width
        };
        for (double start : starts) {
            double kept = Math.max(plot.x() + 1, Math.min(start, plot.right() - width - 1));
            spots.add(new Box(kept, y, width, height));
        }
    }

    private static void write(Pen pen, Placement placement, List<Box> spots, Lettering lettering, String label) {
        placement.place(spots).ifPresent(spot -> {
            pen.fill(new Box(spot.x() + 0.5, spot.y() + 0.5, spot.width() - 1, spot.height() - 1), Palette.PAPER);
            pen.text(lettering, label, spot.x() + 2, spot.y());
        });
    }

    private static void nameBlank(Pen pen, Placement placement, Box part) {
        String words = "no readings";
        double length = pen.type().width(ChartFrame.NOTE_BOLD, words) + 4;
        double height = LABEL.line() + 1;
        if (part.width() > length + 2) {
            List<Box> spots = new ArrayList<>();
            for (double share : new double[] {0.5, 0.35, 0.65, 0.2, 0.8, 0.1}) {
                spots.add(new Box(
                        part.centreX() - length / 2, part.y() + part.height() * share - height / 2, length, height));
            }
            write(pen, placement, spots, ChartFrame.NOTE_BOLD, words);
        } else if (part.height() > length + 6) {
            List<Box> spots = new ArrayList<>();
            for (double share : new double[] {0.5, 0.35, 0.65}) {
                spots.add(new Box(
                        part.centreX() - height / 2, part.y() + part.height() * share - length / 2, height, length));
            }
            placement.place(spots).ifPresent(spot -> {
                pen.fill(spot, Palette.PAPER);
                pen.textUpwards(ChartFrame.NOTE_BOLD, words, spot.centreX(), spot.centreY());
            });
        }
    }

    /** One sample of the legend. */
    private record LegendEntry(String words, Optional<TemperatureTrace> trace, Kind kind, double width) {
        enum Kind {
            TRACE,
            TOLERANCE,
            LIMIT,
            BLANK,
            DECISIVE
        }
    }

    private List<List<LegendEntry>> legend(Pen pen, double width) {
        List<LegendEntry> entries = new ArrayList<>();
        for (TemperatureTrace trace : traces) {
            if (!trace.name().isEmpty()) {
                entries.add(entry(pen, trace.name(), Optional.of(trace), LegendEntry.Kind.TRACE));
            }
        }
        if (traces.stream().anyMatch(trace -> trace.toleranceCelsius() > 0)) {
            entries.add(entry(pen, "its tolerance", Optional.empty(), LegendEntry.Kind.TOLERANCE));
        }
        if (!limits.isEmpty() || !deadlines.isEmpty()) {
            entries.add(entry(pen, "limit", Optional.empty(), LegendEntry.Kind.LIMIT));
        }
        if (!blanks.isEmpty()) {
            entries.add(entry(pen, "no readings", Optional.empty(), LegendEntry.Kind.BLANK));
        }
        if (!marks.isEmpty()) {
            entries.add(entry(pen, "part that decided", Optional.empty(), LegendEntry.Kind.DECISIVE));
        }
        List<List<LegendEntry>> lines = new ArrayList<>();
        double used = Double.POSITIVE_INFINITY;
        for (LegendEntry entry : entries) {
            if (used + entry.width() > width) {
                if (lines.size() == MOST_LEGEND_LINES) {
                    break;
                }
                lines.add(new ArrayList<>());
                used = ChartFrame.AXIS_ROOM;
            }
            lines.get(lines.size() - 1).add(entry);
            used += entry.width();
        }
        return lines;
    }

    private static LegendEntry entry(Pen pen, String words, Optional<TemperatureTrace> trace, LegendEntry.Kind kind) {
        return new LegendEntry(
                words, trace, kind, LEGEND_SAMPLE + 3 + pen.type().width(LABEL, words) + LEGEND_GAP);
    }

    private static void drawLegend(Pen pen, Box box, double top, List<List<LegendEntry>> lines) {
        double y = top;
        for (List<LegendEntry> line : lines) {
            double x = box.x() + ChartFrame.AXIS_ROOM;
            for (LegendEntry entry : line) {
                double middle = y + LABEL.line() / 2;
                Box sample = new Box(x, middle - 3, LEGEND_SAMPLE, 6);
                switch (entry.kind()) {
                    case TRACE ->
                        entry.trace()
                                .ifPresent(
                                        trace -> pen.line(sample.x(), middle, sample.right(), middle, trace.stroke()));
                    case TOLERANCE -> pen.fill(sample, Palette.TOLERANCE);
                    case LIMIT -> pen.line(sample.x(), middle, sample.right(), middle, LIMIT);
                    case BLANK -> {
                        pen.hatch(sample, 4, HATCH);
                        pen.frame(sample, HATCH);
                    }
                    case DECISIVE -> pen.fill(new Box(sample.x(), middle - MARK / 2, LEGEND_SAMPLE, MARK), Palette.INK);
                }
                pen.text(LABEL, entry.words(), sample.right() + 3, y);
                x += entry.width();
            }
            y += LABEL.line() + 1;
        }
    }
}
