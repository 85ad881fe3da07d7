package org.holdproof.report.layout;

import com.lowagie.text.Document;
import com.lowagie.text.pdf.PdfDate;
import com.lowagie.text.pdf.PdfName;
import com.lowagie.text.pdf.PdfWriter;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZonedDateTime;
import java.util.GregorianCalendar;
import java.util.Map;
import org.holdproof.report.draw.Structure;
import org.holdproof.report.font.ReportFonts;

/** Lays a report out into bytes, and, run by itself, the invented cooks into a folder to look at. */
final class Printed {
    private Printed() {}

    static byte[] bytes(ReportContent content) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        Document document = new Document();
        PdfWriter writer = PdfWriter.getInstance(document, bytes);
        writer.setTagged();
        document.open();
        ReportLayout.draw(document, writer, new Structure(), ReportFonts.load(), content);
        ZonedDateTime written = content.writtenAt().atZone(InventedCooks.ZONE);
        PdfDate date = new PdfDate(GregorianCalendar.from(written));
        writer.getInfo().put(PdfName.CREATIONDATE, date);
        writer.getInfo().put(PdfName.MODDATE, date);
        document.close();
        return bytes.toByteArray();
    }

    public static void main(String[] folder) throws IOException {
        Path into = Path.of(folder[0]);
        Files.createDirectories(into);
        Map<String, ReportContent> reports = Map.of(
                "met", InventedCooks.met("us-food-code-2022"),
                "low", InventedCooks.lowBath("us-fsis-2021"),
                "late", InventedCooks.lateChill("us-food-code-2022"),
                "gap", InventedCooks.gap("canada-cfia"));
        for (Map.Entry<String, ReportContent> report : reports.entrySet()) {
            Files.write(into.resolve(report.getKey() + ".pdf"), bytes(report.getValue()));
        }
    }
}
