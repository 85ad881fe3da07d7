package org.holdproof.report.recheck;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import eu.europa.esig.dss.diagnostic.DiagnosticData;
import eu.europa.esig.dss.diagnostic.SignatureWrapper;
import eu.europa.esig.dss.enumerations.CertificationPermission;
import eu.europa.esig.dss.enumerations.SignatureLevel;
import eu.europa.esig.dss.model.InMemoryDocument;
import eu.europa.esig.dss.pades.validation.PDFDocumentValidator;
import eu.europa.esig.dss.spi.validation.CommonCertificateVerifier;
import java.io.ByteArrayInputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.holdproof.report.archive.ArchivalPdf;
import org.holdproof.report.seal.LoopbackTimestampAuthority;
import org.holdproof.report.seal.OutsideTool;
import org.holdproof.report.seal.SampleReport;
import org.holdproof.report.seal.Seal;
import org.holdproof.report.seal.SigningKey;
import org.holdproof.report.seal.TimestampService;
import org.holdproof.report.seal.TimestampSource;
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

/** Sealed and unsealed files before judges that share no code with this project. */
class SealedFileTest {
    private static final SigningKey KEY = SampleReport.newKey(SampleReport.KITCHEN);

    @BeforeAll
    static void wakeVeraPdf() {
        VeraGreenfieldFoundryProvider.initialise();
    }

    static Stream<Named<byte[]>> files() throws Exception {
        try (LoopbackTimestampAuthority authority = honest()) {
            return Stream.of(
                    Named.of("unsealed", SampleReport.unsealed()),
                    Named.of("sealed", SampleReport.sealed(KEY)),
                    Named.of("sealed and timestamped", SampleReport.sealed(KEY, service(authority))));
        }
    }

    private static LoopbackTimestampAuthority honest() throws Exception {
        return new LoopbackTimestampAuthority(
                LoopbackTimestampAuthority.Manner.HONEST, SampleReport.SEALED.plusSeconds(1), "SHA256withRSA");
    }

    private static TimestampService service(LoopbackTimestampAuthority authority) {
        return new TimestampService(authority.address(), Duration.ofSeconds(20));
    }

    /** ISO 19005-3 level B, as veraPDF 1.30 checks it. */
    @ParameterizedTest
    @MethodSource("files")
    void conformsToPdfA3b(byte[] pdf) throws Exception {
        try (PDFAParser parser =
                        Foundries.defaultInstance().createParser(new ByteArrayInputStream(pdf), PDFAFlavour.PDFA_3_B);
                PDFAValidator validator = Foundries.defaultInstance().createValidator(PDFAFlavour.PDFA_3_B, false)) {
            ValidationResult result = validator.validate(parser);
            assertThat(result.getTestAssertions().stream()
                            .map(assertion -> assertion.getRuleId().getClause() + ": " + assertion.getMessage()))
                    .isEmpty();
            assertThat(result.isCompliant()).isTrue();
            assertThat(result.getTotalAssertions()).isGreaterThan(100);
        }
    }

    @ParameterizedTest
    @MethodSource("files")
    void qpdfFindsNothingWrong(byte[] pdf, @TempDir Path folder) throws Exception {
        Path file = Files.write(Files.createTempFile(folder, "sealed", ".pdf"), pdf);
        OutsideTool.Answer answer = OutsideTool.QPDF.run(folder, "--check", file.toString());
        assertThat(answer.text()).contains("No syntax or stream encoding errors found");
        assertThat(answer.status()).isZero();
    }

    @Test
    void popplerFindsTheSignatureValidOverTheTotalDocument(@TempDir Path folder) throws Exception {
        Path file = Files.write(folder.resolve("pdfsig.pdf"), SampleReport.sealed(KEY));
        OutsideTool.Answer answer = OutsideTool.PDFSIG.run(folder, "-nocert", file.toString());
        assertThat(answer.text())
                .contains("Signature Validation: Signature is Valid.", "Total document signed", "ETSI.CAdES.detached");
        assertThat(answer.text()).contains(SampleReport.KITCHEN).doesNotContain("Signature #2");
    }

