package org.holdproof.report.archive;

import com.lowagie.text.Document;
import com.lowagie.text.DocumentException;
import com.lowagie.text.Rectangle;
import com.lowagie.text.pdf.PdfAnnotation;
import com.lowagie.text.pdf.PdfArray;
import com.lowagie.text.pdf.PdfDate;
import com.lowagie.text.pdf.PdfDictionary;
import com.lowagie.text.pdf.PdfEncryption;
import com.lowagie.text.pdf.PdfFileSpecification;
import com.lowagie.text.pdf.PdfFormField;
import com.lowagie.text.pdf.PdfICCBased;
import com.lowagie.text.pdf.PdfIndirectReference;
import com.lowagie.text.pdf.PdfName;
import com.lowagie.text.pdf.PdfNumber;
import com.lowagie.text.pdf.PdfObject;
import com.lowagie.text.pdf.PdfStream;
import com.lowagie.text.pdf.PdfString;
import com.lowagie.text.pdf.PdfWriter;
import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import org.holdproof.report.draw.Structure;
import org.holdproof.report.pdf.PdfInstant;
import org.holdproof.report.seal.Digests;
import org.holdproof.report.seal.SealPlace;

/**
 * A file for the archive: PDF 1.7 that conforms to PDF/A-3b (ISO 19005-3), or to PDF/A-3a and PDF/UA-1 (ISO 14289-1) where its pages
 * are drawn with tags, with its sources attached. The same pages,
 * facts and attachments come out byte for byte the same, so long as the fonts name their subsets the same.
 */
public final class ArchivalPdf {
    static final String PRODUCER = "Holdproof, with " + Document.getVersion();

    private static final int COMPRESSION = 6;

    private ArchivalPdf() {}

    /** Draws the pages of a report. */
    @FunctionalInterface
    public interface Pages {
        /**
         * Draws every page.
         *
         * @param document open, with nothing on its first page yet
         * @param structure takes what the pages hold, in reading order, where they are drawn with tags
         * @param attached every file that rides inside, the list of digests among them, in order
         */
        void draw(Document document, PdfWriter writer, Structure structure, List<AttachedFile> attached)
                throws IOException;
    }

    /**
     * Writes a file that nobody will seal.
     *
     * @param attachments at most one of each role; the list of their digests is added as the last
     * @throws IllegalArgumentException if a role other than the log, or a name, comes twice, or {@link Attachment.Role#DIGESTS} is among them
     */
    public static byte[] write(DocumentFacts facts, List<Attachment> attachments, Pages pages) throws IOException {
        return write(facts, attachments, pages, OptionalInt.empty());
    }

    /** The same with a place kept for {@link org.holdproof.report.seal.Seal#sign}. Until it is sealed it is not a finished file. */
    public static byte[] writeForSealing(DocumentFacts facts, List<Attachment> attachments, Pages pages)
            throws IOException {
        return writeForSealing(facts, attachments, pages, SealPlace.ROOM);
    }

    /** The same with a place for a seal of this many bytes. */
    public static byte[] writeForSealing(DocumentFacts facts, List<Attachment> attachments, Pages pages, int room)
            throws IOException {
        return write(facts, attachments, pages, OptionalInt.of(room));
    }

    private static byte[] write(DocumentFacts facts, List<Attachment> attachments, Pages pages, OptionalInt room)
            throws IOException {
        checkAttachments(attachments);
        List<Attachment> all = new ArrayList<>(attachments);
        all.add(DigestList.over(attachments));

        ByteArrayOutputStream file = new ByteArrayOutputStream(1 << 17);
        Document document = new Document();
        try {
            PdfWriter writer = PdfWriter.getInstance(document, file);
            writer.setPdfVersion(PdfWriter.VERSION_1_7);
            writer.setXmpMetadata(XmpPacket.of(facts, PRODUCER));
            if (facts.tagged()) {
                writer.setTagged();
            }
            writer.setViewerPreferences(PdfWriter.DisplayDocTitle);
            document.open();
            describe(writer, facts, all);
            attach(writer, facts, all);
            Structure structure = new Structure();
            pages.draw(
                    document,
                    writer,
                    structure,
                    all.stream().map(Attachment::listed).toList());
            if (room.isPresent()) {
                keepPlaceForSeal(writer, structure, room.getAsInt());
            }
            document.close();
        } catch (DocumentException | UncheckedIOException unwritable) {
            throw new IOException("the PDF cannot be written: " + unwritable.getMessage(), unwritable);
        }
        return file.toByteArray();
    }

