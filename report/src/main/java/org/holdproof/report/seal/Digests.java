package org.holdproof.report.seal;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 (FIPS 180-4), the only digest this package makes. */
public final class Digests {
    private Digests() {}

    static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException absent) {
            throw new IllegalStateException("every Java runtime has SHA-256", absent);
        }
    }

    public static byte[] sha256(byte[] content) {
        return sha256().digest(content);
    }

    /** 64 lower-case hexadecimal figures. */
    public static String sha256Hex(byte[] content) {
        return HexFormat.of().formatHex(sha256(content));
    }
}