    /** ETSI EN 319 142-1: baseline B-B, judged by the EU's DSS 6.4. */
    @Test
    void dssSeesBaselineBCertifyingThatNothingMayChange() throws Exception {
        SignatureWrapper signature = onlySignature(sealedWithoutPadding(Optional.empty()));
        assertThat(signature.getSignatureFormat()).isEqualTo(SignatureLevel.PAdES_BASELINE_B);
        assertThat(signature.isSignatureIntact()).isTrue();
        assertThat(signature.isSignatureValid()).isTrue();
        assertThat(signature.isSigningCertificateReferencePresent()).isTrue();
        assertThat(signature.getDocMDPPermissions()).isEqualTo(CertificationPermission.NO_CHANGE_PERMITTED);
        assertThat(signature.getClaimedSigningTime().toInstant()).isEqualTo(SampleReport.SEALED);
        assertThat(signature.isBLevelTechnicallyValid()).isTrue();
    }

    @Test
    void dssSeesBaselineTWithATimestamp() throws Exception {
        try (LoopbackTimestampAuthority authority = honest()) {
            SignatureWrapper signature = onlySignature(sealedWithoutPadding(Optional.of(service(authority))));
            assertThat(signature.getSignatureFormat()).isEqualTo(SignatureLevel.PAdES_BASELINE_T);
            assertThat(signature.isSignatureValid()).isTrue();
            assertThat(signature.isTLevelTechnicallyValid()).isTrue();
            assertThat(signature.getTimestampList()).singleElement().satisfies(timestamp -> {
                assertThat(timestamp.isMessageImprintDataIntact()).isTrue();
                assertThat(timestamp.isSignatureValid()).isTrue();
                assertThat(timestamp.getProductionTime().toInstant()).isEqualTo(SampleReport.SEALED.plusSeconds(1));
            });
        }
    }

    private static SignatureWrapper onlySignature(byte[] pdf) {
        PDFDocumentValidator validator = new PDFDocumentValidator(new InMemoryDocument(pdf));
        validator.setCertificateVerifier(new CommonCertificateVerifier());
        DiagnosticData data = validator.validateDocument().getDiagnosticData();
        List<SignatureWrapper> signatures = data.getSignatures();
        assertThat(signatures).hasSize(1);
        return signatures.get(0);
    }

    /**
     * A sealed file whose CMS fills its place exactly. DSS 6.4 hands the place to Bouncy Castle padding and all, which
     * Bouncy Castle from 1.85 on refuses (its issue 2360); PDF asks for that padding (ISO 32000-1, table 252).
     */
    private static byte[] sealedWithoutPadding(Optional<TimestampSource> timestamps) throws Exception {
        int room = Tampering.cms(Seal.sign(SampleReport.forSealing(), KEY, SampleReport.SEALED, timestamps)).length;
        byte[] sealable = ArchivalPdf.writeForSealing(
                SampleReport.facts(), SampleReport.attachments(), SampleReport.pages(), room);
        for (int attempt = 0; attempt < 200; attempt++) {
            try {
                byte[] sealed = Seal.sign(sealable, KEY, SampleReport.SEALED, timestamps);
                if (Tampering.cms(sealed).length == room) {
                    return sealed;
                }
            } catch (IllegalStateException longerThisTime) {
                assertThat(longerThisTime).hasMessageContaining("a seal has room for " + room);
            }
        }
        throw new AssertionError("no signature of " + room + " bytes in 200 attempts");
    }

    @Test
    void theSealTouchesNothingButItsPlace() throws Exception {
        byte[] before = SampleReport.forSealing();
        byte[] kept = before.clone();
        byte[] after = Seal.sign(before, KEY, SampleReport.SEALED, Optional.empty());
        assertThat(before).isEqualTo(kept);
        assertThat(after).hasSameSizeAs(before);
        int differing = 0;
        for (int i = 0; i < after.length; i++) {
            differing += after[i] == before[i] ? 0 : 1;
        }
        assertThat(differing).isLessThan(4_000);
    }

    @Test
    void refusesWhatKeepsNoPlaceOrIsSealedAlready() {
        for (byte[] pdf :
                List.of(SampleReport.unsealed(), SampleReport.sealed(KEY), new byte[0], new byte[] {'%', 'P'})) {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> Seal.sign(pdf, KEY, SampleReport.SEALED, Optional.empty()));
        }
    }
}
