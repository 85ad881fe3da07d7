package org.holdproof.report.lesson;

import java.util.ArrayList;
import java.util.List;
import org.holdproof.core.lesson.InWords;
import org.holdproof.core.lesson.Lesson;
import org.holdproof.core.lesson.LessonBath;
import org.holdproof.core.lesson.Statement;
import org.holdproof.core.rules.Citation;
import org.holdproof.report.draw.Box;
import org.holdproof.report.draw.Lettering;
import org.holdproof.report.draw.Palette;
import org.holdproof.report.draw.Pen;
import org.holdproof.report.draw.Typesetter;
import org.holdproof.report.layout.SafetyWords;

/** The page to project: the same, with fewer baths and larger words. */
final class ProjectedPage {
    static final double WIDTH = 1120;
    static final double HEIGHT = 630;

    private static final double MARGIN = 26;
    private static final double GUTTER = 18;
    private static final CurveStrokes LOOKS = CurveStrokes.ON_SCREEN;
    private static final int MOST_BATHS = 6;
    private static final Lettering TITLE = Lettering.bold(27);
    private static final Lettering SUBTITLE = Lettering.bold(12);
    private static final Lettering HEADING = Lettering.bold(LOOKS.heading());
    private static final Lettering STATEMENT = Lettering.bold(15);
    private static final Lettering BODY = Lettering.plain(LOOKS.body());
    private static final Lettering SOURCE = Lettering.soft(6.2);
    private static final Lettering SAFETY = Lettering.bold(9);
    private static final int SOURCE_COLUMNS = 4;
    private static final double LEFT_SHARE = 0.36;

    private final Lesson lesson;
    private final Typesetter type;
    private final References references = new References();

    ProjectedPage(Lesson lesson, Typesetter type) {
        this.lesson = lesson;
        this.type = type;
    }

    void draw(Pen pen) {
        Box body = new Box(MARGIN, MARGIN - 8, WIDTH - 2 * MARGIN, HEIGHT - 2 * MARGIN + 14);
        double left = body.width() * LEFT_SHARE;
        double right = body.width() - left - GUTTER;
        List<Citation> timeSources = new ArrayList<>(List.of(lesson.table().citation()));
        lesson.deathLines().forEach(line -> timeSources.addAll(line.citations()));
        String rowHeading = references.after(
                "Rises, then falls: logs against the raw meat",
                lesson.cannotClaim().citations());
        String timeHeading = references.after(
                "Hold for " + InWords.figure(lesson.targetLog10()) + " logs, by set point", timeSources);
        double quarter = (body.width() - 3 * GUTTER) / 4;
        List<LessonWording> statements = new ArrayList<>();
        for (Statement statement :
                List.of(lesson.growthStops(), lesson.publishedRow(), lesson.toxin(), lesson.spores())) {
            statements.add(new LessonWording(type, quarter)
                    .add(STATEMENT, statement.title(), 0)
                    .add(BODY, references.after(statement.text(), statement.citations()), 2));
        }
        LessonWording sources =
                new LessonWording(type, (body.width() - (SOURCE_COLUMNS - 1) * GUTTER) / SOURCE_COLUMNS);
        references.list().forEach(source -> sources.add(SOURCE, source, 0));
        double tall =
                statements.stream().mapToDouble(LessonWording::height).max().orElseThrow();

        double y = body.y();
        pen.text(TITLE, LessonPages.TITLE, body.x(), y);
        y += TITLE.line();
        String cut = lesson.setup().cut().title() + ", "
                + InWords.figure(lesson.setup().thicknessMillimetres()) + " mm, in from 5 °C.";
        pen.text(SUBTITLE, "The same " + cut + " " + Lesson.DIRECTION, body.x(), y);
        y += SUBTITLE.line() + 6;

        double words = tall + 14 + SAFETY.line() + 3 + sources.heightInColumns(SOURCE_COLUMNS) + 8;
        double pictures = body.bottom() - y - words - 8;
        double half = (pictures - 2 * HEADING.line() - 10) / 2;
        pen.text(HEADING, "The core in each bath", body.x(), y);
        new CoreCurves(lesson, LOOKS).draw(pen, new Box(body.x(), y + HEADING.line() + 2, left, half));
        double second = y + HEADING.line() + half + 8;
        pen.text(HEADING, timeHeading, body.x(), second);
        new TimeAgainstSetPoint(lesson, LOOKS).draw(pen, new Box(body.x(), second + HEADING.line() + 2, left, half));
        double x = body.x() + left + GUTTER;
        pen.text(HEADING, rowHeading, x, y);
        new RowOfBaths(lesson, chosen(), LOOKS)
                .draw(pen, new Box(x, y + HEADING.line() + 4, right, pictures - HEADING.line() - 4));
        y += pictures + 4;

        pen.fill(new Box(body.x() - 8, y, body.width() + 16, tall + 12), Palette.TINT);
        for (int i = 0; i < statements.size(); i++) {
            statements.get(i).draw(pen, body.x() + i * (quarter + GUTTER), y + 6);
        }
        y += tall + 18;
        pen.text(SAFETY, SafetyWords.TEXT, body.x(), y);
        y += SAFETY.line() + 3;
        sources.drawInColumns(pen, body.x(), y, SOURCE_COLUMNS, (body.width() + GUTTER) / SOURCE_COLUMNS);
    }

    /** A few baths, evenly picked, the first and the last among them. */
    private List<LessonBath> chosen() {
        List<LessonBath> baths = lesson.baths();
        if (baths.size() <= MOST_BATHS) {
            return baths;
        }
        List<LessonBath> chosen = new ArrayList<>();
        int count = baths.size() % 2 == 1 ? Math.min(MOST_BATHS, (baths.size() + 1) / 2) : MOST_BATHS;
        for (int i = 0; i < count; i++) {
            chosen.add(baths.get((int) Math.round(i * (baths.size() - 1.0) / (count - 1))));
        }
        return chosen;
    }
}
