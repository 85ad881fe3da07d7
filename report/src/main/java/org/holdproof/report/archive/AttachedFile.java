package org.holdproof.report.archive;

/**
 * A file that rides inside the report, as it is listed in print.
 *
 * @param name its file name, without a folder
 * @param description what it is, in a few words
 * @param sha256 digest of its bytes, 64 lower-case hexadecimal figures
 * @param bytes its size
 */
public record AttachedFile(String name, String description, String sha256, long bytes) {
    /** @throws IllegalArgumentException if the digest is not 64 lower-case hexadecimal figures or the size negative */
    public AttachedFile {
        if (!sha256.matches("[0-9a-f]{64}")) {
            throw new IllegalArgumentException(name + ": not a SHA-256 digest: " + sha256);
        }
        if (bytes < 0) {
            throw new IllegalArgumentException(name + ": a size of " + bytes + " bytes");
        }
    }
}
