package org.holdproof.core.input;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.util.Arrays;

/** A file as it was handed in: its name without a folder, and its bytes. */
public final class SourceFile {
    private final String name;
    private final byte[] bytes;

    private SourceFile(String name, byte[] bytes) {
        this.name = name;
        this.bytes = bytes;
    }

    /**
     * A file from memory; the bytes are copied.
     *
     * @param name its name without a folder, as messages and reports print it
     */
    public static SourceFile of(String name, byte[] bytes) {
        return new SourceFile(name, bytes.clone());
    }

    public String name() {
        return name;
    }

    /** A copy of its bytes. */
    public byte[] bytes() {
        return bytes.clone();
    }

    /** How many bytes it has. */
    public int size() {
        return bytes.length;
    }

    /** Its bytes from the first to the last. */
    public InputStream stream() {
        return new ByteArrayInputStream(bytes);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof SourceFile file && name.equals(file.name) && Arrays.equals(bytes, file.bytes);
    }

    @Override
    public int hashCode() {
        return 31 * name.hashCode() + Arrays.hashCode(bytes);
    }

    @Override
    public String toString() {
        return name + " (" + bytes.length + " bytes)";
    }
}
