package org.holdproof.core.batch;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.core.io.JsonEOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * JSON as RFC 8259 has it and nothing more: UTF-8, one value, no comments, no NaN, no repeated members. The streaming
 * parser is used bare because data binding costs start-up time and turns what is missing into zero.
 */
public final class StrictJson {
    private static final int DEEPEST = 16;
    private static final int LONGEST_NAME = 200;
    private static final JsonFactory JSON = JsonFactory.builder()
            .streamReadConstraints(StreamReadConstraints.builder()
                    .maxNestingDepth(DEEPEST)
                    .maxNameLength(LONGEST_NAME)
                    .build())
            .build();

    private final String file;
    private final JsonParser parser;

    private StrictJson(String file, JsonParser parser) {
        this.file = file;
        this.parser = parser;
    }

    static JsonValue parse(String file, byte[] bytes) throws UnreadableBatchException {
        String text = decode(file, bytes);
        try (JsonParser parser = JSON.createParser(text)) {
            return new StrictJson(file, parser).document();
        } catch (JsonProcessingException e) {
            throw syntaxFault(file, text, e);
        } catch (IOException e) {
            throw new IllegalStateException("reading from memory failed", e);
        }
    }

    private JsonValue document() throws IOException, UnreadableBatchException {
        if (parser.nextToken() == null) {
            throw whole(file, "nothing in it", "a batch record in JSON", "Write the batch record first.");
        }
        JsonValue value = value(new Place(file, "", 1, 1));
        if (parser.nextToken() != null) {
            throw here(new Place(file, "", 1, 1))
                    .fault(
                            "more after the end of the record",
                            "the end of the file",
                            "Keep one record in a file; look for a bracket closed too early.");
        }
        return value;
    }

    private JsonValue value(Place outer) throws IOException, UnreadableBatchException {
        Place place = here(outer);
        JsonToken token = parser.currentToken();
        return switch (token) {
            case START_OBJECT -> new JsonValue.Members(place, members(place));
            case START_ARRAY -> new JsonValue.Items(place, items(place));
            case VALUE_STRING -> new JsonValue.Text(place, parser.getText());
            case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> new JsonValue.Figure(place, parser.getText());
            default -> new JsonValue.Literal(place, parser.getText());
        };
    }

    private Map<String, JsonValue> members(Place place) throws IOException, UnreadableBatchException {
        Map<String, JsonValue> members = new LinkedHashMap<>();
        while (parser.nextToken() != JsonToken.END_OBJECT) {
            String name = parser.currentName();
            if (members.containsKey(name)) {
                throw here(place.member(name))
                        .fault(
                                "'" + name + "' a second time",
                                "each member once",
                                "Delete the one that does not hold.");
            }
            parser.nextToken();
            members.put(name, value(place.member(name)));
        }
        return members;
    }

    private List<JsonValue> items(Place place) throws IOException, UnreadableBatchException {
        List<JsonValue> items = new ArrayList<>();
        while (parser.nextToken() != JsonToken.END_ARRAY) {
            items.add(value(place.item(items.size())));
        }
        return items;
    }

    private Place here(Place place) {
        JsonLocation location = parser.currentTokenLocation();
        return place.at(location.getLineNr(), location.getColumnNr());
    }

    private static String decode(String file, byte[] bytes) throws UnreadableBatchException {
        if (bytes.length >= 2 && (bytes[0] == (byte) 0xFF || bytes[0] == (byte) 0xFE) && (bytes[0] ^ bytes[1]) == 1) {
            throw whole(file, "UTF-16 text", "UTF-8 text", "Save it again with the encoding UTF-8.");
        }
        String text;
        try {
            text = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
        } catch (CharacterCodingException e) {
            throw whole(
                    file,
                    "bytes that are not UTF-8 text",
                    "UTF-8 text",
                    "Save it again with the encoding UTF-8; a degree sign or an accent is the usual cause.");
        }
        return text.startsWith("\uFEFF") ? text.substring(1) : text;
    }

    private static UnreadableBatchException syntaxFault(String file, String text, JsonProcessingException e) {
        JsonLocation location = e.getLocation();
        int line = location == null ? 0 : location.getLineNr();
        int column = location == null ? 0 : location.getColumnNr();
        if (e instanceof StreamConstraintsException) {
            return new UnreadableBatchException(
                    file,
                    line,
                    column,
                    "",
                    "something far deeper or longer than any batch record",
                    "a batch record in JSON",
                    "Check that this is the right file.");
        }
        if (e instanceof JsonEOFException) {
            return new UnreadableBatchException(
                    file,
                    line,
                    column,
                    "",
                    "the end of the file inside the record",
                    "a closing quote or bracket",
                    "Close what was opened, or get the whole file.");
        }
        if (!text.stripLeading().startsWith("{")) {
            return new UnreadableBatchException(
                    file,
                    line,
                    column,
                    "",
                    "text that is not JSON",
                    "a batch record, beginning with {",
                    "Check that the log and the batch record were not swapped.");
        }
        String parserWords = e.getOriginalMessage().lines().findFirst().orElse("");
        return new UnreadableBatchException(
                file,
                line,
                column,
                "",
                "a slip in the JSON (" + parserWords + ")",
                "plain JSON, without comments or commas before a closing bracket",
                "Look at that character and the one before it: a comma, quote or bracket is missing or too many.");
    }

    private static UnreadableBatchException whole(String file, String found, String expected, String remedy) {
        return new UnreadableBatchException(file, "", found, expected, remedy);
    }
}
