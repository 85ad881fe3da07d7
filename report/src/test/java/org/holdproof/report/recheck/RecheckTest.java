package org.holdproof.report.recheck;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import com.lowagie.text.pdf.BaseFont;
import com.lowagie.text.pdf.PdfContentByte;
import com.lowagie.text.pdf.PdfReader;
import com.lowagie.text.pdf.PdfStamper;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.holdproof.report.archive.ArchivalPdf;
import org.holdproof.report.archive.Attachment;
import org.holdproof.report.font.ReportFonts;
import org.holdproof.report.recheck.RecheckReport.Kind;
import org.holdproof.report.recheck.RecheckReport.State;
import org.holdproof.report.seal.CertificateFacts;
import org.holdproof.report.seal.ChainedKey;
import org.holdproof.report.seal.LoopbackTimestampAuthority;
import org.holdproof.report.seal.OutsideTool;
import org.holdproof.report.seal.SampleReport;
import org.holdproof.report.seal.Seal;
import org.holdproof.report.seal.SealPlace;
import org.holdproof.report.seal.SigningKey;
import org.holdproof.report.seal.TimestampService;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RecheckTest {
    private static final SigningKey KEY = SampleReport.newKey(SampleReport.KITCHEN);
    private static final byte[] SEALED = SampleReport.sealed(KEY);
    private static final byte[] STAMPED = stamped();

    private static byte[] stamped() {
        try (LoopbackTimestampAuthority authority = new LoopbackTimestampAuthority(
                LoopbackTimestampAuthority.Manner.HONEST, SampleReport.SEALED, "SHA256withRSA")) {
            return SampleReport.sealed(KEY, new TimestampService(authority.address(), Duration.ofSeconds(20)));
        } catch (Exception impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    @Test
    void anUntouchedReportIsIntactAndTellsWhoSealedItAndWhen() {
        RecheckReport report = Recheck.of(SEALED);
        assertThat(report.findings()).isEmpty();
        assertThat(report.state()).isEqualTo(State.INTACT);
        assertThat(report.claimedTime()).contains(SampleReport.SEALED);
        assertThat(report.timestamp()).isEmpty();
        CertificateFacts signer = report.signer().orElseThrow();
        assertThat(signer.name()).isEqualTo(SampleReport.KITCHEN);
        assertThat(signer.fingerprint()).isEqualTo(KEY.fingerprint());
        assertThat(signer.selfSigned()).isTrue();
        assertThat(signer.notAfter()).isEqualTo(KEY.notAfter());
        assertThat(Recheck.of(SEALED, KEY.fingerprint()).intact()).isTrue();
    }

    @Test
    void givesBackEveryAttachmentByRole() {
        RecheckReport report = Recheck.of(SEALED);
        for (Attachment given : SampleReport.attachments()) {
            Attachment found = report.attachment(given.role()).orElseThrow();
            assertThat(found.content()).isEqualTo(given.content());
            assertThat(found.listed()).isEqualTo(given.listed());
            assertThat(found.mimeType()).isEqualTo(given.mimeType());
        }
        assertThat(report.attachments()).hasSize(4);
        assertThat(report.attachment(Attachment.Role.TABLES)).isEmpty();
    }

    @Test
    void anUnsealedReportProvesNothingButStillGivesItsAttachments() {
        for (byte[] pdf : List.of(SampleReport.unsealed(), SampleReport.forSealing())) {
            RecheckReport report = Recheck.of(pdf);
            assertThat(report.state()).isEqualTo(State.UNSEALED);
            assertThat(report.findings())
                    .extracting(RecheckReport.Finding::kind)
                    .containsExactly(Kind.NO_SEAL);
            assertThat(report.attachments()).hasSize(4);
        }
    }

    @Test
    void worksForAnRsaKeyWithAChainAsWell(@TempDir Path folder) throws Exception {
        assertThat(Recheck.of(STAMPED).findings()).isEmpty();
        SigningKey rsa = ChainedKey.rsa(folder);
        RecheckReport report = Recheck.of(SampleReport.sealed(rsa));
        assertThat(report.findings()).isEmpty();
        assertThat(report.signer().orElseThrow().selfSigned()).isFalse();
        assertThat(report.signer().orElseThrow().issuer()).isEqualTo("CN=Test root");
        assertThat(report.signer().orElseThrow().name()).isEqualTo("C=AT,O=Test office");
        assertThat(SampleReport.sealed(rsa)).as("RSA signatures repeat").isEqualTo(SampleReport.sealed(rsa));
    }

    // ---- one changed byte -------------------------------------------------------------------------------------

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4})
    void anyChangedByteIsFound(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        byte[] file = (seed % 2 == 0 ? STAMPED : SEALED).clone();
        for (int change = 0; change < 1_000; change++) {
            changed(file, random.nextInt(file.length), (byte) random.nextInt(1, 256));
        }
    }

    /** The one place the signature does not cover: every figure of the message, and the padding around its end. */
    @Test
    void anyChangedFigureOfTheSealItselfIsFound() {
        SplittableRandom random = new SplittableRandom(5);
        byte[] file = STAMPED.clone();
        int start = Tampering.sealStart(file);
        int used = Tampering.sealFigures(file);
        byte[] figures = "0123456789abcdefABCDEF gx>".getBytes(StandardCharsets.US_ASCII);
        for (int at = start - 1; at < start + used + 100; at++) {
            // The case of a letter, or another figure.
            byte difference =
                    (byte) (Character.isLetter(file[at]) ? 0x20 : file[at] ^ figures[random.nextInt(figures.length)]);
            if (difference != 0) {
                changed(file, at, difference);
            }
        }
        for (int at = start + used; at < start + 2 * SealPlace.ROOM + 1; at += 97) {
            changed(file, at, (byte) 1);
        }
    }

    /** Algorithms, versions and identifiers lie outside what is signed; each bit of them counts all the same. */
    @Test
    void anyChangedBitOfTheSealsFrameIsFound() {
        byte[] cms = Tampering.cms(STAMPED);
        SplittableRandom random = new SplittableRandom(6);
        for (int octet = 0; octet < cms.length; octet++) {
            int bit = random.nextInt(8);
            cms[octet] ^= (byte) (1 << bit);
            assertThat(Recheck.of(Tampering.withCms(STAMPED, cms)).state())
                    .as("bit %d of octet %d of the CMS", bit, octet)
                    .isEqualTo(State.BROKEN);
            cms[octet] ^= (byte) (1 << bit);
        }
    }

    private static void changed(byte[] file, int at, byte difference) {
        byte was = file[at];
        file[at] ^= difference;
        RecheckReport report = Recheck.of(file);
        assertThat(report.state())
                .as("byte %d changed from %02x to %02x: %s", at, was, file[at], report.findings())
                .isEqualTo(State.BROKEN);
        file[at] = was;
    }

    @Test
    void theTwinOfAnEllipticCurveSignatureIsFound() throws Exception {
        byte[] file = Tampering.withTwinSignature(SEALED, KEY);
        assertThat(Recheck.of(file).findings())
                .extracting(RecheckReport.Finding::kind)
                .containsExactly(Kind.SIGNATURE_UNSOUND);
    }

    @Test
    void aTimestampTakenOutIsFound() throws Exception {
        RecheckReport report = Recheck.of(Tampering.withoutTimestamp(STAMPED));
        assertThat(report.findings()).singleElement().satisfies(finding -> {
            assertThat(finding.kind()).isEqualTo(Kind.TIME_UNSOUND);
            assertThat(finding.detail()).contains("taken out");
        });
    }

    // ---- whole things added, cut or exchanged -----------------------------------------------------------------

    @Test
    void appendedBytesAreFoundAndTheInnerSealIsStillTold() {
        for (String tail : List.of("\n", " ", "%%EOF\n", "\n%%EOF\n", "x".repeat(5_000))) {
            RecheckReport report = Recheck.of(joined(SEALED, tail.getBytes(StandardCharsets.US_ASCII)));
            assertThat(report.state()).isEqualTo(State.BROKEN);
            assertThat(report.findings()).singleElement().satisfies(finding -> {
                assertThat(finding.kind()).isEqualTo(Kind.ADDED_AFTER_SEALING);
                assertThat(finding.detail()).startsWith(tail.length() + " bytes were added");
            });
            assertThat(report.signer().orElseThrow().fingerprint()).isEqualTo(KEY.fingerprint());
        }
    }

    @Test
    void prependedBytesAndAFileCutShortAreFound() {
        assertThat(Recheck.of(joined(new byte[] {'\n'}, SEALED)).state()).isEqualTo(State.BROKEN);
        SplittableRandom random = new SplittableRandom(7);
        for (int cut = 0; cut < 300; cut++) {
            byte[] shorter = Arrays.copyOf(SEALED, random.nextInt(SEALED.length));
            assertThat(Recheck.of(shorter).state()).isEqualTo(State.BROKEN);
        }
        assertThat(Recheck.of(Arrays.copyOf(SEALED, SEALED.length - 1)).state()).isEqualTo(State.BROKEN);
    }

    /** The classic trap: the signature stays valid over the old revision, the page shows something else. */
    @Test
    void textLaidOverInALaterRevisionIsFound(@TempDir Path folder) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PdfReader reader = new PdfReader(SEALED);
        PdfStamper stamper = new PdfStamper(reader, out, '\0', true);
        PdfContentByte over = stamper.getOverContent(1);
        BaseFont font = ReportFonts.load().bold();
        over.beginText();
        over.setFontAndSize(font, 40);
        over.setTextMatrix(40, 500);
        over.showText("MET");
        over.endText();
        stamper.close();
        byte[] laidOver = out.toByteArray();
        assertThat(laidOver).startsWith(SEALED);

        Path file = Files.write(folder.resolve("over.pdf"), laidOver);
        assertThat(OutsideTool.PDFSIG.run(folder, "-nocert", file.toString()).text())
                .as("poppler still calls the signature valid")
                .contains("Signature is Valid.");
        assertThat(Recheck.of(laidOver).findings())
                .extracting(RecheckReport.Finding::kind)
                .containsExactly(Kind.ADDED_AFTER_SEALING);
    }

    @Test
    void aFileSavedAgainByAnotherProgramIsFound(@TempDir Path folder) throws Exception {
        try (PDDocument document = Loader.loadPDF(SEALED)) {
            ByteArrayOutputStream again = new ByteArrayOutputStream();
            document.save(again);
            assertThat(Recheck.of(again.toByteArray()).findings())
                    .extracting(RecheckReport.Finding::kind)
                    .containsExactly(Kind.NOT_AS_WRITTEN);
        }
        Path file = Files.write(folder.resolve("sealed.pdf"), SEALED);
        Path linear = folder.resolve("linear.pdf");
        OutsideTool.QPDF.run(folder, "--linearize", file.toString(), linear.toString());
        assertThat(Recheck.of(Files.readAllBytes(linear)).state()).isEqualTo(State.BROKEN);
    }

    @Test
    void aCopySealedByAnotherKeyTellsTheOtherSigner() {
        SigningKey other = SampleReport.newKey(SampleReport.KITCHEN);
        byte[] copy = SampleReport.sealed(other);
        assertThat(Recheck.of(copy).intact()).isTrue();
        RecheckReport report = Recheck.of(copy, KEY.fingerprint());
        assertThat(report.state()).isEqualTo(State.BROKEN);
        assertThat(report.findings()).singleElement().satisfies(finding -> {
            assertThat(finding.kind()).isEqualTo(Kind.OTHER_SIGNER);
            assertThat(finding.detail())
                    .contains(other.fingerprint().hex(), KEY.fingerprint().hex());
        });
    }

    @Test
    void theSealOfOneFileInAnotherIsFound() throws Exception {
        byte[] other = Seal.sign(SampleReport.forSealing(), KEY, SampleReport.SEALED.plusSeconds(60), Optional.empty());
        byte[] mixed = SEALED.clone();
        int start = Tampering.sealStart(mixed);
        System.arraycopy(other, start, mixed, start, 2 * SealPlace.ROOM);
        RecheckReport report = Recheck.of(mixed);
        assertThat(report.findings()).extracting(RecheckReport.Finding::kind).containsExactly(Kind.CHANGED);
    }

    @Test
    void anotherCertificateInTheSealIsFound() throws Exception {
        byte[] exchanged = Tampering.withCertificateOf(SEALED, SampleReport.newKey(SampleReport.KITCHEN));
        assertThat(Recheck.of(exchanged).findings())
                .extracting(RecheckReport.Finding::kind)
                .containsExactly(Kind.SIGNATURE_UNSOUND);
    }

    /** Somebody who has a key of his own, but exchanges a file without touching the printed list. */
    @Test
    void anExchangedAttachmentIsFoundEvenUnderAFreshSeal() throws Exception {
        List<Attachment> attachments = SampleReport.attachments();
        byte[] sealable = ArchivalPdf.writeForSealing(SampleReport.facts(), attachments, SampleReport.pages());
        byte[] exchanged = Tampering.withContent(sealable, attachments.get(1), "{\"batch\": \"T-2\"}\n");
        RecheckReport report = Recheck.of(Seal.sign(exchanged, KEY, SampleReport.SEALED, Optional.empty()));
        assertThat(report.findings()).singleElement().satisfies(finding -> {
            assertThat(finding.kind()).isEqualTo(Kind.ATTACHMENT_UNSOUND);
            assertThat(finding.detail())
                    .contains("batch.json", attachments.get(1).sha256());
        });
    }

    @Test
    void anExpiredCertificateIsFound() throws Exception {
        byte[] late =
                Seal.sign(SampleReport.forSealing(), KEY, Instant.parse("2045-01-01T00:00:00Z"), Optional.empty());
        assertThat(Recheck.of(late).findings())
                .extracting(RecheckReport.Finding::kind)
                .containsExactly(Kind.TIME_UNSOUND);
    }

    // ---- anything at all --------------------------------------------------------------------------------------

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {11, 12})
    void noInputMakesItThrow(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<byte[]> inputs = new ArrayList<>(List.of(
                new byte[0],
                "%PDF-1.7\n%".getBytes(StandardCharsets.US_ASCII),
                "not a PDF at all".getBytes(StandardCharsets.US_ASCII),
                ("%PDF-1.7\n%\n" + "[".repeat(100_000) + "\nstartxref\n0\n%%EOF\n")
                        .getBytes(StandardCharsets.US_ASCII)));
        for (int i = 0; i < 300; i++) {
            byte[] noise = new byte[random.nextInt(2_000)];
            for (int k = 0; k < noise.length; k++) {
                noise[k] = (byte) random.nextInt();
            }
            inputs.add(noise);
            byte[] mangled = SEALED.clone();
            int length = random.nextInt(1, 400);
            int from = random.nextInt(mangled.length - length);
            System.arraycopy(SEALED, random.nextInt(SEALED.length - length), mangled, from, length);
            inputs.add(mangled);
        }
        for (byte[] input : inputs) {
            assertThatCode(() -> Recheck.of(input)).doesNotThrowAnyException();
            if (!Arrays.equals(input, SEALED)) {
                assertThat(Recheck.of(input).intact()).isFalse();
            }
        }
    }

    private static byte[] joined(byte[] first, byte[] second) {
        byte[] both = Arrays.copyOf(first, first.length + second.length);
        System.arraycopy(second, 0, both, first.length, second.length);
        return both;
    }
}
