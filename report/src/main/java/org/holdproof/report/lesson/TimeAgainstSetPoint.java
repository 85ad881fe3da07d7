package org.holdproof.report.lesson;

import java.util.List;
import org.holdproof.core.lesson.DeathLine;
import org.holdproof.core.lesson.InWords;
import org.holdproof.core.lesson.Lesson;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.report.draw.Box;
import org.holdproof.report.draw.Lettering;
import org.holdproof.report.draw.Palette;
import org.holdproof.report.draw.Pen;
import org.holdproof.report.draw.Stroke;

/** The hold the published rows and lines ask for, by set point, on a log axis; below the lowest row there is none. */
record TimeAgainstSetPoint(Lesson lesson, CurveStrokes looks) {
    private static final double SHORTEST = 1;
    private static final double LONGEST = 10_000;
    private static final double HOTTEST = 65;
    private static final double GRID_CELSIUS = 5;
    private static final List<Double> TICKS = List.of(1.0, 10.0, 60.0, 600.0, 6000.0);
    private static final List<String> TICK_WORDS = List.of("1 min", "10 min", "1 h", "10 h", "100 h");

    void draw(Pen pen, Box box) {
        Lettering tick = Lettering.soft(looks.small());
        double axis = pen.type().width(tick, "10 min") + 6;
        Box plot = new Box(box.x() + axis, box.y(), box.width() - axis - 12, box.height() - tick.line() - 4);
        double coldest = Math.min(lesson.baths().get(0).celsius(), 45);
        Scale x = Scale.even(coldest, HOTTEST, plot.x(), plot.right());
        Scale y = Scale.logarithmic(SHORTEST, LONGEST, plot.bottom(), plot.y());

        double lowest = lesson.rows().get(0).at().celsius();
        Box none = new Box(plot.x(), plot.y(), x.at(lowest) - plot.x(), plot.height());
        pen.fill(none, Palette.BETWEEN);
        double bandLeft = x.at(lesson.stops().get(0).celsius());
        double bandRight = x.at(lesson.stops().get(lesson.stops().size() - 1).celsius());
        pen.hatch(
                new Box(bandLeft, plot.y(), bandRight - bandLeft, plot.height()), 5, Stroke.solid(Palette.HATCH, 0.5));
        for (int i = 0; i < TICKS.size(); i++) {
            double level = y.at(TICKS.get(i));
            pen.line(plot.x(), level, plot.right(), level, Stroke.solid(Palette.RULE, 0.5));
            pen.textRight(tick, TICK_WORDS.get(i), plot.x() - 3, level - tick.line() / 2);
        }
        for (double celsius = Math.ceil(coldest / GRID_CELSIUS) * GRID_CELSIUS;
                celsius <= HOTTEST;
                celsius += GRID_CELSIUS) {
            String label = InWords.figure(celsius) + (celsius == HOTTEST ? " °C" : "");
            pen.textCentred(tick, label, x.at(celsius), plot.bottom() + 3);
            pen.line(x.at(celsius), plot.bottom(), x.at(celsius), plot.bottom() + 2.5, Stroke.solid(Palette.SOFT, 0.6));
        }
        refusal(pen, none);
        legend(pen, plot);
        pen.within(plot, () -> {
            line(pen, x, y, lesson.deathLines().get(0), Stroke.solid(Palette.CORE, looks.line()));
            line(pen, x, y, lesson.deathLines().get(1), Stroke.dashed(Palette.INK, looks.line(), 4, 2));
            for (LethalityRow row : lesson.rows()) {
                if (row.seconds() / 60 >= SHORTEST && row.at().celsius() <= HOTTEST) {
                    pen.disc(x.at(row.at().celsius()), y.at(row.seconds() / 60), looks.line() * 1.5, Palette.LIMIT);
                }
            }
        });
        pen.frame(plot, Stroke.solid(Palette.SOFT, 0.6));
    }

    private void line(Pen pen, Scale x, Scale y, DeathLine death, Stroke stroke) {
        List<DeathLine.Point> points = death.points();
        double[] xs = new double[points.size()];
        double[] ys = new double[points.size()];
        for (int i = 0; i < xs.length; i++) {
            xs[i] = x.at(points.get(i).celsius());
            ys[i] = y.at(points.get(i).minutes());
        }
        pen.path(xs, ys, stroke);
    }

    private void refusal(Pen pen, Box none) {
        LessonWording words = new LessonWording(pen.type(), none.width() - 14)
                .add(Lettering.bold(looks.body()), "No published row:", 0)
                .add(Lettering.bold(looks.body()), "nobody vouches for any time", 0);
        double height = words.height();
        Box paper = new Box(none.x() + 4, none.bottom() - height - 12, none.width() - 8, height + 6);
        pen.fill(paper, Palette.PAPER);
        words.draw(pen, paper.x() + 3, paper.y() + 3);
    }

    private void legend(Pen pen, Box plot) {
        Lettering lettering = Lettering.plain(looks.small());
        List<String> names = List.of(
                "published row (Salmonella)",
                lesson.deathLines().get(0).name(),
                lesson.deathLines().get(1).name());
        double wide = names.stream()
                .mapToDouble(name -> pen.type().width(lettering, name))
                .max()
                .orElseThrow();
        double sample = looks.small() * 2.4;
        double y = plot.y() + 5;
        double left = plot.x() + 7;
        pen.fill(new Box(left - 3, y - 1, wide + sample + 10, names.size() * lettering.line() + 3), Palette.PAPER);
        for (int i = 0; i < names.size(); i++) {
            double middle = y + lettering.line() / 2;
            switch (i) {
                case 0 -> pen.disc(left + sample / 2, middle, looks.line() * 1.5, Palette.LIMIT);
                case 1 -> pen.line(left, middle, left + sample, middle, Stroke.solid(Palette.CORE, looks.line()));
                default ->
                    pen.line(left, middle, left + sample, middle, Stroke.dashed(Palette.INK, looks.line(), 4, 2));
            }
            pen.text(lettering, names.get(i), left + sample + 4, y);
            y += lettering.line();
        }
    }
}
