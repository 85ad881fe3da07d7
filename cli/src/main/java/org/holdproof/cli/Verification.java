package org.holdproof.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.stream.Collectors;
import org.holdproof.cli.terminal.Progress;
import org.holdproof.core.assess.Assessor;
import org.holdproof.core.course.ColumnMissingException;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.log.reading.LogReader;
import org.holdproof.core.rules.AuthorityProfile;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.verdict.Assessment;

/** A log and its batch record, read and judged. */
record Verification(Path logFile, BatchFile batch, RuleLibrary library, ProbeLog log, Assessment assessment) {

    static Verification of(Path logFile, BatchFile batch, RuleLibrary library, Progress progress)
            throws Refusal, IOException, UnreadableInputException, ColumnMissingException {
        AuthorityProfile authority = authority(batch, library);
        InputFile.checkReadable(logFile);
        progress.now("reading " + InputFile.name(logFile));
        ProbeLog log = LogReader.read(logFile, batch.record().log());
        progress.now("judging " + log.rows() + " rows");
        Assessment assessment = Assessor.assess(log, batch.record(), authority, library);
        return new Verification(logFile, batch, library, log, assessment);
    }

    static AuthorityProfile authority(BatchFile batch, RuleLibrary library) throws Refusal {
        String id = batch.record().authority();
        Optional<AuthorityProfile> profile = library.profile(id);
        if (profile.isEmpty()) {
            String known = library.profiles().stream().map(AuthorityProfile::id).collect(Collectors.joining(", "));
            throw Refusal.unreadable(
                    batch.name() + ", at /authority: found '" + id + "'; expected one of " + known + ".");
        }
        return profile.get();
    }
}
