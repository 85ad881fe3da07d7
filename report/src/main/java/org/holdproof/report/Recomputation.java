package org.holdproof.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.Verification;
import org.holdproof.core.batch.BatchReader;
import org.holdproof.core.batch.LogSource;
import org.holdproof.core.input.SourceFile;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.verdict.Assessment;
import org.holdproof.core.verdict.AssessmentJson;
import org.holdproof.report.archive.Attachment;
import org.holdproof.report.recheck.RecheckReport;
import org.holdproof.report.recheck.RulesComparison;

/**
 * A report's figures, reckoned again from what rides inside it.
 *
 * @param again the assessment by the rules inside; empty where something needed is missing or unreadable
 * @param differences what is missing, or differs from the embedded figures; empty where everything agrees
 * @param edition which edition of the tables rides inside; empty where they cannot be read
 * @param rules how the rules inside compare with the published ones; empty where they cannot be read
 * @param byPublished the assessment by the published rules; empty where the rules inside are those, or the published
 *     ones have no profile of the record's authority
 */
public record Recomputation(
        Optional<Assessment> again,
        List<String> differences,
        Optional<String> edition,
        Optional<RulesComparison> rules,
        Optional<Assessment> byPublished) {
    public Recomputation {
        differences = List.copyOf(differences);
    }

    static Recomputation of(RecheckReport report, RuleLibrary published) {
        List<SourceFile> logs = report.attachments(Attachment.Role.LOG).stream()
                .map(Recomputation::file)
                .toList();
        Optional<Attachment> record = report.attachment(Attachment.Role.BATCH_RECORD);
        Optional<Attachment> figures = report.attachment(Attachment.Role.ASSESSMENT);
        Optional<Attachment> tables = report.attachment(Attachment.Role.TABLES);
        if (logs.isEmpty() || record.isEmpty() || figures.isEmpty() || tables.isEmpty()) {
            return failed("the log, the batch record, the figures or the tables do not ride inside it");
        }
        try {
            byte[] archive = tables.get().content();
            RuleLibrary library = RuleLibrary.fromArchive(archive);
            if (!Arrays.equals(library.archive(), archive)) {
                return failed("the archive of tables is not spelt as this program spells one: another program may read"
                        + " other tables in it");
            }
            SourceFile recordFile = file(record.get());
            List<SourceFile> named = named(logs, recordFile);
            Assessment again = Verification.of(named, recordFile, library).assessment();
            List<String> differences =
                    new ArrayList<>(AssessmentJson.differences(figures.get().content(), again));
            if (differences.isEmpty()
                    && !Arrays.equals(AssessmentJson.write(again), figures.get().content())) {
                differences.add("the embedded figures are not spelt as this program spells them, or were written by"
                        + " another version of it");
            }
            RulesComparison rules = RulesComparison.of(archive, published.archive());
            return new Recomputation(
                    Optional.of(again),
                    differences,
                    Optional.of(library.edition()),
                    Optional.of(rules),
                    rules.isPublished() ? Optional.empty() : judged(named, recordFile, published));
        } catch (UnreadableInputException unreadable) {
            return failed(String.valueOf(unreadable.getMessage()));
        }
    }

    static Optional<Assessment> judged(List<SourceFile> logs, SourceFile recordFile, RuleLibrary library) {
        try {
            return Optional.of(Verification.of(logs, recordFile, library).assessment());
        } catch (UnreadableInputException noSuchProfile) {
            return Optional.empty();
        }
    }

    /** The logs by the names the record calls them, in whose order they were attached. */
    private static List<SourceFile> named(List<SourceFile> logs, SourceFile recordFile)
            throws UnreadableInputException {
        List<LogSource> sources =
                BatchReader.parse(recordFile.name(), recordFile.bytes()).logs();
        List<SourceFile> named = new ArrayList<>();
        for (int i = 0; i < logs.size(); i++) {
            SourceFile log = logs.get(i);
            Optional<String> called = i < sources.size() ? sources.get(i).file() : Optional.empty();
            named.add(called.map(name -> SourceFile.of(name, log.bytes())).orElse(log));
        }
        return named;
    }

    private static SourceFile file(Attachment attached) {
        return SourceFile.of(attached.name(), attached.content());
    }

    private static Recomputation failed(String why) {
        return new Recomputation(Optional.empty(), List.of(why), Optional.empty(), Optional.empty(), Optional.empty());
    }
}
