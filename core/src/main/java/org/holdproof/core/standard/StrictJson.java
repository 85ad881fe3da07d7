package org.holdproof.core.standard;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.UncheckedIOException;

/** JSON without the lenient corners: a name given twice or anything after the value is an error. */
final class StrictJson {
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .build();

    private StrictJson() {}

    static JsonNode read(String file, byte[] bytes) throws UnreadableTablesException {
        try {
            return MAPPER.readTree(CsvSheet.utf8(file, bytes));
        } catch (JsonProcessingException e) {
            JsonLocation at = e.getLocation();
            throw new UnreadableTablesException(
                    file,
                    at == null ? 0 : at.getLineNr(),
                    "",
                    "text that is not JSON (" + e.getOriginalMessage() + ")",
                    "JSON laid out as in the built-in file",
                    "Correct the file there.");
        }
    }

    static byte[] write(Object value) {
        try {
            return MAPPER.writeValueAsBytes(value);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
