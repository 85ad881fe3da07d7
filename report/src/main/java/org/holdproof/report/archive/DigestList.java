package org.holdproof.report.archive;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The digests of the attached files as a file of its own, in the form {@code sha256sum --check} reads. */
public final class DigestList {
    static final String NAME = "SHA256SUMS";

    private static final Pattern LINE = Pattern.compile("([0-9a-f]{64})  ([^\\n]+)");

    private DigestList() {}

    static Attachment over(List<Attachment> attachments) {
        StringBuilder lines = new StringBuilder();
        for (Attachment attachment : attachments) {
            lines.append(attachment.sha256())
                    .append("  ")
                    .append(attachment.name())
                    .append('\n');
        }
        return new Attachment(
                Attachment.Role.DIGESTS, NAME, "text/plain", lines.toString().getBytes(StandardCharsets.UTF_8));
    }

    /** Digest by file name; empty where the text is not such a list or names a file twice. */
    public static Optional<Map<String, String>> read(byte[] content) {
        Map<String, String> digests = new LinkedHashMap<>();
        String text = new String(content, StandardCharsets.UTF_8);
        if (text.isEmpty()) {
            return Optional.of(digests);
        }
        if (!text.endsWith("\n")) {
            return Optional.empty();
        }
        for (String line : text.substring(0, text.length() - 1).split("\n", -1)) {
            Matcher parts = LINE.matcher(line);
            if (!parts.matches() || digests.put(parts.group(2), parts.group(1)) != null) {
                return Optional.empty();
            }
        }
        return Optional.of(digests);
    }
}
