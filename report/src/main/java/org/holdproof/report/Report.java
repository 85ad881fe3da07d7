package org.holdproof.report;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.holdproof.core.Verification;
import org.holdproof.core.input.SourceFile;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.verdict.Assessment;
import org.holdproof.core.verdict.AssessmentJson;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.wording.Printable;
import org.holdproof.report.archive.ArchivalPdf;
import org.holdproof.report.archive.Attachment;
import org.holdproof.report.archive.DocumentFacts;
import org.holdproof.report.font.ReportFonts;
import org.holdproof.report.layout.ReportContent;
import org.holdproof.report.layout.ReportLayout;
import org.holdproof.report.layout.SealFacts;
import org.holdproof.report.layout.SiteLimits;
import org.holdproof.report.recheck.Recheck;
import org.holdproof.report.recheck.RecheckReport;
import org.holdproof.report.recheck.RulesComparison;
import org.holdproof.report.seal.Fingerprint;
import org.holdproof.report.seal.PlatformSignatureCheck;
import org.holdproof.report.seal.Seal;
import org.holdproof.report.seal.SigningKey;
import org.holdproof.report.seal.TimestampException;
import org.holdproof.report.seal.TimestampService;

/** A cook's report: a PDF that carries its log, its record, its rules and its figures, and can be checked again. */
public final class Report {
    private static final int LONGEST_NAME = 120;

    private Report() {}

    /**
     * A cook as it is reported.
     *
     * @param logs the very files that were judged
     * @param record the batch record's file
     * @param library the rules it was judged by
     * @param log all probes as read
     */
    public record Cook(
            List<SourceFile> logs, SourceFile record, RuleLibrary library, ProbeLog log, Assessment assessment) {
        public Cook {
            logs = List.copyOf(logs);
        }

        private static Cook of(Verification verification) {
            return new Cook(
                    verification.logFiles(),
                    verification.recordFile(),
                    verification.library(),
                    verification.log(),
                    verification.assessment());
        }
    }

    /**
     * The report of a cook, sealed.
     *
     * @param now the time it claims to be written and sealed; to the second
     * @throws IOException if a font cannot be read
     */
    public static byte[] write(Verification verification, SigningKey key, Instant now) throws IOException {
        try {
            return write(verification, Optional.of(key), Optional.empty(), RuleLibrary.builtIn(), now);
        } catch (TimestampException unasked) {
            throw new IllegalStateException("no timestamp was asked for", unasked);
        }
    }

    /**
     * The report of a cook.
     *
     * @param key seals it; a report without one says that it proves nothing to others
     * @param timestamps witnesses the seal's time
     * @param published the published rules: where those it was judged by differ, the report says so first and which
     * @param now the time it claims to be written and sealed; to the second
     * @throws TimestampException if a timestamp was asked for and none was to be had
     * @throws IOException if a font cannot be read
     */
    public static byte[] write(
            Verification verification,
            Optional<SigningKey> key,
            Optional<TimestampService> timestamps,
            RuleLibrary published,
            Instant now)
            throws IOException, TimestampException {
        return write(Cook.of(verification), key, timestamps, published, now);
    }

    /** The same of a cook judged in another way than by {@link Verification}. */
    public static byte[] write(
            Cook cook,
            Optional<SigningKey> key,
            Optional<TimestampService> timestamps,
            RuleLibrary published,
            Instant now)
            throws IOException, TimestampException {
        Assessment assessment = cook.assessment();
        Instant written = now.truncatedTo(ChronoUnit.SECONDS);
        Optional<SealFacts> seal = key.map(signer ->
                new SealFacts(signer.signer(), signer.fingerprint().hex(), timestamps.map(service -> service.address()
                        .getHost())));
        DocumentFacts facts = new DocumentFacts(
                Printable.line("Batch " + assessment.batch().batch() + ": "
                        + assessment.verdict().words()),
                Printable.line(assessment.batch().kitchen().name()),
                "en",
                true,
                written);
        Optional<SiteLimits> siteLimits = siteLimits(cook, published);
        ReportFonts fonts = ReportFonts.load();
        ArchivalPdf.Pages pages = (document, writer, structure, attached) -> ReportLayout.draw(
                document,
                writer,
                structure,
                fonts,
                new ReportContent(assessment, cook.log(), attached, seal, siteLimits, written));
        List<Attachment> attachments = attachments(cook);
        if (key.isEmpty()) {
            return ArchivalPdf.write(facts, attachments, pages);
        }
        byte[] unsealed = ArchivalPdf.writeForSealing(facts, attachments, pages);
        return Seal.sign(unsealed, key.get(), written, timestamps.map(service -> service));
    }

    private static Optional<SiteLimits> siteLimits(Cook cook, RuleLibrary published) {
        if (cook.library() == published) {
            return Optional.empty();
        }
        RulesComparison rules = RulesComparison.of(cook.library().archive(), published.archive());
        if (rules.isPublished()) {
            return Optional.empty();
        }
        Optional<Assessment> byPublished = Recomputation.judged(cook.logs(), cook.record(), published);
        Map<String, String> replaced = new HashMap<>();
        for (Check check : cook.assessment().checks()) {
            String rule = byPublished
                    .flatMap(judged -> judged.check(check.id()))
                    .map(Check::rule)
                    .orElse("no such limit");
            if (!rule.equals(check.rule())) {
                replaced.put(check.id(), rule);
            }
        }
        return Optional.of(new SiteLimits(
                rules.differences().stream()
                        .map(RulesComparison.Difference::toString)
                        .toList(),
                replaced,
                byPublished.map(Assessment::verdict)));
    }

    /**
     * Checks a report again: its seal, every figure, and the rules it was judged by.
     *
     * @param published the rules this program publishes, to hold those inside against
     * @param expected the certificate that should have sealed it, where one is expected
     */
    public static Rechecked recheck(byte[] pdf, RuleLibrary published, Optional<Fingerprint> expected) {
        return recheck(Recheck.of(pdf, expected, new PlatformSignatureCheck()), published);
    }

    /** The same of a report whose seal has been looked at. */
    public static Rechecked recheck(RecheckReport seal, RuleLibrary published) {
        Recomputation figures = Recomputation.of(seal, published);
        return new Rechecked(Rechecked.outcome(seal, figures), seal, figures);
    }

    private static String mimeType(SourceFile log) {
        String name = log.name().toLowerCase(Locale.ROOT);
        if (name.endsWith(".xlsx")) {
            return "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
        }
        return name.endsWith(".ods") ? "application/vnd.oasis.opendocument.spreadsheet" : "text/csv";
    }

    private static List<Attachment> attachments(Cook cook) {
        Set<String> taken = new HashSet<>(Set.of("assessment.json", "tables.zip", "SHA256SUMS"));
        List<Attachment> attachments = new ArrayList<>();
        int number = 0;
        for (SourceFile log : cook.logs()) {
            number++;
            String plain = cook.logs().size() == 1 ? "log.csv" : "log-" + number + ".csv";
            attachments.add(new Attachment(
                    Attachment.Role.LOG, freeName(log.name(), plain, taken), mimeType(log), log.bytes()));
        }
        attachments.add(new Attachment(
                Attachment.Role.BATCH_RECORD,
                freeName(cook.record().name(), "batch-record.json", taken),
                "application/json",
                cook.record().bytes()));
        attachments.add(new Attachment(
                Attachment.Role.ASSESSMENT,
                "assessment.json",
                "application/json",
                AssessmentJson.write(cook.assessment())));
        attachments.add(new Attachment(
                Attachment.Role.TABLES,
                "tables.zip",
                "application/zip",
                cook.library().archive()));
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
