package org.holdproof.cli.page;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** What a file handed in looks like from its first bytes; whether it can be read is for its reader to say. */
final class FileKinds {
    private static final int HEAD = 1024;

    private FileKinds() {}

    static ObjectNode describe(Path file, Shelf.Item item) throws IOException {
        byte[] head;
        try (InputStream in = Files.newInputStream(file)) {
            head = in.readNBytes(HEAD);
        }
        return Asked.MAPPER
                .createObjectNode()
                .put("file", item.id())
                .put("bytes", item.bytes())
                .put("kind", kind(new String(head, StandardCharsets.ISO_8859_1)));
    }

    /** A report, a batch record, a picture, a workbook, or what may be a log. */
    private static String kind(String head) {
        if (head.contains("%PDF-")) {
            return "report";
        }
        if (head.startsWith("\u0089PNG") || head.startsWith("\u00ff\u00d8\u00ff") || head.startsWith("GIF8")) {
            return "picture";
        }
        if (head.startsWith("PK\u0003\u0004") || head.startsWith("\u00d0\u00cf\u0011\u00e0")) {
            return "workbook";
        }
        String text = head.startsWith("\u00ef\u00bb\u00bf") ? head.substring(3) : head;
        return text.stripLeading().startsWith("{") ? "record" : "log";
    }
}
