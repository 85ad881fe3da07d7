package org.holdproof.report.lesson;

import java.awt.Color;
import java.util.ArrayList;
import java.util.List;
import org.holdproof.core.lesson.CountCourse;
import org.holdproof.core.lesson.InWords;
import org.holdproof.core.lesson.Lesson;
import org.holdproof.core.lesson.LessonBath;
import org.holdproof.core.lesson.WholeLogs;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.report.draw.Box;
import org.holdproof.report.draw.Lettering;
import org.holdproof.report.draw.Palette;
import org.holdproof.report.draw.Pen;
import org.holdproof.report.draw.Stroke;
import org.holdproof.report.draw.Typesetter;

/**
 * The baths side by side: what rises and falls in each, over the same hours and the same scale, and the figures under
 * it.
 *
 * @param baths those shown
 */
record RowOfBaths(Lesson lesson, List<LessonBath> baths, CurveStrokes looks) {
    private static final double TOP = 9;
    private static final double BOTTOM = WholeLogs.FLOOR;
    private static final List<Integer> LEVELS = List.of(8, 6, 4, 2, 0, -2, -4, -6);
    private static final double GAP = 3;

    RowOfBaths {
        baths = List.copyOf(baths);
    }

    private Lettering plain() {
        return Lettering.plain(looks.small());
    }

    private Lettering bold() {
        return Lettering.bold(looks.small());
    }

    /** Height of everything but the panels themselves. */
    double besides(Typesetter type, double width) {
        return zoneHeight()
                + nameHeight()
                + plain().line()
                + 3
                + legendHeight(type, width)
                + rows().size() * rowHeight()
                + 3;
    }

    private double zoneHeight() {
        return 2 * bold().line() + 3;
    }

    private double nameHeight() {
        return Lettering.bold(looks.heading()).line() + plain().line();
    }

    private double legendHeight(Typesetter type, double width) {
        return legend(type, width).size() * (plain().line() + 1) + 3;
    }

    private double rowHeight() {
        return plain().line() + 1.6;
    }

    void draw(Pen pen, Box box) {
        double labels = 0;
        for (Row row : rows()) {
            labels = Math.max(labels, pen.type().width(bold(), row.name()) + 6);
        }
        double step = (box.width() - labels + GAP) / baths.size();
        double legendHeight = legendHeight(pen.type(), box.width());
        double panelsTop = box.y() + legendHeight + zoneHeight() + nameHeight();
        double panelHeight = box.height() - besides(pen.type(), box.width());
        double foot = panelsTop + panelHeight + plain().line() + 3;
        legend(pen, box);
        zones(pen, box.x() + labels, box.y() + legendHeight, step);
        Scale y = Scale.even(BOTTOM, TOP, panelsTop + panelHeight, panelsTop);
        levels(pen, box.x() + labels, y);
        for (int i = 0; i < baths.size(); i++) {
            LessonBath bath = baths.get(i);
            Box panel = new Box(box.x() + labels + i * step, panelsTop, step - GAP, panelHeight);
            name(pen, bath, panel);
            panel(pen, bath, panel, y);
        }
        double top = foot;
        for (Row row : rows()) {
            pen.line(box.x(), top, box.right(), top, Stroke.solid(Palette.RULE, 0.4));
            pen.text(row.strong() ? bold() : plain(), row.name(), box.x(), top + 0.8);
            for (int i = 0; i < baths.size(); i++) {
                double centre = box.x() + labels + i * step + (step - GAP) / 2;
                pen.textCentred(row.strong() ? bold() : plain(), row.cells().get(i), centre, top + 0.8);
            }
            top += rowHeight();
        }
    }

    private record Row(String name, boolean strong, List<String> cells) {}

    private interface Cell {
        String of(LessonBath bath);
    }

    private Row row(String name, boolean strong, Cell cell) {
        return new Row(name, strong, baths.stream().map(cell::of).toList());
    }

