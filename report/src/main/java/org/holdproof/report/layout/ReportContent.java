package org.holdproof.report.layout;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.verdict.Assessment;
import org.holdproof.report.archive.AttachedFile;

/**
 * Everything a report prints.
 *
 * @param log the log as read, before the instrument's known error is added
 * @param attachments the files that ride inside, in the order they are listed
 * @param seal who signs it; empty where nobody does
 * @param siteLimits where it was not judged by the published tables alone
 * @param writtenAt when it was written
 */
public record ReportContent(
        Assessment assessment,
        ProbeLog log,
        List<AttachedFile> attachments,
        Optional<SealFacts> seal,
        Optional<SiteLimits> siteLimits,
        Instant writtenAt) {
    /** A cook judged by the published tables. */
    public ReportContent(
            Assessment assessment,
            ProbeLog log,
            List<AttachedFile> attachments,
            Optional<SealFacts> seal,
            Instant writtenAt) {
        this(assessment, log, attachments, seal, Optional.empty(), writtenAt);
    }

    /** @throws IllegalArgumentException if the assessment has no check: its verdict would rest on nothing */
    public ReportContent {
        if (assessment.checks().isEmpty()) {
            throw new IllegalArgumentException("an assessment without a check proves nothing and is not reported");
        }
        attachments = List.copyOf(attachments);
    }

    /**
     * A short name for this very report, printed on every page: the first eight hexadecimal figures of the SHA-256 over
     * the batch's id, the time of writing and the attachments' digests.
     */
    public String shortId() {
        StringBuilder named =
                new StringBuilder(assessment.batch().batch()).append('\n').append(writtenAt);
        attachments.forEach(file -> named.append('\n').append(file.sha256()));
        String hex = HexFormat.of().formatHex(sha256(named.toString())).toUpperCase(Locale.ROOT);
        return hex.substring(0, 4) + "-" + hex.substring(4, 8);
    }

    private static byte[] sha256(String text) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
        } catch (NoSuchAlgorithmException absent) {
            throw new IllegalStateException("every Java runtime has SHA-256", absent);
        }
    }
}
