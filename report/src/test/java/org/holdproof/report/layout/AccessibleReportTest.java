package org.holdproof.report.layout;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.holdproof.report.archive.ArchivalPdf;
import org.holdproof.report.archive.DocumentFacts;
import org.holdproof.report.font.ReportFonts;
import org.holdproof.report.seal.OutsideTool;
import org.holdproof.report.seal.SampleReport;
import org.holdproof.report.seal.Seal;
import org.holdproof.report.seal.SigningKey;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.ValidationResult;

/** Whole reports of invented cooks, sealed, before readers that do not see the page. */
class AccessibleReportTest {
    private static final SigningKey KEY = SampleReport.newKey(SampleReport.KITCHEN);

    @BeforeAll
    static void wakeVeraPdf() {
        VeraGreenfieldFoundryProvider.initialise();
    }

    static Stream<Named<ReportContent>> reports() {
        return Stream.of(
                Named.of("met", InventedCooks.met("us-food-code-2022")),
                Named.of("a gap", InventedCooks.gap("canada-cfia")),
                Named.of("every extreme", InventedExtremes.full()));
    }

    /** ISO 19005-3 level A and ISO 14289-1, so far as veraPDF 1.30 checks them. */
    @ParameterizedTest
    @MethodSource("reports")
    void conformsToPdfA3aAndPdfUa1(ReportContent content) throws Exception {
        byte[] pdf = sealed(content);
        for (PDFAFlavour profile : List.of(PDFAFlavour.PDFA_3_A, PDFAFlavour.PDFUA_1)) {
            try (PDFAParser parser = Foundries.defaultInstance().createParser(new ByteArrayInputStream(pdf), profile);
                    PDFAValidator validator = Foundries.defaultInstance().createValidator(profile, false)) {
                ValidationResult result = validator.validate(parser);
                assertThat(result.getTestAssertions().stream()
                                .map(found -> found.getRuleId().getClause() + ": " + found.getMessage())
                                .distinct())
                        .as(profile.toString())
                        .isEmpty();
                assertThat(result.isCompliant()).isTrue();
                assertThat(result.getTotalAssertions()).isGreaterThan(1000);
            }
        }
    }

    /** In the order a person reads: pdftotext takes the order of the page's content. */
    @Test
    void textComesOutInOrder(@TempDir Path folder) throws Exception {
        Path pdf = Files.write(folder.resolve("report.pdf"), sealed(InventedCooks.lateChill("us-food-code-2022")));
        Path text = folder.resolve("report.txt");
        assertThat(OutsideTool.PDFTOTEXT
                        .run(folder, "-raw", pdf.toString(), text.toString())
                        .status())
                .isZero();
        String read = PageReading.squeeze(Files.readString(text));
        int at = 0;
        for (String next : List.of(
                "Batch ",
                "NOT MET",
                "checks:",
                "The whole cook",
                "The checks",
                "What to do next",
                "Seal",
                "Decision support.",
                "Each check in full",
                "Lethality",
                "Cooling",
                "Batch and stages",
                "Corrective actions",
                "Sources",
                "Files inside",
                "How it was judged")) {
            int found = read.indexOf(PageReading.squeeze(next), at);
            assertThat(found).as(next).isGreaterThanOrEqualTo(at);
            at = found;
        }
    }

    @Test
    void everyChartSaysWhatItShowsAndTheTreeFollowsThePage() throws Exception {
        try (PDDocument document = Loader.loadPDF(sealed(InventedCooks.lateChill("us-food-code-2022")))) {
            List<PDStructureElement> all =
                    all(document.getDocumentCatalog().getStructureTreeRoot()).toList();
            assertThat(all.stream()
                            .filter(part -> part.getStructureType().equals("Figure"))
                            .map(PDStructureElement::getAlternateDescription))
                    .hasSizeGreaterThanOrEqualTo(3)
                    .allSatisfy(words -> assertThat(words).startsWith("Chart, ").hasSizeGreaterThan(60));
            assertThat(all.stream()
                            .filter(part -> part.getStructureType().equals("TH"))
                            .map(part -> part.getCOSObject().containsKey(COSName.A)))
                    .isNotEmpty()
                    .allMatch(has -> has);
            assertThat(all.stream().filter(part -> part.getStructureType().equals("H1")))
                    .hasSize(1);
            assertThat(document.getDocumentCatalog().getLanguage()).isEqualTo("en");
        }
    }

    private static Stream<PDStructureElement> all(PDStructureNode node) {
        return node.getKids().stream()
                .filter(PDStructureElement.class::isInstance)
                .map(PDStructureElement.class::cast)
                .flatMap(part -> Stream.concat(Stream.of(part), all(part)));
    }

    private static byte[] sealed(ReportContent content) throws Exception {
        DocumentFacts facts =
                new DocumentFacts("An invented cook", "An invented kitchen", "en", true, SampleReport.WRITTEN);
        byte[] sealable = ArchivalPdf.writeForSealing(
                facts,
                SampleReport.attachments(),
                (document, writer, structure, attached) ->
                        ReportLayout.draw(document, writer, structure, ReportFonts.load(), content));
        return Seal.sign(sealable, KEY, SampleReport.SEALED, java.util.Optional.empty());
    }
}
