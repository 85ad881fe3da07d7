package org.holdproof.report.lesson;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.holdproof.core.lesson.InWords;
import org.holdproof.core.lesson.Lesson;
import org.holdproof.core.lesson.MeasuredFinding;
import org.holdproof.core.lesson.Statement;
import org.holdproof.core.rules.Citation;
import org.holdproof.report.draw.Box;
import org.holdproof.report.draw.Lettering;
import org.holdproof.report.draw.Palette;
import org.holdproof.report.draw.Pen;
import org.holdproof.report.draw.Stroke;
import org.holdproof.report.draw.Typesetter;
import org.holdproof.report.layout.SafetyWords;

/** The page to hand out: pictures, statements, findings and the worked line, each with its source. */
final class HandOutPage {
    private static final CurveStrokes LOOKS = CurveStrokes.IN_HAND;
    private static final Lettering TITLE = Lettering.bold(16);
    private static final Lettering SUBTITLE = Lettering.plain(8.4);
    private static final Lettering HEADING = Lettering.bold(LOOKS.heading());
    private static final Lettering BODY = Lettering.plain(LOOKS.body());
    private static final Lettering STRONG = Lettering.bold(LOOKS.body());
    private static final Lettering PRINT = Lettering.plain(5.8);
    private static final Lettering SOURCE = Lettering.soft(5.2);
    private static final double GUTTER = 10;
    private static final double GAP = 6;
    private static final int SOURCE_COLUMNS = 2;
    /** The two small pictures' share of the height the pictures have. */
    private static final double UPPER_SHARE = 0.5;

    private final Lesson lesson;
    private final Typesetter type;
    private final Box body;
    private final References references = new References();

    HandOutPage(Lesson lesson, Typesetter type, Box body) {
        this.lesson = lesson;
        this.type = type;
        this.body = body;
    }