    private List<Row> rows() {
        String end = "after " + InWords.hours(lesson.hours());
        List<Row> rows = new ArrayList<>();
        rows.add(row(
                "core within 1 °C",
                false,
                bath -> bath.nearMinutes().isPresent()
                        ? InWords.hours(bath.nearMinutes().getAsDouble() / 60)
                        : "later"));
        List<CountCourse> first = baths.get(0).courses();
        for (int i = 0; i < first.size(); i++) {
            int organism = i;
            String name = first.get(i).organism();
            if (first.get(i).lag().isPresent()) {
                rows.add(row(name + ", most", true, bath -> bath.courses()
                        .get(organism)
                        .peakText()));
                rows.add(row(
                        "    " + end, true, bath -> bath.courses().get(organism).endText()));
            } else {
                rows.add(row(
                        name + ", up to",
                        false,
                        bath -> WholeLogs.change(bath.courses().get(organism).peakHigh())
                                + ", then "
                                + WholeLogs.shortChange(
                                        bath.courses().get(organism).endHigh())));
            }
        }
        rows.add(row("published row met", true, this::rowMet));
        return rows;
    }

    private String rowMet(LessonBath bath) {
        if (bath.celsius() < lesson.rows().get(0).at().celsius()) {
            return "never";
        }
        if (!bath.comeUpKept()) {
            return "too slow";
        }
        return bath.rowMet()
                .map(met -> "at " + InWords.hours(met.minutes() / 60))
                .orElse("not yet");
    }

    /** What becomes of the cells in a bath, by where its set point lies. */
    private String zone(LessonBath bath) {
        double stopsAt = lesson.stops().get(0).celsius();
        double stopsBy = lesson.stops().get(lesson.stops().size() - 1).celsius();
        if (bath.celsius() < stopsAt) {
            return "GROWS and stays";
        }
        if (bath.celsius() < stopsBy) {
            return "SOURCES DISAGREE";
        }
        return bath.celsius() < lesson.rows().get(0).at().celsius() ? "BELOW EVERY ROW" : "GROWS FIRST, then dies";
    }

    private void zones(Pen pen, double left, double top, double step) {
        int from = 0;
        for (int i = 1; i <= baths.size(); i++) {
            if (i == baths.size() || !zone(baths.get(i)).equals(zone(baths.get(from)))) {
                Box bar = new Box(left + from * step, top, (i - from) * step - GAP, zoneHeight() - 3);
                boolean dies = zone(baths.get(from)).startsWith("GROWS FIRST");
                pen.fill(bar, dies ? Palette.TINT : Palette.SOFT);
                Lettering words = bold().in(dies ? Palette.INK : Palette.PAPER);
                List<String> lines = pen.type().wrap(words, zone(baths.get(from)), bar.width() - 2);
                double y = bar.centreY() - lines.size() * words.line() / 2;
                for (String line : lines) {
                    pen.textCentred(words, line, bar.centreX(), y);
                    y += words.line();
                }
                from = i;
            }
        }
    }

    private void levels(Pen pen, double right, Scale y) {
        Lettering tick = Lettering.soft(looks.small());
        for (int level : LEVELS) {
            String label = (level > 0 ? "+" : level < 0 ? "−" : "") + Math.abs(level);
            pen.textRight(tick, label, right - 3, y.at(level) - tick.line() / 2);
        }
        double words = pen.type().width(bold(), "+0") + 6;
        pen.textRight(bold(), "logs more", right - words, y.at(8) - bold().line() / 2);
        pen.textRight(bold(), "as raw", right - words, y.at(0) - bold().line() / 2);
        pen.textRight(bold(), "logs fewer", right - words, y.at(-6) - bold().line() / 2);
        pen.textRight(Lettering.soft(looks.small()), "+3 is × 1000", right - words, y.at(4) - bold().line() / 2);
        pen.textRight(Lettering.soft(looks.small()), "−3 is 1 in 1000", right - words, y.at(-3) - bold().line() / 2);
    }

    private void name(Pen pen, LessonBath bath, Box panel) {
        Lettering heading = Lettering.bold(looks.heading());
        double top = panel.y() - nameHeight();
        pen.textCentred(heading, InWords.celsius(bath.celsius()), panel.centreX(), top);
        String other = InWords.figure(TemperatureUnit.FAHRENHEIT.fromCelsius(bath.celsius())) + " °F";
        pen.textCentred(Lettering.soft(looks.small()), other, panel.centreX(), top + heading.line() - 1);
    }

