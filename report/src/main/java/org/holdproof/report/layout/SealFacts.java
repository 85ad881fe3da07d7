package org.holdproof.report.layout;

import java.util.Optional;

/**
 * Who seals the report, as it is printed on it.
 *
 * @param signer the name in the signing certificate
 * @param certificateSha256 the certificate's fingerprint, 64 lower-case hexadecimal figures
 * @param timestampAuthority who adds a timestamp; empty where the time is the signer's own clock
 */
public record SealFacts(String signer, String certificateSha256, Optional<String> timestampAuthority) {
    /** @throws IllegalArgumentException if the fingerprint is not 64 lower-case hexadecimal figures */
    public SealFacts {
        if (!certificateSha256.matches("[0-9a-f]{64}")) {
            throw new IllegalArgumentException("not a SHA-256 fingerprint: " + certificateSha256);
        }
    }
}
