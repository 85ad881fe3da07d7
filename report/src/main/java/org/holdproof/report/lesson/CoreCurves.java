package org.holdproof.report.lesson;

import java.util.List;
import org.holdproof.core.lesson.InWords;
import org.holdproof.core.lesson.Lesson;
import org.holdproof.core.lesson.LessonBath;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.report.draw.Box;
import org.holdproof.report.draw.Lettering;
import org.holdproof.report.draw.Palette;
import org.holdproof.report.draw.Pen;
import org.holdproof.report.draw.Stroke;

/** The core in every bath over time, with the band where C. perfringens stops growing and the lowest published row. */
record CoreCurves(Lesson lesson, CurveStrokes looks) {
    private static final double LOW_CELSIUS = 30;
    private static final double HEADROOM = 2;
    private static final double GRID_CELSIUS = 5;

    void draw(Pen pen, Box box) {
        Lettering tick = Lettering.soft(looks.small());
        double axis = pen.type().width(tick, "00") + 6;
        double names = pen.type().width(Lettering.bold(looks.small()), "62.5 °C") + 10;
        Box plot = new Box(box.x() + axis, box.y(), box.width() - axis - names, box.height() - tick.line() - 4);
        double hottest = lesson.baths().get(lesson.baths().size() - 1).celsius();
        Scale x = Scale.even(0, lesson.hours(), plot.x(), plot.right());
        Scale y =
                Scale.even(LOW_CELSIUS, Math.max(hottest, lowest().at().celsius()) + HEADROOM, plot.bottom(), plot.y());

        for (double celsius = LOW_CELSIUS; celsius <= hottest + HEADROOM; celsius += GRID_CELSIUS) {
            pen.line(plot.x(), y.at(celsius), plot.right(), y.at(celsius), Stroke.solid(Palette.GRID, 0.5));
            pen.textRight(tick, InWords.figure(celsius), plot.x() - 3, y.at(celsius) - tick.line() / 2);
        }
        for (int part = 0; part <= 4; part++) {
            double hours = lesson.hours() * part / 4;
            String label = InWords.figure(hours) + (part == 4 ? " h" : "");
            double wide = pen.type().width(tick, label);
            pen.textRight(tick, label, Math.min(x.at(hours) + wide / 2, plot.right()), plot.bottom() + 3);
        }
        Box band = band(plot, y);
        pen.fill(band, Palette.BETWEEN);
        pen.hatch(band, 5, Stroke.solid(Palette.HATCH, 0.5));
        double row = y.at(lowest().at().celsius());
        pen.line(plot.x(), row, plot.right(), row, Stroke.dashed(Palette.LIMIT, looks.line(), 5, 2.5));
        pen.within(plot, () -> lesson.baths().forEach(bath -> curve(pen, bath, x, y)));
        pen.frame(plot, Stroke.solid(Palette.SOFT, 0.6));
        names(pen, plot, y);
        key(pen, plot);
    }

    private LethalityRow lowest() {
        return lesson.rows().get(0);
    }

    private Box band(Box plot, Scale y) {
        double top = y.at(lesson.stops().get(lesson.stops().size() - 1).celsius());
        double bottom = y.at(lesson.stops().get(0).celsius());
        return new Box(plot.x(), top, plot.width(), bottom - top);
    }

    /** At the lower right, which no core comes near. */
    private void key(Pen pen, Box plot) {
        Lettering lettering = Lettering.bold(looks.small());
        String row = "lowest published row: " + InWords.boundary(lowest().at());
        String stops = "C. perfringens stops growing: " + lesson.bandText();
        double wide = Math.max(pen.type().width(lettering, row), pen.type().width(lettering, stops));
        double sample = looks.small() * 2.6;
        double left = plot.right() - wide - sample - 8;
        double top = plot.bottom() - 2 * lettering.line() - 4;
        Box paper = new Box(left - 3, top - 1, wide + sample + 10, 2 * lettering.line() + 4);
        pen.fill(paper, Palette.PAPER);
        double middle = top + lettering.line() / 2;
        pen.line(left, middle, left + sample, middle, Stroke.dashed(Palette.LIMIT, looks.line(), 5, 2.5));
        pen.text(lettering.in(Palette.LIMIT), row, left + sample + 4, top);
        Box swatch = new Box(left, top + lettering.line() + 1.5, sample, lettering.line() - 3);
        pen.fill(swatch, Palette.BETWEEN);
        pen.hatch(swatch, 5, Stroke.solid(Palette.HATCH, 0.5));
        pen.text(lettering, stops, left + sample + 4, top + lettering.line());
    }

    private void curve(Pen pen, LessonBath bath, Scale x, Scale y) {
        int size = bath.core().size();
        double[] xs = new double[size];
        double[] ys = new double[size];
        for (int i = 0; i < size; i++) {
            xs[i] = x.at((bath.core().millis(i) - bath.core().firstMillis()) / 3_600_000.0);
            ys[i] = y.at(bath.core().celsius(i));
        }
        pen.path(xs, ys, stroke(bath));
    }

    private Stroke stroke(LessonBath bath) {
        return bath.celsius() < lowest().at().celsius()
                ? Stroke.dashed(Palette.INK, looks.line() * 0.8, 2, 1.4)
                : Stroke.solid(Palette.CORE, looks.line());
    }

    /** The baths' names at the right, pushed apart where they would touch. */
    private void names(Pen pen, Box plot, Scale y) {
        List<LessonBath> baths = lesson.baths();
        Lettering lettering = Lettering.bold(looks.small());
        double line = lettering.line() * 0.92;
        double[] tops = new double[baths.size()];
        double floor = plot.bottom() + lettering.line() / 2;
        for (int i = 0; i < tops.length; i++) {
            double wanted = y.at(baths.get(i).celsius()) - lettering.line() / 2;
            tops[i] = i == 0 ? Math.min(wanted, floor) : Math.min(wanted, tops[i - 1] - line);
        }
        double over = plot.y() - lettering.line() / 2 - tops[tops.length - 1];
        for (int i = tops.length - 1; i >= 0 && over > 0; i--) {
            double ceiling = i == tops.length - 1 ? plot.y() - lettering.line() / 2 : tops[i + 1] + line;
            tops[i] = Math.max(tops[i], ceiling);
        }
        for (int i = 0; i < tops.length; i++) {
            double from = y.at(baths.get(i).celsius());
            double to = tops[i] + lettering.line() / 2;
            pen.line(plot.right(), from, plot.right() + 7, to, Stroke.solid(Palette.SOFT, 0.5));
            pen.text(lettering, InWords.celsius(baths.get(i).celsius()), plot.right() + 9, tops[i]);
        }
    }
}
