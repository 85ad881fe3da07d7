package org.holdproof.report.seal;

import org.bouncycastle.asn1.x509.AlgorithmIdentifier;
import org.bouncycastle.asn1.x509.SubjectPublicKeyInfo;

/**
 * Tells whether a signature holds. Everything else about a seal is decided without the platform's cryptography, so this
 * is all that another platform must bring.
 */
@FunctionalInterface
public interface SignatureCheck {
    /**
     * Whether the owner of a key signed these bytes.
     *
     * @param key the public key
     * @param algorithm signature and digest in one, such as {@code ecdsa-with-SHA256} (RFC 5758) or
     *     {@code sha256WithRSAEncryption} (RFC 4055)
     * @param signed the bytes signed, not yet digested
     * @return false also where the key, the algorithm or the signature's form is none this platform knows
     */
    boolean holds(SubjectPublicKeyInfo key, AlgorithmIdentifier algorithm, byte[] signed, byte[] signature);
}
