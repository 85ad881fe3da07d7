package org.holdproof.cli.page;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.holdproof.core.Verification;
import org.holdproof.core.assess.Assessor;
import org.holdproof.core.batch.BatchReader;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.course.ColumnMissingException;
import org.holdproof.core.course.CookLogs;
import org.holdproof.core.input.SourceFile;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.rules.AuthorityProfile;
import org.holdproof.core.rules.RuleLibrary;

/** Puts logs and what was said of them together, and has them judged. */
final class Cooks {
    static final String RECORD_NAME = "batch-record.json";

    private final Logs logs;
    private final RuleLibrary library;

    Cooks(Logs logs, RuleLibrary library) {
        this.logs = logs;
        this.library = library;
    }

    /**
     * A log handed in.
     *
     * @param id what it is found by
     * @param name its file name
     */
    record LogFile(String id, String name) {}

    /**
     * Everything a judgement is made of.
     *
     * @param files the logs, in the order of the record
     */
    @SuppressWarnings("ArrayRecordComponent") // never compared; a copy of a large file helps nobody
    record Said(
            List<LogFile> files, CookLogs logs, byte[] recordBytes, BatchRecord record, AuthorityProfile authority) {}

    /** The logs and the record asked about, read. */
    Said said(Asked asked) throws Fault, IOException {
        List<LogFile> given = new ArrayList<>();
        for (Asked part : asked.parts("logs")) {
            given.add(new LogFile(part.text("file"), part.text("name")));
        }
        byte[] bytes = asked.text("record").getBytes(StandardCharsets.UTF_8);
        BatchRecord record = record(bytes);
        try {
            List<LogFile> files = inOrder(given, record);
            List<ProbeLog> read = new ArrayList<>();
            for (int i = 0; i < files.size(); i++) {
                LogFile file = files.get(i);
                read.add(logs.read(file.id(), file.name(), record.logs().get(i).settings()));
            }
            return new Said(
                    files,
                    CookLogs.of(record, read),
                    bytes,
                    record,
                    Verification.authority(RECORD_NAME, record, library));
        } catch (UnreadableInputException unreadable) {
            throw Unreadable.fault("log", unreadable);
        } catch (ColumnMissingException missing) {
            throw Fault.unreadable(String.valueOf(missing.getMessage()));
        }
    }

    /** The library puts files into order by their names. */
    private static List<LogFile> inOrder(List<LogFile> given, BatchRecord record) throws UnreadableInputException {
        List<SourceFile> names = given.stream()
                .map(file -> SourceFile.of(file.name(), new byte[0]))
                .toList();
        List<LogFile> ordered = new ArrayList<>();
        for (SourceFile name : Verification.inOrder(names, RECORD_NAME, record)) {
            ordered.add(given.get(names.indexOf(name)));
        }
        return ordered;
    }

    Judged judged(Asked asked) throws Fault, IOException {
        Said said = said(asked);
        List<Path> files = new ArrayList<>();
        for (LogFile file : said.files()) {
            files.add(logs.file(file.id()));
        }
        try {
            return new Judged(said, Assessor.assess(said.logs(), said.authority(), library), library, files);
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
}
