package org.holdproof.report.layout;

import com.lowagie.text.Document;
import com.lowagie.text.PageSize;
import com.lowagie.text.Rectangle;
import com.lowagie.text.pdf.PdfWriter;
import org.holdproof.core.standard.AuthorityProfile.Paper;
import org.holdproof.report.ReportContent;
import org.holdproof.report.font.ReportFonts;

/** Draws a report's pages. It touches page content and outline only, never the file's own properties. */
public final class ReportLayout {
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
        document.setPageSize(sheet(content.assessment().authority().paper()));
        document.newPage();
        var page = writer.getDirectContent();
        page.beginText();
        page.setFontAndSize(fonts.bold(), 12);
        page.setTextMatrix(40, 700);
        page.showText(fonts.showable(content.assessment().batch().batch() + ": "
                + content.assessment().verdict().words()));
        page.endText();
    }
}
