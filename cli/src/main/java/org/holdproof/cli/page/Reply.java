package org.holdproof.cli.page;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.util.Map;

/**
 * What the server answers.
 *
 * @param status the HTTP status
 * @param type the media type
 * @param body the bytes; not copied, for some are large
 * @param headers further header fields
 */
@SuppressWarnings("ArrayRecordComponent") // never compared; a copy of a large file helps nobody
record Reply(int status, String type, byte[] body, Map<String, String> headers) {
    static final String JSON = "application/json";

    Reply {
        headers = Map.copyOf(headers);
    }

    static Reply json(JsonNode body) {
        return json(200, body);
    }

    static Reply json(int status, JsonNode body) {
        return new Reply(status, JSON, body.toString().getBytes(StandardCharsets.UTF_8), Map.of());
    }

    static Reply bytes(String type, byte[] body) {
        return new Reply(200, type, body, Map.of());
    }

    /** A file to be kept under a name, not shown. */
    static Reply download(String type, String name, byte[] body) {
        String plain = name.replaceAll("[^A-Za-z0-9._-]", "_");
        return new Reply(200, type, body, Map.of("Content-Disposition", "attachment; filename=\"" + plain + "\""));
    }

    static Reply words(int status, String words) {
        return new Reply(
                status, "text/plain; charset=utf-8", (words + "\n").getBytes(StandardCharsets.UTF_8), Map.of());
    }
}
