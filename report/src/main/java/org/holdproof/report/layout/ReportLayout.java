package org.holdproof.report.layout;

import com.lowagie.text.Document;
import com.lowagie.text.PageSize;
import com.lowagie.text.Rectangle;
import com.lowagie.text.pdf.PdfDestination;
import com.lowagie.text.pdf.PdfOutline;
import com.lowagie.text.pdf.PdfWriter;
import java.util.List;
import org.holdproof.core.rules.AuthorityProfile.Paper;
import org.holdproof.report.draw.Box;
import org.holdproof.report.draw.Pen;
import org.holdproof.report.draw.Structure;
import org.holdproof.report.draw.Typesetter;
import org.holdproof.report.font.ReportFonts;

/** Draws a report's pages. It touches page content and outline only, never the file's own properties. */
public final class ReportLayout {
    /** Nothing is drawn nearer to the sheet's edge than this, in points. */
    static final double MARGIN = 32;

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
     * @param structure takes what the pages hold, in reading order
     * @param fonts the faces to set it in
     */
    public static void draw(
            Document document, PdfWriter writer, Structure structure, ReportFonts fonts, ReportContent content) {
        Rectangle sheet = sheet(content.assessment().authority().paper());
        WordedReport matter = WordedReport.of(content);
        Typesetter type = new Typesetter(fonts);
        RunningWords running = RunningWords.of(matter, type, sheet.getWidth() - 2 * MARGIN);
        List<Flow.Page> pages = lay(matter, type, sheet, running, structure.document());
        structure.write(writer);
        for (int i = 0; i < pages.size(); i++) {
            document.setPageSize(sheet);
            document.newPage();
            Pen pen = new Pen(writer.getDirectContent(), type, sheet.getHeight());
            String page = "Page " + (i + 1) + " of " + pages.size();
            pen.decoration(() -> running.draw(pen, sheet, page));
            for (Flow.Placed mark : pages.get(i).marks()) {
                mark.draw(pen);
            }
            for (Flow.Section section : pages.get(i).sections()) {
                float top = (float) (sheet.getHeight() - section.top() + 6);
                new PdfOutline(
                        writer.getDirectContent().getRootOutline(),
                        new PdfDestination(PdfDestination.XYZ, 0, top, 0),
                        section.title());
            }
        }
    }

    private static List<Flow.Page> lay(
            WordedReport matter, Typesetter type, Rectangle sheet, RunningWords running, Structure.Part document) {
        double top = MARGIN + running.headHeight();
        Flow flow = new Flow(
                type,
                new Box(MARGIN, top, sheet.getWidth() - 2 * MARGIN, sheet.getHeight() - running.footHeight() - top),
                document);
        new PageOne(matter, flow).lay();
        if (flow.pages().size() == 1) {
            flow.newPage();
        }
        OwnLimits.lay(matter, flow);
        ChecksInFull.lay(matter, flow);
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
}
