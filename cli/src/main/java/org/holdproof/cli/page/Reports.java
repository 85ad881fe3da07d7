package org.holdproof.cli.page;

import java.io.IOException;
import java.nio.file.Files;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.input.SourceFile;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.verdict.Assessment;
import org.holdproof.report.Recomputation;
import org.holdproof.report.Report;
import org.holdproof.report.recheck.RecheckReport;
import org.holdproof.report.recheck.RulesComparison;
import org.holdproof.report.seal.SigningKey;
import org.holdproof.report.seal.TimestampException;

/** Writes reports as the commands do, and works the figures of one out again. */
final class Reports {
    private Reports() {}

    static byte[] write(Judged judged, Optional<SigningKey> key, Instant now) throws IOException {
        Report.Cook cook = new Report.Cook(
                List.of(SourceFile.of(judged.said().logName(), Files.readAllBytes(judged.logFile()))),
                SourceFile.of(Cooks.RECORD_NAME, judged.said().recordBytes()),
                judged.library(),
                judged.said().log(),
                judged.assessment());
        try {
            return Report.write(cook, key, Optional.empty(), RuleLibrary.builtIn(), now);
        } catch (TimestampException unasked) {
            throw new IllegalStateException("no timestamp was asked for", unasked);
        }
    }

    /**
     * What rides in a report, judged again.
     *
     * @param again empty where something needed is missing or unreadable
     * @param differences what is missing or differs; empty where every figure comes out as printed
     * @param edition the tables it was judged by; empty where they cannot be read
     * @param published whether those are the very tables this program holds
     * @param byPublished the same record judged by the published tables, where those inside are others
     */
    record Again(
            Optional<Assessment> again,
            List<String> differences,
            String edition,
            boolean published,
            Optional<Assessment> byPublished) {}

    static Again again(RecheckReport report, RuleLibrary builtIn) {
        Recomputation figures = Report.recheck(report, builtIn).figures();
        return new Again(
                figures.again(),
                figures.differences(),
                figures.edition().orElse(""),
                figures.rules().map(RulesComparison::isPublished).orElse(false),
                figures.byPublished());
    }
}
