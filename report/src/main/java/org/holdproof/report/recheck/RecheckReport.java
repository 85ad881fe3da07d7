package org.holdproof.report.recheck;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.holdproof.report.archive.Attachment;
import org.holdproof.report.seal.CertificateFacts;
import org.holdproof.report.seal.Timestamp;

/**
 * What a look at a report's seal and attachments found.
 *
 * @param state in one word
 * @param findings everything wrong, in a person's words; empty exactly where the seal is intact
 * @param signer who sealed it, where its certificate could be read and its signature holds
 * @param claimedTime when the signer says it was sealed: the signer's own clock
 * @param timestamp when somebody else says it was, where there is a sound timestamp
 * @param attachments what rides inside, one file a role but for the logs; present even where something is wrong, so far as it could be read
 */
public record RecheckReport(
        State state,
        List<Finding> findings,
        Optional<CertificateFacts> signer,
        Optional<Instant> claimedTime,
        Optional<Timestamp> timestamp,
        List<Attachment> attachments) {

    public RecheckReport {
        findings = List.copyOf(findings);
        attachments = List.copyOf(attachments);
        if ((state == State.INTACT) != findings.isEmpty()) {
            throw new IllegalArgumentException("a seal is intact exactly where nothing was found wrong");
        }
    }

    /** A report's seal in one word. */
    public enum State {
        /** Sealed, and nothing changed since. */
        INTACT,
        /** Sealed once, but something is wrong: nothing in it proves anything. */
        BROKEN,
        /** Nobody sealed it: nothing shows that it is as it was written. */
        UNSEALED
    }

    /** What can be wrong. */
    public enum Kind {
        /** Not built as a report is, so it was rewritten, damaged, or never was one. */
        NOT_AS_WRITTEN,
        /** Bytes stand after the end of the sealed file: a later revision, or anything else. */
        ADDED_AFTER_SEALING,
        /** No seal. */
        NO_SEAL,
        /** More than one signature or signature field. */
        SEVERAL_SEALS,
        /** The seal leaves out bytes that it should cover. */
        NOT_COVERED,
        /** Bytes differ from those sealed. */
        CHANGED,
        /** The signature itself does not hold, or was touched where it does not cover itself. */
        SIGNATURE_UNSOUND,
        /** The signature does not say that no change is permitted. */
        NOT_CERTIFIED,
        /** The certificate was not valid when the file was sealed, or the times contradict each other. */
        TIME_UNSOUND,
        /** Sealed by somebody else than expected. */
        OTHER_SIGNER,
        /** An attached file is missing, unlisted, or differs from its digest. */
        ATTACHMENT_UNSOUND
    }

    /** One thing that is wrong. */
    public record Finding(Kind kind, String detail) {
        @Override
        public String toString() {
            return detail;
        }
    }

    /** Whether it is sealed and nothing was changed since. */
    public boolean intact() {
        return state == State.INTACT;
    }

    /** The attached file of a role. */
    public Optional<Attachment> attachment(Attachment.Role role) {
        return attachments(role).stream().findFirst();
    }

    /** All files that ride inside in this role, in their order. */
    public List<Attachment> attachments(Attachment.Role role) {
        return attachments.stream()
                .filter(attachment -> attachment.role() == role)
                .toList();
    }
}
