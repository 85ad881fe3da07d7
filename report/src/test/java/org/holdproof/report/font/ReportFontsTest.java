package org.holdproof.report.font;

import static org.assertj.core.api.Assertions.assertThat;

import com.lowagie.text.Document;
import com.lowagie.text.pdf.BaseFont;
import com.lowagie.text.pdf.PdfWriter;
import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.junit.jupiter.api.Test;

class ReportFontsTest {
    @Test
    void everyFaceIsEmbeddedAsASubsetWithoutCidSet() throws Exception {
        try (PDDocument document = Loader.loadPDF(pageInEveryFace())) {
            List<String> names = new ArrayList<>();
            for (COSName key : document.getPage(0).getResources().getFontNames()) {
                PDFont font = document.getPage(0).getResources().getFont(key);
                names.add(font.getName());
                assertThat(font).isInstanceOf(PDType0Font.class);
                assertThat(font.isEmbedded()).isTrue();
                assertThat(font.getCOSObject().getNameAsString(COSName.ENCODING))
                        .isEqualTo("Identity-H");
                assertThat(((PDType0Font) font)
                                .getDescendantFont()
                                .getFontDescriptor()
                                .getCOSObject()
                                .getDictionaryObject(COSName.getPDFName("CIDSet")))
                        .isNull();
            }
            assertThat(names)
                    .containsExactlyInAnyOrder(
                            "BBBBBB+LiberationSans", "CCCCCC+LiberationSans-Bold", "DDDDDD+LiberationMono");
        }
    }

    @Test
    void subsetsAreNamedAlikeInEveryFile() throws Exception {
        assertThat(fontNames(pageInEveryFace())).isEqualTo(fontNames(pageInEveryFace()));
    }

    @Test
    void whatTheFacesCannotShowLeavesATrace() {
        ReportFonts fonts = ReportFonts.load();
        assertThat(fonts.showable("57 °C ≥ −1,5 µ")).isEqualTo("57 °C ≥ −1,5 µ");
        assertThat(fonts.showable("a\tb\nc")).isEqualTo("a b c");
        assertThat(fonts.showable("牛肉 \uD83D\uDD25")).isEqualTo("□□ □");
        assertThat(fonts.showable("a\u200Bb\uFEFFc")).isEqualTo("abc");
    }

    private static List<String> fontNames(byte[] pdf) throws Exception {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            List<String> names = new ArrayList<>();
            for (COSName key : document.getPage(0).getResources().getFontNames()) {
                names.add(document.getPage(0).getResources().getFont(key).getName());
            }
            return names;
        }
    }

    private static byte[] pageInEveryFace() {
        ReportFonts fonts = ReportFonts.load();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        Document document = new Document();
        PdfWriter writer = PdfWriter.getInstance(document, bytes);
        document.open();
        float baseline = 700;
        for (BaseFont face : List.of(fonts.regular(), fonts.bold(), fonts.mono())) {
            writer.getDirectContent().beginText();
            writer.getDirectContent().setFontAndSize(face, 10);
            writer.getDirectContent().setTextMatrix(50, baseline);
            writer.getDirectContent().showText("Held at 57 °C");
            writer.getDirectContent().endText();
            baseline -= 20;
        }
        document.close();
        return bytes.toByteArray();
    }
}
