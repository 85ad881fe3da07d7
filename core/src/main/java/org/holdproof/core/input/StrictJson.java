package org.holdproof.core.input;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.core.io.JsonEOFException;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
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

    private final Place file;
    private final String what;
    private final JsonParser parser;

    private StrictJson(Place file, String what, JsonParser parser) {
        this.file = file;
        this.what = what;
        this.parser = parser;
    }

    /**
     * A whole document.
     *
     * @param file the file's name for messages
     * @param what what it should be, with its article, as a message names it: {@code a batch record}
     * @throws UnreadableInputException if it is not JSON, or not in UTF-8
     */
    public static JsonValue read(String file, byte[] bytes, String what) throws UnreadableInputException {
        Place whole = Place.file(file);
        String text = Utf8.decode(whole, bytes);
        try (JsonParser parser = JSON.createParser(text)) {
            return new StrictJson(whole, what, parser).document();
        } catch (JsonProcessingException e) {
            throw syntaxFault(whole, what, text, e);
        } catch (IOException e) {
            throw new IllegalStateException("reading from memory failed", e);
        }
    }

    private JsonValue document() throws IOException, UnreadableInputException {
        if (parser.nextToken() == null) {
            throw file.fault(
                    "nothing in it", what + " in JSON", "Write it first, or check that this is the right file.");
        }
        JsonValue value = value(file);
        if (parser.nextToken() != null) {
            throw here(file)
                    .fault(
                            "more after the end of " + named(what, "the"),
                            "the end of the file",
                            "Keep one in a file; look for a bracket closed too early.");
        }
        return value;
    }

    private JsonValue value(Place outer) throws IOException, UnreadableInputException {
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

    private Map<String, JsonValue> members(Place place) throws IOException, UnreadableInputException {
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

    private List<JsonValue> items(Place place) throws IOException, UnreadableInputException {
        List<JsonValue> items = new ArrayList<>();
        while (parser.nextToken() != JsonToken.END_ARRAY) {
            items.add(value(place.item(items.size())));
        }
        return items;
    }

    private Place here(Place place) {
        JsonLocation location = parser.currentTokenLocation();
        return place.character(location.getLineNr(), location.getColumnNr());
    }

    private static UnreadableInputException syntaxFault(
            Place file, String what, String text, JsonProcessingException e) {
        JsonLocation location = e.getLocation();
        Place place = location == null ? file : file.character(location.getLineNr(), location.getColumnNr());
        if (e instanceof StreamConstraintsException) {
            return place.fault(
                    "something far deeper or longer than " + named(what, "any"),
                    what + " in JSON",
                    "Check that this is the right file.");
        }
        if (e instanceof JsonEOFException) {
            return place.fault(
                    "the end of the file inside " + named(what, "the"),
                    "a closing quote or bracket",
                    "Close what was opened, or get the whole file.");
        }
        if (!text.stripLeading().startsWith("{")) {
            return place.fault(
                    "text that is not JSON",
                    what + ", beginning with {",
                    "Check that this is the right file and was not swapped with another.");
        }
        String parserWords = e.getOriginalMessage().split("[\\r\\n]", 2)[0];
        return place.fault(
                "a slip in the JSON (" + parserWords + ")",
                "plain JSON, without comments or commas before a closing bracket",
                "Look at that character and the one before it: a comma, quote or bracket is missing or too many.");
    }

    private static String named(String what, String article) {
        return article + what.substring(what.indexOf(' '));
    }

    /** An object whose one member is a list of texts. */
    public static byte[] list(String name, List<String> texts) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (JsonGenerator out = JSON.createGenerator(bytes)) {
            out.writeStartObject();
            out.writeArrayFieldStart(name);
            for (String text : texts) {
                out.writeString(text);
            }
            out.writeEndArray();
            out.writeEndObject();
        } catch (IOException e) {
            throw new IllegalStateException("writing to memory failed", e);
        }
        return bytes.toByteArray();
    }
}
