package org.holdproof.cli.page;

import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.Verification;
import org.holdproof.core.batch.BatchReader;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.course.CookLogs;
import org.holdproof.core.input.SourceFile;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.report.Report;
import org.holdproof.report.archive.Attachment;
import org.holdproof.report.recheck.RecheckReport;
import org.holdproof.report.seal.SigningKey;
import org.holdproof.report.seal.TimestampException;

/** Writes reports as the commands do, and opens the logs of one. */
final class Reports {
    private Reports() {}

    static byte[] write(Judged judged, Optional<SigningKey> key, Instant now) throws IOException {
        Report.Cook cook = new Report.Cook(
                judged.logs(),
                SourceFile.of(Cooks.RECORD_NAME, judged.said().recordBytes()),
                judged.library(),
                judged.said().logs().joined(),
                judged.assessment());
        try {
            return Report.write(cook, key, Optional.empty(), RuleLibrary.builtIn(), now);
        } catch (TimestampException unasked) {
            throw new IllegalStateException("no timestamp was asked for", unasked);
        }
    }

    /** The logs that ride in a report whose figures came out again, by the names its record calls them. */
    static CookLogs logs(RecheckReport report) throws UnreadableInputException {
        Attachment record = report.attachment(Attachment.Role.BATCH_RECORD).orElseThrow();
        BatchRecord batch = BatchReader.parse(record.name(), record.content());
        List<SourceFile> logs = new ArrayList<>();
        for (Attachment log : report.attachments(Attachment.Role.LOG)) {
            String called = batch.logs().get(logs.size()).file().orElse(log.name());
            logs.add(SourceFile.of(called, log.content()));
        }
        return Verification.read(logs, record.name(), batch);
    }
}
