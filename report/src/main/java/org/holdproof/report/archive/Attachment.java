package org.holdproof.report.archive;

import java.util.Arrays;
import java.util.Optional;
import org.holdproof.report.seal.Digests;

/** A file that rides inside a report. */
public final class Attachment {

    /** What an attached file is to the report. A report holds at most one of each. */
    public enum Role {
        LOG("Probe log as handed in", "Source"),
        BATCH_RECORD("Batch record as handed in", "Source"),
        ASSESSMENT("Assessment: every figure of this report", "Data"),
        TABLES("Reference tables the batch was judged by", "Data"),
        /** Written by {@link ArchivalPdf} itself: one line a file, as {@code sha256sum} reads it. */
        DIGESTS("SHA-256 of the other attached files", "Data");

        private final String title;
        private final String relationship;

        Role(String title, String relationship) {
            this.title = title;
            this.relationship = relationship;
        }

        /** What it is, in a few words; stands as the file's description in the PDF. */
        public String title() {
            return title;
        }

        /** Its AFRelationship (ISO 19005-3, Annex E). */
        String relationship() {
            return relationship;
        }

        public static Optional<Role> titled(String title) {
            return Arrays.stream(values())
                    .filter(role -> role.title.equals(title))
                    .findFirst();
        }
    }

    private static final int LONGEST_NAME = 120;

    private final Role role;
    private final String name;
    private final String mimeType;
    private final byte[] content;
    private final String sha256;

    /**
     * @param name its file name, without a folder, 120 characters at most
     * @param mimeType such as {@code text/csv}
     * @param content its bytes; copied
     * @throws IllegalArgumentException if the name could not be saved as a file's name, or is no MIME type
     */
    public Attachment(Role role, String name, String mimeType, byte[] content) {
        if (!isPlainName(name)) {
            throw new IllegalArgumentException("an attachment needs a plain file name of at most " + LONGEST_NAME
                    + " characters, without folder or control characters; found \"" + name + "\"");
        }
        if (!mimeType.matches("[A-Za-z0-9.+-]+/[A-Za-z0-9.+-]+")) {
            throw new IllegalArgumentException(name + ": not a MIME type: \"" + mimeType + "\"");
        }
        this.role = role;
        this.name = name;
        this.mimeType = mimeType;
        this.content = content.clone();
        this.sha256 = Digests.sha256Hex(content);
    }

    static boolean isPlainName(String name) {
        return !name.isBlank()
                && name.length() <= LONGEST_NAME
                && !name.startsWith(".")
                && name.codePoints()
                        .noneMatch(character -> character == '/'
                                || character == '\\'
                                || Character.isISOControl(character)
                                || Character.getType(character) == Character.FORMAT
                                || Character.getType(character) == Character.SURROGATE);
    }

    public Role role() {
        return role;
    }

    public String name() {
        return name;
    }

    public String mimeType() {
        return mimeType;
    }

    /** A copy of its bytes. */
    public byte[] content() {
        return content.clone();
    }

    public byte[] sharedContent() {
        return content;
    }

    /** Digest of its bytes, 64 lower-case hexadecimal figures. */
    public String sha256() {
        return sha256;
    }

    /** As it is listed in print. */
    public AttachedFile listed() {
        return new AttachedFile(name, role.title(), sha256, content.length);
    }
}
