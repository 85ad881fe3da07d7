package org.holdproof.report.seal;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.holdproof.report.pdf.PdfInstant;
import org.holdproof.report.pdf.PdfObjects;
import org.holdproof.report.pdf.PdfValue;

/**
 * Where a file keeps its seal: the one signature dictionary its one signature field leads to. The signature covers the
 * file from its first byte to its last save the hexadecimal string {@code <...>} of its Contents.
 *
 * @param byteRange the bytes of the ByteRange array
 * @param contents the bytes of the Contents string, angle brackets included
 * @param time the bytes of the M string, parentheses included
 * @param reason the bytes of the Reason string, parentheses included: whether a timestamp belongs to the seal, which the
 *     signature itself could not tell
 */
public record SealPlace(PdfValue.Array byteRange, PdfValue.Text contents, PdfValue.Text time, PdfValue.Text reason) {
    /** Room for the CMS in bytes: with a chain of three RSA certificates and a timestamp some 8 KiB are used. */
    public static final int ROOM = 16_384;

    public static final String NO_TIME = "D:00000000000000Z";
    public static final int RANGE_WIDTH = 40;
    private static final String WITHOUT_TIMESTAMP = "Sealed without a timestamp";
    private static final String WITH_TIMESTAMP = "Sealed with a timestamp   ";
    public static final String NOT_YET = " ".repeat(WITH_TIMESTAMP.length());

    /** The signature dictionaries a file's form fields lead to. */
    public static List<PdfValue.Dictionary> signatures(PdfObjects objects) {
        return formFields(objects).stream()
                .flatMap(field -> objects.dictionary(field).stream())
                .filter(field -> field.isName("FT", "Sig"))
                .flatMap(field -> objects.dictionary(field, "V").stream())
                .toList();
    }

    /** How many form fields a file has, of whatever kind. */
    public static int fields(PdfObjects objects) {
        return formFields(objects).size();
    }

    private static List<PdfValue> formFields(PdfObjects objects) {
        return objects.dictionary(objects.trailer(), "Root")
                .flatMap(catalog -> objects.dictionary(catalog, "AcroForm"))
                .flatMap(form -> objects.array(form, "Fields"))
                .map(PdfValue.Array::items)
                .orElse(List.of());
    }

    /** Whether a signature is what the catalog names as the file's certification, and permits no change. */
    public static boolean certifies(PdfObjects objects, PdfValue.Dictionary catalog, PdfValue.Dictionary signature) {
        Optional<PdfValue.Dictionary> reference = objects.array(signature, "Reference")
                .filter(references -> references.items().size() == 1)
                .flatMap(references -> objects.dictionary(references.items().get(0)));
        boolean permitsNothing = reference
                .filter(found -> found.isName("TransformMethod", "DocMDP"))
                .flatMap(found -> objects.dictionary(found, "TransformParams"))
                .flatMap(params -> params.get("P"))
                .filter(level -> level instanceof PdfValue.Whole whole && whole.value() == 1)
                .isPresent();
        boolean named = objects.dictionary(catalog, "Perms")
                .flatMap(permissions -> objects.dictionary(permissions, "DocMDP"))
                .filter(found -> found.start() == signature.start())
                .isPresent();
        return permitsNothing
                && named
                && signature.isName("Type", "Sig")
                && signature.isName("Filter", "Adobe.PPKLite")
                && signature.isName("SubFilter", "ETSI.CAdES.detached");
    }

    /** The place within a signature dictionary, where it has the four entries. */
    public static Optional<SealPlace> within(PdfValue.Dictionary signature) {
        if (signature.get("ByteRange").orElse(null) instanceof PdfValue.Array byteRange
                && signature.get("Contents").orElse(null) instanceof PdfValue.Text contents
                && signature.get("M").orElse(null) instanceof PdfValue.Text time
                && signature.get("Reason").orElse(null) instanceof PdfValue.Text reason
                && contents.hexadecimal()) {
            return Optional.of(new SealPlace(byteRange, contents, time, reason));
        }
        return Optional.empty();
    }

    /** How many bytes the CMS may have. */
    int room() {
        return contents.octets().length();
    }

    public boolean isReserved() {
        return byteRange.items().isEmpty()
                && byteRange.end() - byteRange.start() == RANGE_WIDTH
                && time.octets().equals(NO_TIME)
                && reason.octets().equals(NOT_YET)
                && contents.octets().chars().allMatch(octet -> octet == 0);
    }

    void fillTime(byte[] file, Instant now) {
        write(file, time.start(), "(" + PdfInstant.format(now) + ")");
    }

    void fillReason(byte[] file, boolean withTimestamp) {
        write(file, reason.start(), "(" + (withTimestamp ? WITH_TIMESTAMP : WITHOUT_TIMESTAMP) + ")");
    }

    /** Whether the reason says what it must say of a seal with or without a timestamp. */
    public boolean fits(boolean withTimestamp) {
        return reason.octets().equals(withTimestamp ? WITH_TIMESTAMP : WITHOUT_TIMESTAMP);
    }

    void fillByteRange(byte[] file) {
        String range = "[0 " + contents.start() + " " + contents.end() + " " + (file.length - contents.end()) + "]";
        write(file, byteRange.start(), range.substring(0, range.length() - 1));
    }

    /** Whether the ByteRange says: everything in a file of this length, save exactly the Contents string. */
    public boolean coversAll(int length) {
        long[] expected = {0, contents.start(), contents.end(), length - contents.end()};
        if (byteRange.items().size() != expected.length) {
            return false;
        }
        for (int i = 0; i < expected.length; i++) {
            if (!(byteRange.items().get(i) instanceof PdfValue.Whole whole) || whole.value() != expected[i]) {
                return false;
            }
        }
        return true;
    }

    /**
     * The CMS within the Contents string, which the signature does not cover: its figures must be lower case as the
     * seal writes them, and nothing but zeros may follow the message.
     */
    public byte[] cms(byte[] file) throws CanonicalCms.Unfit {
        for (int at = contents.start() + 1; at < contents.end() - 1; at++) {
            if (Character.digit(file[at], 16) < 0 || Character.isUpperCase(file[at])) {
                throw new CanonicalCms.Unfit("its figures are not written as a seal's are");
            }
        }
        byte[] octets = contents.octets().getBytes(StandardCharsets.ISO_8859_1);
        int length = derLength(octets);
        for (int at = length; at < octets.length; at++) {
            if (octets[at] != 0) {
                throw new CanonicalCms.Unfit("other bytes follow it in its place");
            }
        }
        return Arrays.copyOf(octets, length);
    }

    /** How many bytes the DER value at the front takes, header included (X.690, 8.1.3). */
    private static int derLength(byte[] octets) throws CanonicalCms.Unfit {
        if (octets.length < 4 || octets[0] != 0x30 || (octets[1] & 0xFF) != 0x82) {
            throw new CanonicalCms.Unfit("it is not a CMS signature");
        }
        int length = 4 + (((octets[2] & 0xFF) << 8) | (octets[3] & 0xFF));
        if (length > octets.length) {
            throw new CanonicalCms.Unfit("it is longer than its place");
        }
        return length;
    }

    /** SHA-256 over the whole file save the Contents string. */
    public byte[] digest(byte[] file) {
        MessageDigest digest = Digests.sha256();
        digest.update(file, 0, contents.start());
        digest.update(file, contents.end(), file.length - contents.end());
        return digest.digest();
    }

    private static void write(byte[] file, int at, String text) {
        byte[] octets = text.getBytes(StandardCharsets.US_ASCII);
        System.arraycopy(octets, 0, file, at, octets.length);
    }
}
