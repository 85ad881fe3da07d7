package org.holdproof.report.seal;

import com.lowagie.text.pdf.PdfContentByte;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.holdproof.report.archive.ArchivalPdf;
import org.holdproof.report.archive.AttachedFile;
import org.holdproof.report.archive.Attachment;
import org.holdproof.report.archive.DocumentFacts;
import org.holdproof.report.font.ReportFonts;

/** A small invented report, for tests only. */
public final class SampleReport {
    public static final Instant WRITTEN = Instant.parse("2031-03-04T05:06:07Z");
    public static final Instant SEALED = Instant.parse("2031-03-04T05:06:09Z");
    public static final String KITCHEN = "Lindenhof & Söhne, test kitchen";

    private static final char[] PASSPHRASE = "four unrelated short words".toCharArray();

    private SampleReport() {}

    public static DocumentFacts facts() {
        return new DocumentFacts("Batch T-1 <sample>: MET – 60 °C", KITCHEN, "en-US", false, WRITTEN);
    }

    public static List<Attachment> attachments() {
        StringBuilder log = new StringBuilder("time,core °C\n");
        for (int minute = 0; minute < 600; minute++) {
            log.append(WRITTEN.plusSeconds(60L * minute))
                    .append(",5")
                    .append(minute % 10)
                    .append(".0\n");
        }
        return List.of(
                text(Attachment.Role.LOG, "probe lög.csv", "text/csv", log.toString()),
                text(Attachment.Role.BATCH_RECORD, "batch.json", "application/json", "{\"batch\": \"T-1\"}\n"),
                text(Attachment.Role.ASSESSMENT, "assessment.json", "application/json", "{\"verdict\": \"MET\"}\n"));
    }

    public static Attachment text(Attachment.Role role, String name, String mimeType, String content) {
        return new Attachment(role, name, mimeType, content.getBytes(StandardCharsets.UTF_8));
    }

    public static ArchivalPdf.Pages pages() {
        return (document, writer, structure, attached) -> {
            ReportFonts fonts = ReportFonts.load();
            for (int page = 1; page <= 2; page++) {
                document.newPage();
                PdfContentByte canvas = writer.getDirectContent();
                canvas.setRGBColorFill(0x22, 0x44, 0x66);
                canvas.rectangle(40, 40, 200, 8);
                canvas.fill();
                canvas.beginText();
                canvas.setFontAndSize(fonts.regular(), 11);
                canvas.setTextMatrix(40, 700);
                canvas.showText("Page " + page + ": held at 60 °C");
                canvas.setFontAndSize(fonts.mono(), 7);
                int y = 600;
                for (AttachedFile file : attached) {
                    canvas.setTextMatrix(40, y);
                    canvas.showText(file.sha256() + "  " + file.name());
                    y -= 12;
                }
                canvas.endText();
            }
        };
    }

    public static byte[] unsealed() {
        try {
            return ArchivalPdf.write(facts(), attachments(), pages());
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
    }

    public static byte[] forSealing() {
        try {
            return ArchivalPdf.writeForSealing(facts(), attachments(), pages());
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
    }

    public static SigningKey newKey(String kitchen) {
        try {
            Path folder = Files.createTempDirectory("holdproof-key");
            Path file = folder.resolve("seal.p12");
            try {
                return NewSigningKey.create(file, PASSPHRASE, kitchen, WRITTEN.minusSeconds(60), 10);
            } finally {
                Files.deleteIfExists(file);
                Files.delete(folder);
            }
        } catch (IOException | UnusableKeyException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    public static byte[] sealed(SigningKey key) {
        try {
            return Seal.sign(forSealing(), key, SEALED, Optional.empty());
        } catch (TimestampException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    public static byte[] sealed(SigningKey key, TimestampSource timestamps) throws TimestampException {
        return Seal.sign(forSealing(), key, SEALED, Optional.of(timestamps));
    }
}
