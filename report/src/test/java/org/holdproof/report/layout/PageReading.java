package org.holdproof.report.layout;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.holdproof.report.draw.Box;

/** Reads a report's pages back: their text, and where every glyph stands. */
public final class PageReading {
    /** Part of a type size that capitals, figures and most lower-case letters fill above the baseline. */
    private static final double RISE = 0.70;

    private PageReading() {}

    /** A glyph and the box it fills, measured from the sheet's top left corner. */
    public record Glyph(String text, Box box) {}

    /** All text with every blank taken out, so that line ends do not matter. */
    public static String squeezed(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return squeeze(new PDFTextStripper().getText(document));
        }
    }

    /** The same page by page. */
    public static List<String> squeezedPages(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            List<String> pages = new ArrayList<>();
            for (int page = 1; page <= document.getNumberOfPages(); page++) {
                PDFTextStripper stripper = new PDFTextStripper();
                stripper.setStartPage(page);
                stripper.setEndPage(page);
                pages.add(squeeze(stripper.getText(document)));
            }
            return pages;
        }
    }

    public static String squeeze(String text) {
        return text.replaceAll("\\s+", "");
    }

    /** The type size of every character on a page that is not blank, in points. */
    public static List<Double> sizes(PDDocument document, int page) throws IOException {
        List<Double> sizes = new ArrayList<>();
        PDFTextStripper stripper = new PDFTextStripper() {
            @Override
            protected void processTextPosition(TextPosition at) {
                if (!at.getUnicode().isBlank()) {
                    sizes.add((double) at.getFontSize());
                }
            }
        };
        stripper.setStartPage(page);
        stripper.setEndPage(page);
        stripper.getText(document);
        return sizes;
    }

    public static List<List<Glyph>> glyphs(PDDocument document) throws IOException {
        List<List<Glyph>> pages = new ArrayList<>();
        for (int page = 1; page <= document.getNumberOfPages(); page++) {
            List<Glyph> glyphs = new ArrayList<>();
            PDFTextStripper stripper = new PDFTextStripper() {
                @Override
                protected void processTextPosition(TextPosition at) {
                    double size = at.getFontSizeInPt();
                    boolean upwards = at.getDir() == 90;
                    double length = at.getWidthDirAdj();
                    Box box = upwards
                            ? new Box(at.getX() - size * RISE, at.getY() - length, size * RISE, length)
                            : new Box(at.getX(), at.getY() - size * RISE, length, size * RISE);
                    if (!at.getUnicode().isBlank()) {
                        glyphs.add(new Glyph(at.getUnicode(), box));
                    }
                }
            };
            stripper.setStartPage(page);
            stripper.setEndPage(page);
            stripper.getText(document);
            pages.add(glyphs);
        }
        return pages;
    }
}
