package org.holdproof.cli.page;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.verdict.Assessment;
import org.holdproof.core.verdict.AssessmentJson;

/**
 * A cook, judged.
 *
 * @param logFile where the log's bytes lie
 */
record Judged(Cooks.Said said, Assessment assessment, RuleLibrary library, Path logFile) {
    /** The figures exactly as {@code verify --json} writes them. */
    Reply figures() {
        return Reply.download(Reply.JSON, said.record().batch() + ".json", AssessmentJson.write(assessment));
    }

    /** The report without a seal, to be looked at. */
    Reply unsealedReport() throws IOException {
        return Reply.bytes("application/pdf", Reports.write(this, Optional.empty(), Instant.now()));
    }
}
