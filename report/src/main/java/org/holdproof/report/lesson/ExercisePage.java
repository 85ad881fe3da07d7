package org.holdproof.report.lesson;

import java.util.Locale;
import org.holdproof.core.lesson.Exercise;
import org.holdproof.core.lesson.Lesson;
import org.holdproof.core.log.Trace;
import org.holdproof.report.draw.Box;
import org.holdproof.report.draw.Lettering;
import org.holdproof.report.draw.Palette;
import org.holdproof.report.draw.Pen;
import org.holdproof.report.draw.Stroke;
import org.holdproof.report.draw.Typesetter;
import org.holdproof.report.layout.SafetyWords;

/** The exercise sheet, or with the answers its key. */
final class ExercisePage {
    private static final Lettering TITLE = Lettering.bold(17);
    private static final Lettering HEADING = Lettering.bold(11);
    private static final Lettering BODY = Lettering.plain(9.6);
    private static final Lettering ANSWER = Lettering.bold(9.6).in(Palette.CORE);
    private static final Lettering CELL = Lettering.plain(8);
    private static final Lettering CELL_HEAD = Lettering.bold(8);
    private static final int MOST_ACROSS = 13;
    private static final double NAME = 62;
    private static final double WRITING_LINE = 21;

    private final Lesson lesson;
    private final Typesetter type;
    private final Box body;
    private final boolean answers;

    ExercisePage(Lesson lesson, Typesetter type, Box body, boolean answers) {
        this.lesson = lesson;
        this.type = type;
        this.body = body;
        this.answers = answers;
    }

    void draw(Pen pen) {
        double y = body.y();
        pen.text(TITLE, answers ? "Three logs: the answers" : "Three logs: what do they prove?", body.x(), y);
        y += TITLE.line() + 2;
        LessonWording head = new LessonWording(type, body.width())
                .add(
                        BODY,
                        answers
                                ? "Worked out from the readings as printed, by the same arithmetic as the lesson's"
                                        + " pictures."
                                : "Core readings of simulated cooks. You need the lesson's hand-out and a pocket"
                                        + " calculator.",
                        0);
        head.draw(pen, body.x(), y);
        y += head.height() + 10;
        int number = 1;
        for (Exercise exercise : lesson.exercises()) {
            y = exercise(pen, exercise, number, y) + 12;
            number++;
        }
        LessonWording foot = new LessonWording(type, body.width())
                .add(Lettering.bold(8), Lesson.DIRECTION + " " + SafetyWords.TEXT, 0)
                .add(
                        Lettering.soft(7),
                        "Rows: " + lesson.table().citation().text() + ". D and z: "
                                + lesson.calculation().table().citation().text()
                                + ". Simulation and its sources: the hand-out.",
                        2);
        foot.draw(pen, body.x(), body.bottom() - foot.height());
    }

    private double exercise(Pen pen, Exercise exercise, int number, double top) {
        double y = top;
        pen.text(HEADING, number + ". " + exercise.title(), body.x(), y);
        y += HEADING.line() + 2;
        LessonWording situation = new LessonWording(type, body.width()).add(BODY, exercise.situation(), 0);
        situation.draw(pen, body.x(), y);
        y += situation.height() + 4;
        y = table(pen, exercise.log(), y) + 6;
        for (int i = 0; i < exercise.questions().size(); i++) {
            LessonWording question = new LessonWording(type, body.width() - 16)
                    .add(BODY, exercise.questions().get(i), 0);
            pen.text(Lettering.bold(9), "abc".charAt(i) + ")", body.x(), y);
            question.draw(pen, body.x() + 16, y);
            y += question.height() + 1;
            if (answers) {
                LessonWording answer = new LessonWording(type, body.width() - 16)
                        .add(ANSWER, exercise.answers().get(i), 0);
                answer.draw(pen, body.x() + 16, y);
                y += answer.height() + 5;
            } else {
                y += WRITING_LINE;
                pen.line(body.x() + 16, y - 3, body.right(), y - 3, Stroke.solid(Palette.RULE, 0.6));
            }
        }
        return y;
    }

    private double table(Pen pen, Trace log, double top) {
        double y = top;
        double step = (body.width() - NAME) / MOST_ACROSS;
        for (int from = 0; from < log.size(); from += MOST_ACROSS) {
            int to = Math.min(log.size(), from + MOST_ACROSS);
            double height = 2 * CELL.line() + 6;
            Box strip = new Box(body.x(), y, NAME + (to - from) * step, height);
            pen.fill(new Box(strip.x(), y, strip.width(), CELL.line() + 3), Palette.TINT);
            pen.frame(strip, Stroke.solid(Palette.SOFT, 0.6));
            pen.text(CELL_HEAD, "time, h:min", body.x() + 3, y + 1.5);
            pen.text(CELL_HEAD, "core, °C", body.x() + 3, y + CELL.line() + 4);
            for (int i = from; i < to; i++) {
                double centre = body.x() + NAME + (i - from + 0.5) * step;
                pen.textCentred(CELL_HEAD, clock(log, i), centre, y + 1.5);
                pen.textCentred(CELL, String.format(Locale.ROOT, "%.1f", log.celsius(i)), centre, y + CELL.line() + 4);
            }
            y += height + 3;
        }
        return y;
    }

    private static String clock(Trace log, int i) {
        long minutes = Math.round((log.millis(i) - log.firstMillis()) / 60_000.0);
        return String.format(Locale.ROOT, "%d:%02d", minutes / 60, minutes % 60);
    }
}
