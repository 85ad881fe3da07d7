package org.holdproof.report.layout;

import com.lowagie.text.Document;
import com.lowagie.text.PageSize;
import com.lowagie.text.Rectangle;
import com.lowagie.text.pdf.PdfContentByte;
import com.lowagie.text.pdf.PdfDestination;
import com.lowagie.text.pdf.PdfOutline;
import com.lowagie.text.pdf.PdfWriter;
import java.util.List;
import org.holdproof.core.rules.AuthorityProfile.Paper;
import org.holdproof.core.verdict.Verdict;
import org.holdproof.report.ReportContent;
import org.holdproof.report.draw.Box;
import org.holdproof.report.draw.Lettering;
import org.holdproof.report.draw.Palette;
import org.holdproof.report.draw.Pen;
import org.holdproof.report.draw.Stroke;
import org.holdproof.report.draw.Typesetter;
import org.holdproof.report.draw.VerdictSign;
import org.holdproof.report.font.ReportFonts;

/** Draws a report's pages. It touches page content and outline only, never the file's own properties. */
public final class ReportLayout {
    /** Nothing is drawn nearer to the sheet's edge than this, in points. */
    static final double MARGIN = 32;

    private static final double HEADER = 18;
    private static final double FOOTER = 16;
    private static final Lettering RUNNING = Lettering.soft(7.2);

    private ReportLayout() {}

    /** The sheet for a kind of paper, in points. */
    public static Rectangle sheet(Paper paper) {
        return switch (paper) {
            case LETTER -> PageSize.LETTER;
            case A4 -> PageSize.A4;
        };
    }

    /**
     * Draws every page.
     *
     * @param document open, with nothing on its first page yet
     * @param writer the document's writer
     * @param fonts the faces to set it in
     */
    public static void draw(Document document, PdfWriter writer, ReportFonts fonts, ReportContent content) {
        Rectangle sheet = sheet(content.assessment().authority().paper());
        Matter matter = Matter.of(content);
        Typesetter type = new Typesetter(fonts);
        List<Flow.Page> pages = lay(matter, type, sheet);
        for (int i = 0; i < pages.size(); i++) {
            document.setPageSize(sheet);
            document.newPage();
            PdfContentByte canvas = writer.getDirectContent();
            Pen pen = new Pen(canvas, type, sheet.getHeight());
            running(pen, matter, sheet, i + 1, pages.size());
            for (Flow.Mark mark : pages.get(i).marks()) {
                mark.draw(pen);
            }
            for (Flow.Section section : pages.get(i).sections()) {
                float top = (float) (sheet.getHeight() - section.top() + 6);
                new PdfOutline(
                        canvas.getRootOutline(), new PdfDestination(PdfDestination.XYZ, 0, top, 0), section.title());
            }
        }
    }

    private static List<Flow.Page> lay(Matter matter, Typesetter type, Rectangle sheet) {
        Flow flow = new Flow(
                type,
                new Box(
                        MARGIN,
                        MARGIN + HEADER,
                        sheet.getWidth() - 2 * MARGIN,
                        sheet.getHeight() - 2 * MARGIN - HEADER - FOOTER));
        new PageOne(matter, flow).lay();
        if (flow.pages().size() == 1) {
            flow.newPage();
        }
        InFull.lay(matter, flow);
        Heating.lay(matter, flow);
        Cooling.lay(matter, flow);
        Readings.lay(matter, flow);
        Thermometer.lay(matter, flow);
        Corrections.lay(matter, flow);
        KeptRecords.lay(matter, flow);
        Sources.lay(matter, flow);
        FilesInside.lay(matter, flow);
        Method.lay(matter, flow);
        Cautions.lay(matter, flow);
        return flow.pages();
    }

    private static void running(Pen pen, Matter matter, Rectangle sheet, int number, int of) {
        Verdict verdict = matter.assessment().verdict();
        double right = sheet.getWidth() - MARGIN;
        String report = "Report " + matter.content().shortId();
        double reportWidth = pen.type().width(RUNNING, report);
        VerdictSign.draw(pen, verdict, MARGIN + 5, MARGIN + 5, 9, Palette.of(verdict), Palette.PAPER);
        Lettering word = Lettering.bold(7.6).in(Palette.of(verdict));
        pen.text(word, verdict.words(), MARGIN + 13, MARGIN);
        double batchX = MARGIN + 13 + pen.type().width(word, verdict.words()) + 9;
        String batch = "Batch " + matter.assessment().batch().batch();
        pen.text(RUNNING, pen.type().shorten(RUNNING, batch, right - reportWidth - 12 - batchX), batchX, MARGIN + 0.3);
        pen.textRight(RUNNING, report, right, MARGIN + 0.3);
        pen.line(MARGIN, MARGIN + 12.5, right, MARGIN + 12.5, Stroke.solid(Palette.RULE, 0.6));

        double foot = sheet.getHeight() - MARGIN - RUNNING.line();
        String page = "Page " + number + " of " + of;
        String kitchen = BatchWords.kitchen(matter.assessment().batch().kitchen()) + ". Written "
                + matter.clock().moment(matter.content().writtenAt().toEpochMilli()) + ". Times are the kitchen's own.";
        double room = right - MARGIN - pen.type().width(RUNNING, page) - 12;
        pen.text(RUNNING, pen.type().shorten(RUNNING, kitchen, room), MARGIN, foot);
        pen.textRight(RUNNING, page, right, foot);
    }
}
