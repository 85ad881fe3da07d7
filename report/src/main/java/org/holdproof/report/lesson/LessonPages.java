package org.holdproof.report.lesson;

import com.lowagie.text.Document;
import com.lowagie.text.Rectangle;
import com.lowagie.text.pdf.PdfWriter;
import java.io.IOException;
import java.time.Instant;
import java.util.List;
import org.holdproof.core.lesson.Lesson;
import org.holdproof.core.rules.AuthorityProfile.Paper;
import org.holdproof.report.archive.ArchivalPdf;
import org.holdproof.report.archive.Attachment;
import org.holdproof.report.archive.DocumentFacts;
import org.holdproof.report.draw.Box;
import org.holdproof.report.draw.Pen;
import org.holdproof.report.draw.Typesetter;
import org.holdproof.report.font.ReportFonts;
import org.holdproof.report.layout.ReportLayout;

/** The lesson as a file: a page to hand out, one to project, the exercises and their key. */
public final class LessonPages {
    private static final double MARGIN = 25;
    static final String TITLE = "Why a very low bath is unsafe, not just slower";

    private LessonPages() {}

    /** One page. */
    private interface Page {
        void draw(Pen pen);
    }

    /**
     * The PDF's bytes.
     *
     * @param paper of the pages to print
     * @param tables the archive of the tables it was made from, which rides inside
     */
    public static byte[] write(Lesson lesson, Paper paper, byte[] tables, Instant now) throws IOException {
        ReportFonts fonts = ReportFonts.load();
        DocumentFacts facts =
                new DocumentFacts(TITLE + ": " + lesson.setup().cut().title(), "Holdproof", "en", false, now);
        List<Attachment> attachments =
                List.of(new Attachment(Attachment.Role.TABLES, "tables.zip", "application/zip", tables));
        return ArchivalPdf.write(
                facts,
                attachments,
                (document, writer, structure, attached) -> draw(document, writer, fonts, lesson, paper));
    }

    /**
     * Draws every page.
     *
     * @param document open, with nothing on its first page yet
     */
    static void draw(Document document, PdfWriter writer, ReportFonts fonts, Lesson lesson, Paper paper) {
        Typesetter type = new Typesetter(fonts);
        Rectangle sheet = ReportLayout.sheet(paper);
        Box body = new Box(MARGIN, MARGIN, sheet.getWidth() - 2 * MARGIN, sheet.getHeight() - 2 * MARGIN);
        page(document, writer, type, sheet, new HandOutPage(lesson, type, body)::draw);
        Rectangle screen = new Rectangle((float) ProjectedPage.WIDTH, (float) ProjectedPage.HEIGHT);
        page(document, writer, type, screen, new ProjectedPage(lesson, type)::draw);
        page(document, writer, type, sheet, new ExercisePage(lesson, type, body, false)::draw);
        page(document, writer, type, sheet, new ExercisePage(lesson, type, body, true)::draw);
    }

    private static void page(Document document, PdfWriter writer, Typesetter type, Rectangle sheet, Page page) {
        document.setPageSize(sheet);
        document.newPage();
        page.draw(new Pen(writer.getDirectContent(), type, sheet.getHeight()));
    }
}
