package org.holdproof.cli.page;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Collectors;
import org.holdproof.core.assess.Assessor;
import org.holdproof.core.batch.BatchReader;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.course.ColumnMissingException;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.rules.AuthorityProfile;
import org.holdproof.core.rules.RuleLibrary;

/** Puts a log and what was said of it together, and has them judged. */
final class Cooks {
    static final String RECORD_NAME = "batch-record.json";

    private final Logs logs;
    private final RuleLibrary library;

    Cooks(Logs logs, RuleLibrary library) {
        this.logs = logs;
        this.library = library;
    }

    /** Everything a judgement is made of. */
    @SuppressWarnings("ArrayRecordComponent") // never compared; a copy of a large file helps nobody
    record Said(
            String file,
            String logName,
            ProbeLog log,
            byte[] recordBytes,
            BatchRecord record,
            AuthorityProfile authority) {}

    /** The log and the record asked about, read. */
    Said said(Asked asked) throws Fault, IOException {
        List<Asked> parts = asked.parts("logs");
        if (parts.size() != 1) {
            throw Fault.badRequest("One log is expected; " + parts.size() + " are given.");
        }
        byte[] bytes = asked.text("record").getBytes(StandardCharsets.UTF_8);
        BatchRecord record = record(bytes);
        String file = parts.get(0).text("file");
        String name = parts.get(0).text("name");
        try {
            return new Said(file, name, logs.read(file, name, record.log()), bytes, record, authority(record));
        } catch (UnreadableInputException unreadable) {
            throw Unreadable.fault("log", unreadable);
        }
    }

    Judged judged(Asked asked) throws Fault, IOException {
        Said said = said(asked);
        try {
            return new Judged(
                    said,
                    Assessor.assess(said.log(), said.record(), said.authority(), library),
                    library,
                    logs.file(said.file()));
        } catch (ColumnMissingException missing) {
            throw Fault.unreadable(String.valueOf(missing.getMessage()));
        }
    }

    static BatchRecord record(byte[] bytes) throws Fault {
        try {
            return BatchReader.parse("what you said", bytes);
        } catch (UnreadableInputException unreadable) {
            throw Unreadable.fault("record", unreadable);
        }
    }

    AuthorityProfile authority(BatchRecord record) throws Fault {
        return library.profile(record.authority())
                .orElseThrow(() -> Fault.unreadable("There are no rules of the name '" + record.authority()
                        + "'; there are "
                        + library.profiles().stream().map(AuthorityProfile::id).collect(Collectors.joining(", "))
                        + "."));
    }
}
