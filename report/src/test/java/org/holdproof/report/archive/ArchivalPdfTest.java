package org.holdproof.report.archive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.filespecification.PDComplexFileSpecification;
import org.apache.pdfbox.pdmodel.common.filespecification.PDEmbeddedFile;
import org.apache.pdfbox.text.PDFTextStripper;
import org.holdproof.report.seal.SampleReport;
import org.junit.jupiter.api.Test;

/** Read back with Apache PDFBox; conformance is judged by veraPDF in {@link SealedFileTest}. */
class ArchivalPdfTest {

    @Test
    void sameFactsComeOutByteForByteTheSame() {
        assertThat(SampleReport.unsealed()).isEqualTo(SampleReport.unsealed());
        assertThat(SampleReport.forSealing()).isEqualTo(SampleReport.forSealing());
    }

    @Test
    void attachmentsRideInsideWithNameRoleTypeAndRelationship() throws Exception {
        try (PDDocument document = Loader.loadPDF(SampleReport.unsealed())) {
            COSArray associated =
                    (COSArray) document.getDocumentCatalog().getCOSObject().getDictionaryObject("AF");
            List<String> seen = new ArrayList<>();
            for (int i = 0; i < associated.size(); i++) {
                PDComplexFileSpecification file =
                        new PDComplexFileSpecification((org.apache.pdfbox.cos.COSDictionary) associated.getObject(i));
                PDEmbeddedFile content = file.getEmbeddedFileUnicode();
                seen.add(file.getFileUnicode() + " | " + file.getFileDescription() + " | " + content.getSubtype()
                        + " | " + file.getCOSObject().getNameAsString("AFRelationship"));
                assertThat(content.getSize()).isEqualTo(content.toByteArray().length);
                assertThat(content.getModDate().toInstant()).isEqualTo(SampleReport.WRITTEN);
            }
            assertThat(seen)
                    .containsExactly(
                            "probe lög.csv | Probe log as handed in | text/csv | Source",
                            "batch.json | Batch record as handed in | application/json | Source",
                            "assessment.json | Assessment: every figure of this report | application/json | Data",
                            "SHA256SUMS | SHA-256 of the other attached files | text/plain | Data");
            assertThat(document.getDocumentCatalog()
                            .getNames()
                            .getEmbeddedFiles()
                            .getNames())
                    .hasSize(4);
        }
    }

    @Test
    void saysTheSameOfItselfInBothPlaces() throws Exception {
        try (PDDocument document = Loader.loadPDF(SampleReport.unsealed())) {
            assertThat(document.getDocumentInformation().getTitle())
                    .isEqualTo(SampleReport.facts().title());
            assertThat(document.getDocumentInformation().getAuthor()).isEqualTo(SampleReport.KITCHEN);
            assertThat(document.getDocumentInformation().getCreationDate().toInstant())
                    .isEqualTo(SampleReport.WRITTEN);
            assertThat(document.getDocumentCatalog().getLanguage()).isEqualTo("en-US");
            assertThat(document.getVersion()).isEqualTo(1.7f);
            String packet = new String(
                    document.getDocumentCatalog().getMetadata().toByteArray(), java.nio.charset.StandardCharsets.UTF_8);
            assertThat(packet)
                    .contains("Batch T-1 &lt;sample&gt;: MET – 60 °C", "Lindenhof &amp; Söhne", "2031-03-04T05:06:07Z");
        }
    }

    @Test
    void keepingPlaceForTheSealAddsNoPage() throws Exception {
        try (PDDocument without = Loader.loadPDF(SampleReport.unsealed());
                PDDocument with = Loader.loadPDF(SampleReport.forSealing())) {
            assertThat(with.getNumberOfPages())
                    .isEqualTo(without.getNumberOfPages())
                    .isEqualTo(2);
            assertThat(new PDFTextStripper().getText(with)).isEqualTo(new PDFTextStripper().getText(without));
            assertThat(with.getDocumentCatalog().getAcroForm().getCOSObject().getInt(COSName.getPDFName("SigFlags")))
                    .isEqualTo(3);
        }
    }

    @Test
    void refusesTwoOfARoleTwoOfANameAndItsOwnRole() {
        Attachment log = SampleReport.text(Attachment.Role.LOG, "a.csv", "text/csv", "1");
        Attachment record = SampleReport.text(Attachment.Role.BATCH_RECORD, "b.json", "application/json", "1");
        Attachment sameRole = SampleReport.text(Attachment.Role.BATCH_RECORD, "c.json", "application/json", "1");
        Attachment sameName = SampleReport.text(Attachment.Role.ASSESSMENT, "a.csv", "text/csv", "1");
        Attachment digests = SampleReport.text(Attachment.Role.DIGESTS, "c", "text/plain", "1");
        Attachment listName = SampleReport.text(Attachment.Role.LOG, "SHA256SUMS", "text/plain", "1");
        for (List<Attachment> unfit :
                List.of(List.of(record, sameRole), List.of(log, sameName), List.of(digests), List.of(listName))) {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> ArchivalPdf.write(SampleReport.facts(), unfit, SampleReport.pages()));
        }
    }

    @Test
    void refusesNamesThatAreNoPlainFileNames() {
        for (String name : List.of("", " ", "a/b", "..", ".hidden", "a\\b", "a\nb", "a\u202Eb", "x".repeat(121))) {
            assertThatIllegalArgumentException()
                    .as(name)
                    .isThrownBy(() -> new Attachment(Attachment.Role.LOG, name, "text/csv", new byte[0]));
        }
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Attachment(Attachment.Role.LOG, "a.csv", "csv", new byte[0]));
    }
}
