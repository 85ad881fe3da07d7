package org.holdproof.report.seal;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import org.holdproof.report.pdf.MalformedPdfException;
import org.holdproof.report.pdf.PdfObjects;
import org.holdproof.report.pdf.PdfValue;

/**
 * Seals a report: a PAdES baseline B-B certification signature that permits no change (ETSI EN 319 142-1; ISO 32000-1,
 * 12.8.2.2), or B-T where a timestamp is added.
 */
public final class Seal {
    private Seal() {}

    /**
     * Seals a file that was written for sealing.
     *
     * @param now the time the seal claims, to the second
     * @return the sealed file; the given bytes stay as they are
     * @throws TimestampException if no sound timestamp was to be had
     * @throws IllegalArgumentException if the file keeps no place for a seal, or is sealed already
     * @throws IllegalStateException if the private key does not belong to its certificate
     */
    public static byte[] sign(byte[] pdf, SigningKey key, Instant now, Optional<TimestampSource> timestamps)
            throws TimestampException {
        SealPlace place = placeIn(pdf);
        byte[] sealed = pdf.clone();
        place.fillTime(sealed, now.truncatedTo(ChronoUnit.SECONDS));
        place.fillReason(sealed, timestamps.isPresent());
        place.fillByteRange(sealed);
        byte[] cms;
        try {
            byte[] digest = place.digest(sealed);
            cms = SealCms.sign(digest, key, timestamps);
            SealCms.check(cms, new PlatformSignatureCheck());
        } catch (GeneralSecurityException | CanonicalCms.Unfit unusable) {
            throw new IllegalStateException("the key cannot seal: " + unusable.getMessage(), unusable);
        }
        if (cms.length > place.room()) {
            throw new IllegalStateException("the key's certificates and the timestamp need " + cms.length
                    + " bytes; a seal has room for " + place.room());
        }
        byte[] figures = HexFormat.of().formatHex(cms).getBytes(StandardCharsets.US_ASCII);
        System.arraycopy(figures, 0, sealed, place.contents().start() + 1, figures.length);
        return sealed;
    }

    private static SealPlace placeIn(byte[] pdf) {
        try {
            List<PdfValue.Dictionary> signatures = SealPlace.signatures(PdfObjects.read(pdf));
            Optional<SealPlace> place = signatures.size() == 1 ? SealPlace.within(signatures.get(0)) : Optional.empty();
            return place.filter(SealPlace::isReserved)
                    .orElseThrow(() -> new IllegalArgumentException("the PDF keeps no empty place for a seal"));
        } catch (MalformedPdfException foreign) {
            throw new IllegalArgumentException("the PDF was not written for sealing: " + foreign.getMessage(), foreign);
        }
    }
}
