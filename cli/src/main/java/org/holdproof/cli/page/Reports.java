package org.holdproof.cli.page;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.assess.Assessor;
import org.holdproof.core.batch.BatchReader;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.course.ColumnMissingException;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.log.reading.LogReader;
import org.holdproof.core.rules.AuthorityProfile;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.verdict.Assessment;
import org.holdproof.core.verdict.AssessmentJson;
import org.holdproof.report.ReportContent;
import org.holdproof.report.SealFacts;
import org.holdproof.report.font.ReportFonts;
import org.holdproof.report.layout.ReportLayout;
import org.holdproof.report.seal.ArchivalPdf;
import org.holdproof.report.seal.Attachment;
import org.holdproof.report.seal.DocumentFacts;
import org.holdproof.report.seal.RecheckReport;
import org.holdproof.report.seal.Seal;
import org.holdproof.report.seal.SigningKey;
import org.holdproof.report.seal.TimestampException;

/** Writes reports as the commands do, and works the figures of one out again. */
final class Reports {
    private static final int LONGEST_NAME = 120;

    private Reports() {}

    static byte[] write(Judged judged, Optional<SigningKey> key, Instant now) throws IOException {
        Instant written = now.truncatedTo(ChronoUnit.SECONDS);
        Assessment assessment = judged.assessment();
        DocumentFacts facts = new DocumentFacts(
                "Batch " + assessment.batch().batch() + ": "
                        + assessment.verdict().words(),
                assessment.batch().kitchen().name(),
                "en",
                written);
        Optional<SealFacts> seal = key.map(
                signer -> new SealFacts(signer.signer(), signer.fingerprint().hex(), Optional.empty()));
        ReportFonts fonts = ReportFonts.load();
        ArchivalPdf.Pages pages = (document, writer, attached) -> ReportLayout.draw(
                document,
                writer,
                fonts,
                new ReportContent(assessment, judged.said().log(), attached, seal, written));
        List<Attachment> attachments = attachments(judged);
        if (key.isEmpty()) {
            return ArchivalPdf.write(facts, attachments, pages);
        }
        try {
            return Seal.sign(
                    ArchivalPdf.writeForSealing(facts, attachments, pages), key.get(), written, Optional.empty());
        } catch (TimestampException unasked) {
            throw new IllegalStateException("no timestamp was asked for", unasked);
        }
    }

    private static List<Attachment> attachments(Judged judged) throws IOException {
        List<Attachment> attachments = new ArrayList<>();
        attachments.add(new Attachment(
                Attachment.Role.LOG,
                freeName(judged.said().logName(), "log.csv"),
                "text/csv",
                Files.readAllBytes(judged.logFile())));
        attachments.add(new Attachment(
                Attachment.Role.BATCH_RECORD,
                Cooks.RECORD_NAME,
                "application/json",
                judged.said().recordBytes()));
        attachments.add(new Attachment(
                Attachment.Role.ASSESSMENT,
                "assessment.json",
                "application/json",
                AssessmentJson.write(judged.assessment())));
        attachments.add(new Attachment(
                Attachment.Role.TABLES,
                "tables.zip",
                "application/zip",
                judged.library().archive()));
        return attachments;
    }

    /** The log's own name where it can be an attachment's, otherwise a plain one. */
    private static String freeName(String own, String plain) {
        boolean fits = own.length() <= LONGEST_NAME
                && own.matches("[\\p{L}\\p{N}_(][\\p{L}\\p{N} ._()+,@=-]*")
                && StandardCharsets.UTF_16.newEncoder().canEncode(own)
                && !List.of("assessment.json", "tables.zip", "SHA256SUMS", Cooks.RECORD_NAME)
                        .contains(own);
        return fits ? own : plain;
    }

    /**
     * What rides in a report, judged again.
     *
     * @param again empty where something needed is missing or unreadable
     * @param differences what is missing or differs; empty where every figure comes out as printed
     * @param edition the tables it was judged by; empty where they cannot be read
     * @param published whether those are the very tables this program holds
     * @param byPublished the same record judged by the published tables, where those inside are others
     */
    record Again(
            Optional<Assessment> again,
            List<String> differences,
            String edition,
            boolean published,
            Optional<Assessment> byPublished) {}

    static Again again(RecheckReport report, RuleLibrary builtIn) throws IOException {
        Optional<Attachment> log = report.attachment(Attachment.Role.LOG);
        Optional<Attachment> record = report.attachment(Attachment.Role.BATCH_RECORD);
        Optional<Attachment> figures = report.attachment(Attachment.Role.ASSESSMENT);
        Optional<Attachment> tables = report.attachment(Attachment.Role.TABLES);
        if (log.isEmpty() || record.isEmpty() || figures.isEmpty() || tables.isEmpty()) {
            return failed("The log, the record, the figures or the rules do not ride inside it.");
        }
        try {
            RuleLibrary inside = RuleLibrary.fromArchive(tables.get().content());
            BatchRecord batch =
                    BatchReader.parse(record.get().name(), record.get().content());
            Optional<Assessment> again = assess(log.get(), batch, inside);
            if (again.isEmpty()) {
                return failed("The rules inside it have no authority '" + batch.authority() + "'.");
            }
            boolean published = inside.edition().equals(builtIn.edition());
            return new Again(
                    again,
                    AssessmentJson.differences(figures.get().content(), again.get()),
                    inside.edition(),
                    published,
                    published ? Optional.empty() : assess(log.get(), batch, builtIn));
        } catch (UnreadableInputException | ColumnMissingException unreadable) {
            return failed(String.valueOf(unreadable.getMessage()));
        }
    }

    private static Optional<Assessment> assess(Attachment log, BatchRecord batch, RuleLibrary library)
            throws IOException, UnreadableInputException, ColumnMissingException {
        Optional<AuthorityProfile> authority = library.profile(batch.authority());
        if (authority.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(Assessor.assess(
                LogReader.read(log.name(), new ByteArrayInputStream(log.content()), batch.log()),
                batch,
                authority.get(),
                library));
    }

    private static Again failed(String why) {
        return new Again(Optional.empty(), List.of(why), "", false, Optional.empty());
    }
}