    private static void checkAttachments(List<Attachment> attachments) {
        Set<Attachment.Role> roles = EnumSet.of(Attachment.Role.DIGESTS);
        Set<String> names = new HashSet<>(Set.of(DigestList.NAME));
        for (Attachment attachment : attachments) {
            if (!roles.add(attachment.role()) && attachment.role() != Attachment.Role.LOG) {
                throw new IllegalArgumentException("a second attachment of the role " + attachment.role());
            }
            if (!names.add(attachment.name())) {
                throw new IllegalArgumentException("a second attachment of the name " + attachment.name());
            }
        }
    }

    private static void describe(PdfWriter writer, DocumentFacts facts, List<Attachment> attachments)
            throws IOException {
        PdfDate written = date(facts);
        PdfDictionary info = writer.getInfo();
        info.put(PdfName.TITLE, new PdfString(facts.title(), PdfObject.TEXT_UNICODE));
        info.put(PdfName.AUTHOR, new PdfString(facts.author(), PdfObject.TEXT_UNICODE));
        info.put(PdfName.PRODUCER, new PdfString(PRODUCER, PdfObject.TEXT_UNICODE));
        info.put(PdfName.CREATIONDATE, written);
        info.put(PdfName.MODDATE, written);
        byte[] id = fileId(facts, attachments);
        // OpenPDF takes the file's identifier from here; nothing else lets it be fixed.
        info.put(PdfName.FILEID, PdfEncryption.createInfoId(id, id));

        PdfDictionary catalog = writer.getExtraCatalog();
        catalog.put(PdfName.LANG, new PdfString(facts.language()));
        PdfStream profile = new PdfICCBased(ICC_Profile.getInstance(ColorSpace.CS_sRGB));
        PdfDictionary intent = new PdfDictionary(PdfName.OUTPUTINTENT);
        intent.put(PdfName.S, PdfName.GTS_PDFA1);
        intent.put(PdfName.OUTPUTCONDITIONIDENTIFIER, new PdfString("sRGB IEC61966-2.1"));
        intent.put(PdfName.INFO, new PdfString("sRGB IEC61966-2.1"));
        intent.put(PdfName.DESTOUTPUTPROFILE, writer.addToBody(profile).getIndirectReference());
        catalog.put(PdfName.OUTPUTINTENTS, new PdfArray(intent));
    }

    private static void attach(PdfWriter writer, DocumentFacts facts, List<Attachment> attachments) throws IOException {
        PdfArray associated = new PdfArray();
        for (Attachment attachment : attachments) {
            PdfDictionary params = new PdfDictionary();
            params.put(PdfName.MODDATE, date(facts));
            PdfFileSpecification file = PdfFileSpecification.fileEmbedded(
                    writer,
                    "",
                    attachment.name(),
                    attachment.sharedContent(),
                    attachment.mimeType(),
                    params,
                    COMPRESSION);
            file.put(PdfName.F, new PdfString(attachment.name().replaceAll("[^ -~]", "_")));
            file.put(
                    new PdfName("AFRelationship"), new PdfName(attachment.role().relationship()));
            writer.addFileAttachment(attachment.role().title(), file);
            associated.add(file.getReference());
        }
        writer.getExtraCatalog().put(new PdfName("AF"), associated);
    }

    /** An invisible field on the last page, and its signature dictionary with room for the seal. */
    private static void keepPlaceForSeal(PdfWriter writer, Structure structure, int room) throws IOException {
        PdfIndirectReference seal = writer.getPdfIndirectReference();
        PdfFormField field = PdfFormField.createSignature(writer);
        field.setFieldName("Seal");
        field.put(PdfName.V, seal);
        field.setFlags(PdfAnnotation.FLAGS_PRINT | PdfAnnotation.FLAGS_LOCKED);
        field.setWidget(new Rectangle(0, 0), PdfAnnotation.HIGHLIGHT_NONE);
        field.setPage();
        field.setUserName("Seal of this report");
        if (writer.isTagged()) {
            field.put(
                    new PdfName("StructParent"), new PdfNumber(structure.field(writer, field.getIndirectReference())));
        }
        writer.addAnnotation(field);
        writer.getAcroForm().setSigFlags(3);
        writer.addToBody(SealReservation.ofRoom(room), seal, false);
        PdfDictionary permissions = new PdfDictionary();
        permissions.put(PdfName.DOCMDP, seal);
        writer.getExtraCatalog().put(PdfName.PERMS, permissions);
    }

    private static PdfDate date(DocumentFacts facts) {
        return new PdfDate(PdfInstant.format(facts.created()));
    }

    private static byte[] fileId(DocumentFacts facts, List<Attachment> attachments) {
        StringBuilder named = new StringBuilder(facts.toString());
        attachments.forEach(attachment -> named.append('\n').append(attachment.sha256()));
        return Arrays.copyOf(Digests.sha256(named.toString().getBytes(StandardCharsets.UTF_8)), 16);
    }
}
