package org.holdproof.report.wall;

import com.lowagie.text.Document;
import com.lowagie.text.Rectangle;
import com.lowagie.text.pdf.PdfWriter;
import java.io.IOException;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import org.holdproof.core.plan.Pasteurization;
import org.holdproof.core.plan.PlanTable;
import org.holdproof.core.plan.PlanWording;
import org.holdproof.core.plan.PlannedCook;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.report.archive.ArchivalPdf;
import org.holdproof.report.archive.Attachment;
import org.holdproof.report.archive.DocumentFacts;
import org.holdproof.report.draw.Box;
import org.holdproof.report.draw.Lettering;
import org.holdproof.report.draw.Palette;
import org.holdproof.report.draw.Pen;
import org.holdproof.report.draw.Stroke;
import org.holdproof.report.draw.Typesetter;
import org.holdproof.report.font.ReportFonts;
import org.holdproof.report.layout.ReportLayout;
import org.holdproof.report.layout.SafetyWords;

/** A plan table as one landscape sheet for the kitchen's wall, in the authority's paper; PDF/A-3. */
public final class WallChart {
    private static final double MARGIN = 32;
    private static final double INCH = 25.4;
    private static final double LABEL = 92;
    private static final double HEAD = 44;
    private static final double TALLEST_ROW = 30;
    private static final Lettering TITLE = Lettering.bold(22);
    private static final Lettering LEDE = Lettering.plain(11.5);
    private static final Lettering BATH = Lettering.bold(14);
    private static final Lettering OTHER = Lettering.soft(9.5);
    private static final Lettering SMALL = Lettering.plain(8.6);
    private static final Lettering CAUTION = Lettering.bold(9.4).in(Palette.LIMIT);
    private static final int FIVES = 2;

    private final PlanTable table;
    private final PlanWording wording;
    private final String edition;

    private WallChart(PlanTable table, String edition) {
        this.table = table;
        this.wording = new PlanWording(table.like().authority().units());
        this.edition = edition;
    }

    /**
     * The chart's bytes, with the tables it was reckoned by inside.
     *
     * @param library the rules the table was reckoned by
     * @param written when it claims to be written
     */
    public static byte[] write(PlanTable table, RuleLibrary library, Instant written) throws IOException {
        WallChart chart = new WallChart(table, library.edition());
        DocumentFacts facts =
                new DocumentFacts(chart.title(), table.like().authority().title(), "en", false, written);
        ReportFonts fonts = ReportFonts.load();
        Attachment tables = new Attachment(Attachment.Role.TABLES, "tables.zip", "application/zip", library.archive());
        return ArchivalPdf.write(
                facts, List.of(tables), (document, writer, structure, attached) -> chart.draw(document, writer, fonts));
    }

    private String title() {
        PlannedCook like = table.like();
        return "Time in the bath: " + like.form().title() + " " + like.species().title() + ", "
                + PlanWording.shape(like);
    }

    private void draw(Document document, PdfWriter writer, ReportFonts fonts) {
        Rectangle upright = ReportLayout.sheet(table.like().authority().paper());
        Rectangle sheet = new Rectangle(upright.getHeight(), upright.getWidth());
        document.setPageSize(sheet);
        document.newPage();
        Pen pen = new Pen(writer.getDirectContent(), new Typesetter(fonts), sheet.getHeight());
        double width = sheet.getWidth() - 2 * MARGIN;
        pen.text(TITLE, title(), MARGIN, MARGIN);
        double y = paragraph(pen, LEDE, lede(), MARGIN + TITLE.line() + 3, width) + 6;

        List<String> foot = foot();
        double footHeight = 0;
        for (int i = 0; i < foot.size(); i++) {
            Lettering lettering = lettering(i, foot.size());
            footHeight += pen.type().wrap(lettering, foot.get(i), width).size() * lettering.line() + 2.5;
        }
        double bottom = sheet.getHeight() - MARGIN - footHeight - 6;
        grid(pen, new Box(MARGIN, y, width, bottom - y));
        double under = sheet.getHeight() - MARGIN - footHeight;
        for (int i = 0; i < foot.size(); i++) {
            under = paragraph(pen, lettering(i, foot.size()), foot.get(i), under, width) + 2.5;
        }
    }

    private static Lettering lettering(int line, int of) {
        return line == of - 1 ? CAUTION : SMALL;
    }

