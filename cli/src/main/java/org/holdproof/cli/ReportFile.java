package org.holdproof.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.holdproof.core.Verification;
import org.holdproof.core.input.SourceFile;
import org.holdproof.core.verdict.Assessment;
import org.holdproof.core.verdict.AssessmentJson;
import org.holdproof.report.ReportContent;
import org.holdproof.report.SealFacts;
import org.holdproof.report.font.ReportFonts;
import org.holdproof.report.layout.ReportLayout;
import org.holdproof.report.seal.ArchivalPdf;
import org.holdproof.report.seal.Attachment;
import org.holdproof.report.seal.DocumentFacts;
import org.holdproof.report.seal.Seal;
import org.holdproof.report.seal.SigningKey;
import org.holdproof.report.seal.TimestampException;
import org.holdproof.report.seal.TimestampService;

/** Puts a verification's report together: pages, attachments, seal. */
final class ReportFile {
    private static final int LONGEST_NAME = 120;

    private ReportFile() {}

    /**
     * The report's bytes, sealed where there is a key.
     *
     * @param now the time it claims to be written and sealed
     * @throws TimestampException if a timestamp was asked for and none was to be had
     */
    static byte[] write(
            Verification verification, Optional<SigningKey> key, Optional<TimestampService> timestamps, Instant now)
            throws IOException, TimestampException {
        Instant written = now.truncatedTo(ChronoUnit.SECONDS);
        Assessment assessment = verification.assessment();
        Optional<SealFacts> seal = key.map(signer ->
                new SealFacts(signer.signer(), signer.fingerprint().hex(), timestamps.map(service -> service.address()
                        .getHost())));
        DocumentFacts facts = new DocumentFacts(
                "Batch " + assessment.batch().batch() + ": "
                        + assessment.verdict().words(),
                assessment.batch().kitchen().name(),
                "en",
                written);
        ReportFonts fonts = ReportFonts.load();
        ArchivalPdf.Pages pages = (document, writer, attached) -> ReportLayout.draw(
                document, writer, fonts, new ReportContent(assessment, verification.log(), attached, seal, written));
        List<Attachment> attachments = attachments(verification);
        if (key.isEmpty()) {
            return ArchivalPdf.write(facts, attachments, pages);
        }
        byte[] unsealed = ArchivalPdf.writeForSealing(facts, attachments, pages);
        return Seal.sign(unsealed, key.get(), written, timestamps.map(service -> service));
    }

    private static List<Attachment> attachments(Verification verification) throws IOException {
        Set<String> taken = new HashSet<>(Set.of("assessment.json", "tables.zip", "SHA256SUMS"));
        List<Attachment> attachments = new ArrayList<>();
        for (SourceFile log : verification.logFiles()) {
            String plain = attachments.isEmpty() ? "log.csv" : "log-" + (attachments.size() + 1) + ".csv";
            attachments.add(
                    new Attachment(Attachment.Role.LOG, freeName(log.name(), plain, taken), "text/csv", log.bytes()));
        }
        attachments.add(new Attachment(
                Attachment.Role.BATCH_RECORD,
                freeName(verification.recordFile().name(), "batch-record.json", taken),
                "application/json",
                verification.recordFile().bytes()));
        attachments.add(new Attachment(
                Attachment.Role.ASSESSMENT,
                "assessment.json",
                "application/json",
                AssessmentJson.write(verification.assessment())));
        attachments.add(new Attachment(
                Attachment.Role.TABLES,
                "tables.zip",
                "application/zip",
                verification.library().archive()));
        return attachments;
    }

    /** The file's own name where it can be an attachment's, otherwise a plain one. */
    private static String freeName(String own, String plain, Set<String> taken) {
        boolean fits = own.length() <= LONGEST_NAME
                && own.matches("[\\p{L}\\p{N}_(][\\p{L}\\p{N} ._()+,@=-]*")
                && StandardCharsets.UTF_16.newEncoder().canEncode(own)
                && taken.add(own);
        return fits ? own : plain;
    }
}
