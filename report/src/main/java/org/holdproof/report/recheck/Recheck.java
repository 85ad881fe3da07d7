package org.holdproof.report.recheck;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import org.holdproof.report.archive.Attachment;
import org.holdproof.report.pdf.MalformedPdfException;
import org.holdproof.report.pdf.PdfInstant;
import org.holdproof.report.pdf.PdfObjects;
import org.holdproof.report.pdf.PdfValue;
import org.holdproof.report.recheck.RecheckReport.Finding;
import org.holdproof.report.recheck.RecheckReport.Kind;
import org.holdproof.report.recheck.RecheckReport.State;
import org.holdproof.report.seal.CanonicalCms;
import org.holdproof.report.seal.CertificateFacts;
import org.holdproof.report.seal.Fingerprint;
import org.holdproof.report.seal.PlatformSignatureCheck;
import org.holdproof.report.seal.SealCms;
import org.holdproof.report.seal.SealPlace;
import org.holdproof.report.seal.SignatureCheck;
import org.holdproof.report.seal.Timestamp;

/**
 * Looks at a report's seal and attachments. A good signature is not enough: the file must be one revision, built as
 * reports are, covered from its first byte to its last, and the seal must hold nothing that could be altered unseen.
 * Whatever is wrong becomes a finding; no input makes it throw.
 */
public final class Recheck {
    private static final Duration CLOCK_SLACK = Duration.ofMinutes(5);
    private static final int MOST_ENDS_TRIED = 16;
    private static final byte[] END = "\n%%EOF\n".getBytes(StandardCharsets.US_ASCII);

    private final byte[] pdf;
    private final SignatureCheck signatures;
    private final List<Finding> findings = new ArrayList<>();
    private final List<Attachment> attachments = new ArrayList<>();
    private Optional<CertificateFacts> signer = Optional.empty();
    private Optional<Instant> claimedTime = Optional.empty();
    private Optional<Timestamp> timestamp = Optional.empty();

    private Recheck(byte[] pdf, SignatureCheck signatures) {
        this.pdf = pdf;
        this.signatures = signatures;
    }

    /** Checks a file, whoever sealed it. */
    public static RecheckReport of(byte[] pdf) {
        return of(pdf, Optional.empty(), new PlatformSignatureCheck());
    }

    /** Checks a file that a certain certificate should have sealed. */
    public static RecheckReport of(byte[] pdf, Fingerprint expected) {
        return of(pdf, Optional.of(expected), new PlatformSignatureCheck());
    }

    /**
     * Checks a file.
     *
     * @param expected the certificate that should have sealed it, where one is expected
     * @param signatures how this platform checks a signature
     */
    public static RecheckReport of(byte[] pdf, Optional<Fingerprint> expected, SignatureCheck signatures) {
        Recheck recheck = new Recheck(pdf, signatures);
        try {
            recheck.look(expected);
        } catch (RuntimeException broken) {
            recheck.find(Kind.NOT_AS_WRITTEN, "the file cannot be read as a report (" + broken + ")");
        } catch (OutOfMemoryError tooLarge) {
            recheck.find(Kind.NOT_AS_WRITTEN, "the file holds more than this machine's memory can take");
        }
        return recheck.report();
    }

    private RecheckReport report() {
        State state = State.BROKEN;
        if (findings.isEmpty()) {
            state = State.INTACT;
        } else if (findings.stream().anyMatch(finding -> finding.kind() == Kind.NO_SEAL)) {
            state = State.UNSEALED;
        }
        return new RecheckReport(state, findings, signer, claimedTime, timestamp, attachments);
    }

    private void find(Kind kind, String detail) {
        findings.add(new Finding(kind, detail));
    }

    private void look(Optional<Fingerprint> expected) {
        try {
            check(expected);
        } catch (MalformedPdfException malformed) {
            if (!isAddedTo(expected)) {
                find(
                        Kind.NOT_AS_WRITTEN,
                        "the file is not built as a report is, " + malformed.getMessage()
                                + ": it was damaged, saved by another program, or never was a report");
            }
        }
    }

    /** Whether an intact report goes on after its end. Then what that report says of its seal is kept. */
    private boolean isAddedTo(Optional<Fingerprint> expected) {
        int end = pdf.length - 1;
        for (int tries = 0; tries < MOST_ENDS_TRIED; tries++) {
            end = lastEnd(end - 1);
            if (end < 0) {
                return false;
            }
            Recheck inner = new Recheck(Arrays.copyOf(pdf, end + END.length), signatures);
            try {
                inner.check(expected);
            } catch (MalformedPdfException | RuntimeException noReport) {
                continue;
            }
            if (inner.findings.stream().allMatch(finding -> finding.kind() == Kind.OTHER_SIGNER)) {
                find(
                        Kind.ADDED_AFTER_SEALING,
                        (pdf.length - end - END.length) + " bytes were added to the file after it was sealed: what it"
                                + " shows may not be what was sealed");
                findings.addAll(inner.findings);
                attachments.addAll(inner.attachments);
                signer = inner.signer;
                claimedTime = inner.claimedTime;
                timestamp = inner.timestamp;
                return true;
            }
        }
        return false;
    }

