package org.holdproof.cli.terminal;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.IntFunction;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.log.Trace;
import org.holdproof.core.plan.PlanWording;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.quantity.TemperatureUnit;

/**
 * One probe's temperature over the whole cook, in characters, with one limit and the stages below.
 *
 * @param trace the readings
 * @param span the time across
 * @param unit the scale the figures are printed in
 * @param limit drawn as a line
 * @param stages named below the curve
 * @param zone the kitchen's clock
 * @param gapMinutes longer intervals are left open
 */
public record CurvePlot(
        Trace trace,
        Span span,
        TemperatureUnit unit,
        Optional<Boundary> limit,
        List<Stage> stages,
        ZoneId zone,
        double gapMinutes) {

    private static final int LABEL = 5;
    private static final double GRID = 10;
    private static final int DOTS_APART = 3;

    /** A curve that stays below the limit is seen to. */
    private static final double HEADROOM_CELSIUS = 5;

    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

    /** Lines it takes besides the curve's own rows. */
    public static final int EXTRA_LINES = 2;

    public CurvePlot {
        stages = List.copyOf(stages);
    }

    /** The plot's lines, {@code rows} of them for the curve and {@value #EXTRA_LINES} for stages and clock. */
    public List<String> lines(int rows, boolean unicode) {
        return lines(Terminal.WIDTH, rows, unicode, this::clock);
    }

    /** The same with the time since its start below instead of the clock, for a cook that has no date yet. */
    public List<String> linesFromStart(int rows, boolean unicode) {
        return lines(Terminal.WIDTH, rows, unicode, this::elapsed);
    }

    /** The plot's lines on a screen of so many columns. */
    public List<String> lines(int width, int rows, boolean unicode) {
        return lines(width, rows, unicode, this::clock);
    }

    private List<String> lines(int width, int rows, boolean unicode, IntFunction<String> below) {
        DotCanvas canvas = new DotCanvas(width - LABEL - 2, rows, unicode);
        double low = GRID * Math.floor(lowest() / GRID);
        double high = Math.max(low + GRID, GRID * Math.ceil(highest() / GRID));
        draw(canvas, low, high);
        int limitRow = -1;
        if (limit.isPresent()) {
            int level = level(unit.fromCelsius(limit.get().celsius()), low, high, canvas.dotsDown());
            limitRow = level * rows / canvas.dotsDown();
            if (unicode) {
                canvas.dotted(level, DOTS_APART);
            }
        }
        List<String> lines = new ArrayList<>();
        for (int row = 0; row < rows; row++) {
            String label = "";
            char blank = ' ';
            if (row == limitRow) {
                label = number(unit.fromCelsius(limit.orElseThrow().celsius()));
                blank = unicode ? ' ' : '-';
            } else if (row == 0) {
                label = number(high);
            } else if (row == rows - 1) {
                label = number(low);
            }
            char edge = label.isEmpty() ? (unicode ? '│' : '|') : (unicode ? '┤' : '+');
            lines.add(pad(label, LABEL) + ' ' + edge + canvas.row(row, blank).stripTrailing());
        }
        lines.add(" ".repeat(LABEL + 2) + stageRuler(canvas.row(0, ' ').length(), unicode));
        lines.add(" ".repeat(LABEL + 2) + below.apply(canvas.row(0, ' ').length()));
        return lines;
    }

    private double lowest() {
        double lowest = limit.map(Boundary::celsius).orElse(Double.POSITIVE_INFINITY);
        for (int i = 0; i < trace.size(); i++) {
            lowest = Math.min(lowest, trace.celsius(i));
        }
        return Double.isFinite(lowest) ? unit.fromCelsius(lowest) : 0;
    }

    private double highest() {
        double highest =
                limit.map(boundary -> boundary.celsius() + HEADROOM_CELSIUS).orElse(Double.NEGATIVE_INFINITY);
        for (int i = 0; i < trace.size(); i++) {
            highest = Math.max(highest, trace.celsius(i));
        }
        return Double.isFinite(highest) ? unit.fromCelsius(highest) : 0;
    }

    private void draw(DotCanvas canvas, double low, double high) {
        for (int i = 0; i < trace.size(); i++) {
            boolean joined = i > 0 && trace.minutesAfter(i - 1) <= gapMinutes;
            int from = joined ? i - 1 : i;
            canvas.line(
                    place(trace.millis(from), canvas.dotsAcross()),
                    level(unit.fromCelsius(trace.celsius(from)), low, high, canvas.dotsDown()),
                    place(trace.millis(i), canvas.dotsAcross()),
                    level(unit.fromCelsius(trace.celsius(i)), low, high, canvas.dotsDown()));
        }
    }

    /** How far across an instant lies, from 0 to {@code width - 1}. */
    private int place(long millis, int width) {
        double length = Math.max(1, span.toMillis() - span.fromMillis());
        double part = (millis - span.fromMillis()) / length;
        return (int) Math.round(Math.min(1, Math.max(0, part)) * (width - 1));
    }

    private static int level(double value, double low, double high, int height) {
        return (int) Math.round((high - value) / (high - low) * (height - 1));
    }

    /** The stages' names under their time; where a name does not fit, its beginning. */
    private String stageRuler(int width, boolean unicode) {
        char[] ruler = new char[width];
        Arrays.fill(ruler, ' ');
        for (Stage stage : stages) {
            if (stage.to().isEmpty()) {
                continue;
            }
            int from = place(stage.from().toEpochMilli(), width);
            int to = place(stage.to().get().toEpochMilli(), width);
            String title = stage.kind().title();
            for (int at = from; at < Math.max(to, from + 1); at++) {
                int letter = at - from - 1;
                boolean last = at == to - 1;
                if (at == from) {
                    ruler[at] = unicode ? '├' : '|';
                } else if (letter < title.length() && !last) {
                    ruler[at] = title.charAt(letter);
                } else {
                    ruler[at] = unicode ? '─' : '-';
                }
            }
        }
        return new String(ruler).stripTrailing();
    }

    private String clock(int width) {
        String from = CLOCK.format(Instant.ofEpochMilli(span.fromMillis()).atZone(zone));
        String to = CLOCK.format(Instant.ofEpochMilli(span.toMillis()).atZone(zone));
        String between = zone.getId();
        int blanks = Math.max(2, width - from.length() - between.length() - to.length());
        return from + " ".repeat(blanks / 2) + between + " ".repeat(blanks - blanks / 2) + to;
    }

    private String elapsed(int width) {
        String from = "0 h";
        String to = PlanWording.time(span.minutes());
        return from + " ".repeat(Math.max(2, width - from.length() - to.length())) + to;
    }

    private static String number(double value) {
        String figure = String.format(Locale.ROOT, "%.1f", value);
        return figure.endsWith(".0") ? figure.substring(0, figure.length() - 2) : figure;
    }

    private static String pad(String text, int width) {
        return " ".repeat(Math.max(0, width - text.length())) + text;
    }
}