    private static double paragraph(Pen pen, Lettering lettering, String text, double top, double width) {
        double y = top;
        for (String line : pen.type().wrap(lettering, text, width)) {
            pen.text(lettering, line, MARGIN, y);
            y += lettering.line();
        }
        return y;
    }

    private void grid(Pen pen, Box room) {
        int columns = table.baths().size();
        int rows = table.thicknessesMillimetres().size();
        double cell = (room.width() - LABEL) / columns;
        double row = Math.min(TALLEST_ROW, (room.height() - HEAD) / rows);
        Lettering figures = Lettering.bold(Math.min(15, row * 0.56));
        pen.text(OTHER, "thickness", room.x() + 4, room.y() + 20);
        pen.textRight(OTHER, "bath", room.x() + LABEL - 8, room.y() + 3);
        for (int column = 0; column < columns; column++) {
            Boundary bath = table.baths().get(column);
            double centre = room.x() + LABEL + (column + 0.5) * cell;
            pen.textCentred(BATH, bath.text(), centre, room.y() + 1);
            if (table.like().authority().units().size() > 1) {
                pen.textCentred(OTHER, other(bath), centre, room.y() + 20);
            }
        }
        double y = room.y() + HEAD - 8;
        for (int i = 0; i < rows; i++) {
            if (i % FIVES == 0) {
                pen.fill(new Box(room.x(), y, room.width(), row), Palette.TINT);
            }
            double text = y + (row - figures.line()) / 2;
            double thickness = table.thicknessesMillimetres().get(i);
            pen.text(figures, String.format(Locale.ROOT, "%.0f mm", thickness), room.x() + 4, text);
            if (wording.leading() == TemperatureUnit.FAHRENHEIT) {
                pen.textRight(
                        OTHER,
                        String.format(Locale.ROOT, "%.1f in", thickness / INCH),
                        room.x() + LABEL - 8,
                        y + (row - OTHER.line()) / 2);
            }
            for (int column = 0; column < columns; column++) {
                Lettering lettering = table.minutes(i, column).isPresent() ? figures : figures.in(Palette.SOFT);
                pen.textCentred(lettering, table.text(i, column), room.x() + LABEL + (column + 0.5) * cell, text);
            }
            y += row;
        }
        Stroke rule = Stroke.solid(Palette.RULE, 0.6);
        for (int column = 0; column <= columns; column++) {
            double x = room.x() + LABEL + column * cell;
            pen.line(x, room.y(), x, y, rule);
        }
        pen.line(room.x(), room.y() + HEAD - 8, room.right(), room.y() + HEAD - 8, Stroke.solid(Palette.INK, 1));
        pen.line(room.x(), y, room.right(), y, Stroke.solid(Palette.INK, 1));
    }

    private static String other(Boundary bath) {
        TemperatureUnit unit =
                bath.unit() == TemperatureUnit.CELSIUS ? TemperatureUnit.FAHRENHEIT : TemperatureUnit.CELSIUS;
        return String.format(Locale.ROOT, "%.1f %s", unit.fromCelsius(bath.celsius()), unit.symbol());
    }

    private String lede() {
        PlannedCook like = table.like();
        return "From " + wording.temperature(like.startCelsius()) + " throughout, thawed, never smoked first. By "
                + like.authority().title() + ". Thickness is across the thinnest way through the middle.";
    }

    private List<String> foot() {
        PlannedCook like = table.like();
        String rows = Pasteurization.of(like.authority(), like.species(), like.form(), like.fatPercent())
                .flatMap(rule -> rule.rows().stream().findFirst())
                .map(row -> "Rows: " + row.citation().text() + ". ")
                .orElse("");
        return List.of(
                "Every time covers at once: 5 mm thicker, "
                        + PlanWording.unsaid(like)
                        + "the slowest diffusivity held, the bath "
                        + wording.difference(0.5)
                        + " below its set point; rounded up to 5 min. A dash: no safe plan. "
                        + (table.hasComeUpUnproven() ? PlanTable.UNPROVEN_WORDS + " " : "")
                        + "One bag without air, covered"
                        + " by moving water on all sides, alone; crowding, still water and air in the bag slow it. A"
                        + " planned time proves nothing: log the core, and verify.",
                rows + table.heat().origin(),
                "Reference tables " + edition + ".",
                SafetyWords.TEXT);
    }
}