    private int lastEnd(int from) {
        for (int at = Math.min(from, pdf.length - END.length); at >= 0; at--) {
            if (Arrays.equals(pdf, at, at + END.length, END, 0, END.length)) {
                return at;
            }
        }
        return -1;
    }

    private void check(Optional<Fingerprint> expected) throws MalformedPdfException {
        PdfObjects objects = PdfObjects.read(pdf);
        Optional<PdfValue.Dictionary> catalog = objects.dictionary(objects.trailer(), "Root");
        if (catalog.isEmpty()) {
            throw new MalformedPdfException(objects.trailer().start(), "a file without a catalog");
        }
        lookAtSeal(objects, catalog.get(), expected);
        AttachedFiles.read(objects, catalog.get(), attachments, detail -> find(Kind.ATTACHMENT_UNSOUND, detail));
    }

    private void lookAtSeal(PdfObjects objects, PdfValue.Dictionary catalog, Optional<Fingerprint> expected) {
        List<PdfValue.Dictionary> signatures = SealPlace.signatures(objects);
        long ranges = objects.count("ByteRange");
        if (signatures.isEmpty() && ranges == 0) {
            find(Kind.NO_SEAL, "the file was never sealed: nothing shows that it is as it was written");
            return;
        }
        if (signatures.size() != 1 || ranges != 1 || SealPlace.fields(objects) != 1) {
            find(
                    Kind.SEVERAL_SEALS,
                    "the file holds " + ranges + " signatures in " + SealPlace.fields(objects)
                            + " form fields, where a report holds one in one");
            return;
        }
        PdfValue.Dictionary signature = signatures.get(0);
        Optional<SealPlace> place = SealPlace.within(signature);
        if (place.isEmpty()) {
            find(Kind.NOT_COVERED, "the signature does not say what it covers and when it was made");
            return;
        }
        if (place.get().isReserved()) {
            find(Kind.NO_SEAL, "the file's place for a seal is empty: it was never sealed");
            return;
        }
        if (!place.get().coversAll(pdf.length)) {
            find(Kind.NOT_COVERED, "the signature does not cover the file from its first byte to its last");
        }
        if (!SealPlace.certifies(objects, catalog, signature)) {
            find(Kind.NOT_CERTIFIED, "the signature does not certify the file as one that nobody may change");
        }
        claimedTime = PdfInstant.parse(place.get().time().octets());
        if (claimedTime.isEmpty()) {
            find(Kind.TIME_UNSOUND, "the seal's time \"" + place.get().time().octets() + "\" cannot be read");
        }
        lookAtCms(place.get());
        signer.ifPresent(who -> {
            lookAtTimes(who);
            if (expected.isPresent() && !expected.get().equals(who.fingerprint())) {
                find(
                        Kind.OTHER_SIGNER,
                        "the file was sealed by another key than expected: the certificate of \"" + who.name()
                                + "\" has the fingerprint " + who.fingerprint() + ", not " + expected.get());
            }
        });
    }

    private void lookAtCms(SealPlace place) {
        try {
            SealCms.Checked cms = SealCms.check(place.cms(pdf), signatures);
            signer = Optional.of(cms.signer());
            timestamp = cms.timestamp();
            if (!place.fits(timestamp.isPresent())) {
                find(
                        Kind.TIME_UNSOUND,
                        timestamp.isPresent()
                                ? "a timestamp was put into the seal after it was made"
                                : "the seal was made with a timestamp, and the timestamp was taken out");
            }
            if (!cms.digest().equals(HexFormat.of().formatHex(place.digest(pdf)))) {
                find(Kind.CHANGED, "the file was changed after it was sealed");
            }
        } catch (CanonicalCms.Unfit unfit) {
            find(Kind.SIGNATURE_UNSOUND, "the seal does not hold: " + unfit.getMessage());
        } catch (RuntimeException broken) {
            find(Kind.SIGNATURE_UNSOUND, "the seal does not hold: it cannot be read (" + broken + ")");
        }
    }

    private void lookAtTimes(CertificateFacts who) {
        Optional<Instant> sealed = timestamp.map(Timestamp::time).or(() -> claimedTime);
        if (sealed.isPresent()
                && (sealed.get().isBefore(who.notBefore()) || sealed.get().isAfter(who.notAfter()))) {
            find(
                    Kind.TIME_UNSOUND,
                    "the certificate of \"" + who.name() + "\" was not valid when the file was sealed: it holds from "
                            + who.notBefore() + " to " + who.notAfter() + ", and the seal is of " + sealed.get());
        }
        if (timestamp.isPresent()
                && claimedTime.isPresent()
                && claimedTime.get().isAfter(timestamp.get().time().plus(CLOCK_SLACK))) {
            find(
                    Kind.TIME_UNSOUND,
                    "the seal claims to be of " + claimedTime.get() + ", but existed already at "
                            + timestamp.get().time() + " by its timestamp");
        }
    }
}