    void draw(Pen pen) {
        // first what the words need; the pictures take the rest
        double[] quarter = {(body.width() - 3 * GUTTER) / 4};
        String coreHeading = "1. The core in each bath";
        String timeHeading = "2. Hold for " + InWords.figure(lesson.targetLog10()) + " logs by set point, log axis";
        String rowHeading = references.after(
                "3. What rises and falls in each bath: simulated, in whole logs",
                lesson.cannotClaim().citations());
        List<Citation> timeSources = new ArrayList<>(List.of(lesson.table().citation()));
        lesson.deathLines().forEach(line -> timeSources.addAll(line.citations()));
        String timeCaption = references.marks(timeSources);
        List<LessonWording> statements = new ArrayList<>();
        for (Statement statement :
                List.of(lesson.growthStops(), lesson.publishedRow(), lesson.toxin(), lesson.spores())) {
            statements.add(new LessonWording(type, quarter[0])
                    .add(HEADING, statement.title(), 0)
                    .add(BODY, references.after(statement.text(), statement.citations()), 1));
        }
        List<LessonWording> findings = findings(quarter[0]);
        LessonWording worked = new LessonWording(type, body.width() - 12);
        for (String step : lesson.calculation().steps(lesson.setup().bathsCelsius())) {
            worked.add(BODY, step, 1);
        }
        String workedHeading = references.after(
                "5. Work it out: D, z and the hold, from two printed rows for meat",
                List.of(lesson.calculation().table().citation()));
        LessonWording claim = new LessonWording(type, body.width())
                .add(STRONG, Lesson.DIRECTION + " " + SafetyWords.TEXT, 0)
                .add(
                        PRINT,
                        references.after(
                                lesson.cannotClaim().text(),
                                lesson.cannotClaim().citations()),
                        1);
        LessonWording sources =
                new LessonWording(type, (body.width() - (SOURCE_COLUMNS - 1) * GUTTER) / SOURCE_COLUMNS);
        references.list().forEach(source -> sources.add(SOURCE, source, 0));

        RowOfBaths row = new RowOfBaths(lesson, lesson.baths(), LOOKS);
        double head = TITLE.line() + SUBTITLE.line() + GAP;
        double said = tallest(statements)
                + 8
                + HEADING.line()
                + tallest(findings)
                + HEADING.line()
                + worked.height()
                + 8
                + claim.height()
                + sources.heightInColumns(SOURCE_COLUMNS)
                + 5 * GAP;
        double pictures =
                body.height() - head - said - row.besides(type, body.width()) - 2 * HEADING.line() - 4 - 2 * GAP;
        double upper = pictures * UPPER_SHARE;

        double y = body.y();
        pen.text(TITLE, LessonPages.TITLE, body.x(), y);
        y += TITLE.line();
        pen.text(SUBTITLE, subtitle(), body.x(), y);
        y += SUBTITLE.line() + GAP;

        double half = (body.width() - GUTTER) / 2;
        pen.text(HEADING, coreHeading, body.x(), y);
        pen.text(HEADING, type.shorten(HEADING, timeHeading + " " + timeCaption, half), body.x() + half + GUTTER, y);
        y += HEADING.line() + 2;
        new CoreCurves(lesson, LOOKS).draw(pen, new Box(body.x(), y, half, upper));
        new TimeAgainstSetPoint(lesson, LOOKS).draw(pen, new Box(body.x() + half + GUTTER, y, half, upper));
        y += upper + GAP;

        pen.text(HEADING, rowHeading, body.x(), y);
        y += HEADING.line() + 2;
        double lower = pictures - upper + row.besides(type, body.width());
        row.draw(pen, new Box(body.x(), y, body.width(), lower));
        y += lower + GAP;

        y = columns(pen, statements, y, quarter[0], true) + GAP;
        pen.text(HEADING, "4. What was found in meat (99% is 2 logs, not 6.5)", body.x(), y);
        y += HEADING.line();
        y = columns(pen, findings, y, quarter[0], false) + GAP;
        pen.text(HEADING, workedHeading, body.x(), y);
        y += HEADING.line();
        Box frame = new Box(body.x(), y, body.width(), worked.height() + 6);
        pen.frame(frame, Stroke.solid(Palette.SOFT, 0.6));
        worked.draw(pen, body.x() + 6, y + 3);
        y += worked.height() + 8 + GAP;
        claim.draw(pen, body.x(), y);
        y += claim.height() + GAP / 2;
        pen.line(body.x(), y, body.right(), y, Stroke.solid(Palette.RULE, 0.5));
        sources.drawInColumns(pen, body.x(), y + GAP / 2, SOURCE_COLUMNS, (body.width() + GUTTER) / SOURCE_COLUMNS);
    }

    private String subtitle() {
        return "The same " + lesson.setup().cut().title() + ", "
                + InWords.figure(lesson.setup().thicknessMillimetres())
                + " mm thick, goes cold from the store (5 °C) into "
                + lesson.baths().size() + " baths. " + Lesson.DIRECTION;
    }

    private List<LessonWording> findings(double width) {
        Map<Integer, LessonWording> columns = new LinkedHashMap<>();
        for (MeasuredFinding finding : lesson.findings()) {
            columns.computeIfAbsent(finding.celsius(), celsius -> new LessonWording(type, width)
                            .add(STRONG, "at about " + celsius + " °C", 0))
                    .add(
                            BODY,
                            references.after(
                                    finding.text(), List.of(finding.fact().citation())),
                            1.5);
        }
        return List.copyOf(columns.values());
    }

    private static double tallest(List<LessonWording> columns) {
        return columns.stream().mapToDouble(LessonWording::height).max().orElse(0);
    }

    private double columns(Pen pen, List<LessonWording> columns, double top, double width, boolean tinted) {
        double height = tallest(columns);
        double y = top;
        if (tinted) {
            pen.fill(new Box(body.x() - 4, top, body.width() + 8, height + 8), Palette.TINT);
            y += 4;
        }
        double x = body.x();
        for (LessonWording column : columns) {
            column.draw(pen, x, y);
            x += width + GUTTER;
        }
        return y + height + (tinted ? 4 : 0);
    }
}