    private void panel(Pen pen, LessonBath bath, Box panel, Scale y) {
        Lettering tick = Lettering.soft(looks.small());
        for (int level : LEVELS) {
            pen.line(panel.x(), y.at(level), panel.right(), y.at(level), Stroke.solid(Palette.GRID, 0.5));
        }
        pen.line(panel.x(), y.at(0), panel.right(), y.at(0), Stroke.solid(Palette.SOFT, 1));
        Scale x = Scale.even(0, lesson.hours(), panel.x(), panel.right());
        pen.textCentred(tick, "0", panel.x() + 3, panel.bottom() + 1.5);
        pen.textRight(tick, InWords.figure(lesson.hours()) + " h", panel.right(), panel.bottom() + 1.5);
        pen.within(panel, () -> {
            for (int i = 0; i < bath.courses().size(); i++) {
                course(pen, bath.courses().get(i), x, y, stroke(i));
            }
        });
        for (CountCourse course : bath.courses()) {
            course.concernHours()
                    .ifPresent(hours ->
                            toxin(pen, x.at(hours), y.at(course.concernChange().orElseThrow())));
        }
        pen.frame(panel, Stroke.solid(Palette.SOFT, 0.6));
    }

    private void toxin(Pen pen, double x, double y) {
        double r = looks.small() * 0.55;
        pen.shape(new double[] {x, x + r, x, x - r}, new double[] {y - r, y, y + r, y}, Palette.LIMIT);
    }

    private Stroke stroke(int organism) {
        return switch (organism) {
            case 0 -> Stroke.solid(Palette.CORE, looks.line());
            case 1 -> Stroke.dashed(Palette.INK, looks.line(), 4, 2);
            default -> Stroke.dashed(Palette.LIMIT, looks.line() * 1.2, 1.3, 1.5);
        };
    }

    private void course(Pen pen, CountCourse course, Scale x, Scale y, Stroke stroke) {
        int size = course.size();
        double[] xs = new double[size];
        double[] high = new double[size];
        double[] low = new double[size];
        for (int i = 0; i < size; i++) {
            xs[i] = x.at(course.hours(i));
            high[i] = y.at(course.high(i));
            low[i] = y.at(course.low(i));
        }
        if (course.lag().isPresent()) {
            double[] around = new double[2 * size];
            double[] edge = new double[2 * size];
            for (int i = 0; i < size; i++) {
                around[i] = xs[i];
                edge[i] = high[i];
                around[2 * size - 1 - i] = xs[i];
                edge[2 * size - 1 - i] = low[i];
            }
            Color tone = Palette.TOLERANCE;
            pen.shape(around, edge, tone);
            pen.path(xs, low, Stroke.solid(stroke.colour(), stroke.width() * 0.6));
        }
        pen.path(xs, high, stroke);
    }

    /** One sample of the legend; the organisms by their number, then the toxin point and the spores. */
    private record LegendEntry(int number, String words, double width) {}

    private List<List<LegendEntry>> legend(Typesetter type, double width) {
        List<CountCourse> courses = baths.get(0).courses();
        List<String> words = new ArrayList<>();
        for (CountCourse course : courses) {
            words.add(course.organism() + (course.lag().isPresent() ? " (band: no lag to lag)" : " (high end)"));
        }
        words.add("toxin point of S. aureus");
        words.add("spores: none die");
        List<List<LegendEntry>> lines = new ArrayList<>();
        double used = Double.POSITIVE_INFINITY;
        for (int i = 0; i < words.size(); i++) {
            double wide = sample() + 3 + type.width(plain(), words.get(i)) + looks.small();
            if (used + wide > width) {
                lines.add(new ArrayList<>());
                used = 0;
            }
            lines.get(lines.size() - 1).add(new LegendEntry(i, words.get(i), wide));
            used += wide;
        }
        return lines;
    }

    private double sample() {
        return looks.small() * 2.6;
    }

    private void legend(Pen pen, Box box) {
        List<CountCourse> courses = baths.get(0).courses();
        double y = box.y();
        for (List<LegendEntry> line : legend(pen.type(), box.width())) {
            double x = box.x();
            double middle = y + plain().line() / 2;
            for (LegendEntry entry : line) {
                if (entry.number() < courses.size()) {
                    if (courses.get(entry.number()).lag().isPresent()) {
                        pen.fill(new Box(x, middle, sample(), looks.small() * 0.5), Palette.TOLERANCE);
                    }
                    pen.line(x, middle, x + sample(), middle, stroke(entry.number()));
                } else if (entry.number() == courses.size()) {
                    toxin(pen, x + sample() / 2, middle);
                } else {
                    pen.line(x, middle, x + sample(), middle, Stroke.solid(Palette.SOFT, 1));
                }
                pen.text(plain(), entry.words(), x + sample() + 3, y);
                x += entry.width();
            }
            y += plain().line() + 1;
        }
    }
}
