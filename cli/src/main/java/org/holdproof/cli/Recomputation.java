package org.holdproof.cli;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.assess.Assessor;
import org.holdproof.core.batch.BatchReader;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.course.ColumnMissingException;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.log.reading.LogReader;
import org.holdproof.core.rules.AuthorityProfile;
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
        Optional<Attachment> log = report.attachment(Attachment.Role.LOG);
        Optional<Attachment> record = report.attachment(Attachment.Role.BATCH_RECORD);
        Optional<Attachment> figures = report.attachment(Attachment.Role.ASSESSMENT);
        Optional<Attachment> tables = report.attachment(Attachment.Role.TABLES);
        if (log.isEmpty() || record.isEmpty() || figures.isEmpty() || tables.isEmpty()) {
            return failed("the log, the batch record, the figures or the tables do not ride inside it");
        }
        try {
            RuleLibrary library = RuleLibrary.fromArchive(tables.get().content());
            BatchRecord batch =
                    BatchReader.parse(record.get().name(), record.get().content());
            Optional<AuthorityProfile> authority = library.profile(batch.authority());
            if (authority.isEmpty()) {
                return failed("the embedded tables have no authority profile '" + batch.authority() + "'");
            }
            Assessment again = Assessor.assess(read(log.get(), batch), batch, authority.get(), library);
            return new Recomputation(
                    Optional.of(again), AssessmentJson.differences(figures.get().content(), again));
        } catch (UnreadableInputException | ColumnMissingException unreadable) {
            return failed(String.valueOf(unreadable.getMessage()));
        }
    }

    private static Recomputation failed(String why) {
        return new Recomputation(Optional.empty(), List.of(why));
    }

    private static ProbeLog read(Attachment log, BatchRecord batch) throws IOException, UnreadableInputException {
        return LogReader.read(log.name(), new ByteArrayInputStream(log.content()), batch.log());
    }
}
