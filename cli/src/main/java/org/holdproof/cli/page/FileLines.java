package org.holdproof.cli.page;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** A line of a file among its neighbours, to be shown as written. */
final class FileLines {
    private static final int LONGEST = 400;
    private static final int NEIGHBOURS = 1;

    private FileLines() {}

    static ObjectNode around(Path file, long line) throws IOException {
        ObjectNode json = Asked.MAPPER.createObjectNode();
        ArrayNode lines = json.putArray("lines");
        CharsetDecoder decoder = charset(file)
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPLACE)
                .onUnmappableCharacter(CodingErrorAction.REPLACE);
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(Files.newInputStream(file), decoder))) {
            long at = 1;
            StringBuilder text = new StringBuilder();
            boolean afterReturn = false;
            for (int c = reader.read(); at <= line + NEIGHBOURS; c = reader.read()) {
                if (c == '\n' && afterReturn) {
                    afterReturn = false;
                    continue;
                }
                afterReturn = c == '\r';
                if (c == '\n' || c == '\r' || c < 0) {
                    if (at >= line - NEIGHBOURS && (c >= 0 || text.length() > 0)) {
                        lines.addObject().put("line", at).put("text", text.toString());
                    }
                    text.setLength(0);
                    at++;
                    if (c < 0) {
                        break;
                    }
                } else if (text.length() < LONGEST && c != '\uFEFF') {
                    text.append((char) c);
                }
            }
        }
        return json;
    }

    private static Charset charset(Path file) throws IOException {
        byte[] mark;
        try (InputStream in = Files.newInputStream(file)) {
            mark = in.readNBytes(2);
        }
        boolean wide = mark.length == 2
                && ((mark[0] == (byte) 0xFE && mark[1] == (byte) 0xFF)
                        || (mark[0] == (byte) 0xFF && mark[1] == (byte) 0xFE));
        return wide ? StandardCharsets.UTF_16 : StandardCharsets.UTF_8;
    }
}
