package org.holdproof.core.rules.loading;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonFactoryBuilder;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadFeature;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * JSON without the lenient corners: a name given twice or anything after the value is an error. Read with the streaming
 * parser, which starts several times faster than the binding one and knows every value's line.
 */
public final class StrictJson {
    private static final JsonFactory FACTORY = new JsonFactoryBuilder()
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .build();

    private StrictJson() {}

    /** A whole document. */
    public static JsonValue read(String file, byte[] bytes) throws UnreadableTablesException {
        try (JsonParser parser = FACTORY.createParser(CsvSheet.utf8(file, bytes))) {
            if (parser.nextToken() == null) {
                throw notJson(file, 0, "nothing");
            }
            JsonValue value = value(file, "", parser);
            if (parser.nextToken() != null) {
                throw notJson(file, parser.currentTokenLocation().getLineNr(), "more text after the end");
            }
            return value;
        } catch (JsonProcessingException e) {
            long line = e.getLocation() == null ? 0 : e.getLocation().getLineNr();
            throw notJson(file, line, "text that is not JSON (" + e.getOriginalMessage() + ")");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static JsonValue value(String file, String pointer, JsonParser parser) throws IOException {
        long line = parser.currentTokenLocation().getLineNr();
        return switch (parser.currentToken()) {
            case START_OBJECT -> {
                Map<String, JsonValue> fields = new LinkedHashMap<>();
                while (parser.nextToken() != JsonToken.END_OBJECT) {
                    String name = parser.currentName();
                    parser.nextToken();
                    fields.put(name, value(file, pointer + "/" + escaped(name), parser));
                }
                yield new JsonValue(file, pointer, line, fields);
            }
            case START_ARRAY -> {
                List<JsonValue> items = new ArrayList<>();
                while (parser.nextToken() != JsonToken.END_ARRAY) {
                    items.add(value(file, pointer + "/" + items.size(), parser));
                }
                yield new JsonValue(file, pointer, line, items);
            }
            case VALUE_STRING -> new JsonValue(file, pointer, line, parser.getText());
            default -> new JsonValue(file, pointer, line, new JsonValue.Other(parser.getText()));
        };
    }

    private static String escaped(String name) {
        return name.replace("~", "~0").replace("/", "~1");
    }

    private static UnreadableTablesException notJson(String file, long line, String found) {
        return new UnreadableTablesException(
                file, line, "", found, "JSON laid out as in the built-in file", "Correct the file there.");
    }

    /** An object whose one field is a list of texts. */
    static byte[] list(String name, List<String> texts) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (JsonGenerator out = FACTORY.createGenerator(bytes)) {
            out.writeStartObject();
            out.writeArrayFieldStart(name);
            for (String text : texts) {
                out.writeString(text);
            }
            out.writeEndArray();
            out.writeEndObject();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }
}
