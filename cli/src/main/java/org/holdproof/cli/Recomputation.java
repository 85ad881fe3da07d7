package org.holdproof.cli;

import java.io.IOException;
import java.util.ArrayList;
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
import org.holdproof.report.seal.Attachment;
import org.holdproof.report.seal.RecheckReport;

/**
 * A report's figures, reckoned again from what rides inside it.
 *
 * @param again the assessment; empty where something needed is missing or unreadable
 * @param differences what is missing, or differs from the embedded figures; empty where everything agrees
 */
record Recomputation(Optional<Assessment> again, List<String> differences) {
    Recomputation {
        differences = List.copyOf(differences);
    }

    static Recomputation of(RecheckReport report) throws IOException {
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
            RuleLibrary library = RuleLibrary.fromArchive(tables.get().content());
            SourceFile recordFile = file(record.get());
            Assessment again = Verification.of(named(logs, recordFile), recordFile, library)
                    .assessment();
            return new Recomputation(
                    Optional.of(again), AssessmentJson.differences(figures.get().content(), again));
        } catch (UnreadableInputException unreadable) {
            return failed(String.valueOf(unreadable.getMessage()));
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
        return new Recomputation(Optional.empty(), List.of(why));
    }
}
