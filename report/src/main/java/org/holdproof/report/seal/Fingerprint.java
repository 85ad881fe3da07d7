package org.holdproof.report.seal;

import java.util.Locale;

/**
 * The SHA-256 over a certificate's DER bytes: what a person compares to know whose seal it is.
 *
 * @param hex 64 lower-case hexadecimal figures
 */
public record Fingerprint(String hex) {
    /** @throws IllegalArgumentException if it is not 64 lower-case hexadecimal figures */
    public Fingerprint {
        if (!hex.matches("[0-9a-f]{64}")) {
            throw new IllegalArgumentException(
                    "a certificate's fingerprint has 64 hexadecimal figures; found \"" + hex + "\"");
        }
    }

    /** The fingerprint of a certificate's DER bytes. */
    public static Fingerprint of(byte[] certificate) {
        return new Fingerprint(Digests.sha256Hex(certificate));
    }

    /**
     * Reads a fingerprint as people write it: either case, with or without colons and blanks.
     *
     * @throws IllegalArgumentException if it does not come to 64 hexadecimal figures
     */
    public static Fingerprint parse(String text) {
        return new Fingerprint(text.replaceAll("[:\\s]", "").toLowerCase(Locale.ROOT));
    }

    @Override
    public String toString() {
        return hex;
    }
}
