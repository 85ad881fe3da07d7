package org.holdproof.report.seal;

/** Somebody else who says when a thing existed (RFC 3161). */
@FunctionalInterface
public interface TimestampSource {
    /**
     * Asks for a timestamp.
     *
     * @param sha256 the digest to be stamped, 32 bytes
     * @return the token, DER or BER; the caller checks it
     * @throws TimestampException if none is given
     */
    byte[] stamp(byte[] sha256) throws TimestampException;
}
