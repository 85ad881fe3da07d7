package org.holdproof.report.draw;

import static org.assertj.core.api.Assertions.assertThat;

import com.lowagie.text.Document;
import com.lowagie.text.PageSize;
import com.lowagie.text.Rectangle;
import com.lowagie.text.pdf.PdfWriter;
import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.holdproof.core.verdict.Verdict;
import org.holdproof.report.font.ReportFonts;
import org.junit.jupiter.api.Test;

/** The signs must be told apart on a sheet printed in black alone. */
class VerdictSignTest {
    @Test
    void noTwoSignsLookAlikeInBlack() throws Exception {
        for (Verdict one : Verdict.values()) {
            for (Verdict other : Verdict.values()) {
                if (one != other) {
                    assertThat(differing(inBlack(one), inBlack(other)))
                            .as("%s against %s", one, other)
                            .isGreaterThan(0.2);
                }
            }
        }
    }

    @Test
    void theColoursAreToldApartInGrayOrHaveTheSameWeight() {
        for (Verdict verdict : Verdict.values()) {
            Color colour = Palette.of(verdict);
            double luminance =
                    (0.2126 * colour.getRed() + 0.7152 * colour.getGreen() + 0.0722 * colour.getBlue()) / 255;
            assertThat(luminance).as("dark enough to read on paper").isLessThan(0.42);
        }
    }

    private static double differing(BufferedImage one, BufferedImage other) {
        int differ = 0;
        for (int x = 0; x < one.getWidth(); x++) {
            for (int y = 0; y < one.getHeight(); y++) {
                differ += one.getRGB(x, y) == other.getRGB(x, y) ? 0 : 1;
            }
        }
        return differ / (double) (one.getWidth() * one.getHeight());
    }

    private static BufferedImage inBlack(Verdict verdict) throws Exception {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        Rectangle sheet = new Rectangle(PageSize.A4);
        sheet.setRight(20);
        sheet.setTop(20);
        Document document = new Document(sheet);
        PdfWriter writer = PdfWriter.getInstance(document, bytes);
        document.open();
        Pen pen = new Pen(writer.getDirectContent(), new Typesetter(ReportFonts.load()), 20);
        VerdictSign.draw(pen, verdict, 10, 10, 18, Color.BLACK, Color.WHITE);
        document.close();
        try (PDDocument read = Loader.loadPDF(bytes.toByteArray())) {
            return new PDFRenderer(read).renderImageWithDPI(0, 144, ImageType.BINARY);
        }
    }
}
