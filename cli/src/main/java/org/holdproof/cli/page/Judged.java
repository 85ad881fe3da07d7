package org.holdproof.cli.page;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.input.SourceFile;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.verdict.Assessment;
import org.holdproof.core.verdict.AssessmentJson;

/**
 * A cook, judged.
 *
 * @param logFiles where the logs' bytes lie, in the order of the record
 */
record Judged(Cooks.Said said, Assessment assessment, RuleLibrary library, List<Path> logFiles) {
    /** The figures exactly as {@code verify --json} writes them. */
    Reply figures() {
        return Reply.download(Reply.JSON, said.record().batch() + ".json", AssessmentJson.write(assessment));
    }

    /** The logs as handed in, in the order of the record. */
    List<SourceFile> logs() throws IOException {
        List<SourceFile> logs = new ArrayList<>();
        for (int i = 0; i < logFiles.size(); i++) {
            logs.add(SourceFile.of(said.files().get(i).name(), Files.readAllBytes(logFiles.get(i))));
        }
        return logs;
    }

    /** The report without a seal, to be looked at. */
    Reply unsealedReport() throws IOException {
        return Reply.bytes("application/pdf", Reports.write(this, Optional.empty(), Instant.now()));
    }
}
