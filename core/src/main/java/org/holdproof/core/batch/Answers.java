package org.holdproof.core.batch;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.holdproof.core.input.JsonValue;
import org.holdproof.core.input.Place;
import org.holdproof.core.input.SourceFile;
import org.holdproof.core.input.StrictJson;
import org.holdproof.core.input.UnreadableInputException;

/**
 * What somebody settles in a batch record's place. Answers are written into the record itself: what rides inside a
 * report is then all that is needed to reckon it again.
 *
 * @param authority an authority profile's id
 * @param unit {@code C} or {@code F}, for every log
 * @param dates {@code dmy}, {@code mdy} or {@code ymd}, for every log
 */
public record Answers(Optional<String> authority, Optional<String> unit, Optional<String> dates) {
    /** Nothing settled. */
    public static final Answers NONE = new Answers(Optional.empty(), Optional.empty(), Optional.empty());

    /**
     * The record with the answers written in, or as it is where there are none.
     *
     * @throws UnreadableInputException if it is not a JSON object
     */
    public SourceFile writtenInto(SourceFile record) throws UnreadableInputException {
        if (equals(NONE)) {
            return record;
        }
        JsonValue document = StrictJson.read(record.name(), record.bytes(), "a batch record");
        Map<String, JsonValue> members = new LinkedHashMap<>(document.members());
        authority.ifPresent(id -> members.put("authority", text(id)));
        if (members.get("logs") instanceof JsonValue.Items logs) {
            List<JsonValue> answered = new ArrayList<>();
            for (JsonValue log : logs.values()) {
                answered.add(settled(log));
            }
            members.put("logs", new JsonValue.Items(logs.place(), answered));
        } else if (unit.isPresent() || dates.isPresent()) {
            Optional<JsonValue> log = document.fieldIfAny("log");
            members.put("log", settled(log.orElse(new JsonValue.Members(document.place(), Map.of()))));
        }
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (JsonGenerator out = new JsonFactory().createGenerator(bytes).useDefaultPrettyPrinter()) {
            write(new JsonValue.Members(document.place(), members), out);
        } catch (IOException e) {
            throw new IllegalStateException("writing to memory failed", e);
        }
        return SourceFile.of(record.name(), bytes.toByteArray());
    }

    private JsonValue settled(JsonValue log) {
        if (!(log instanceof JsonValue.Members object)) {
            return log;
        }
        Map<String, JsonValue> members = new LinkedHashMap<>(object.values());
        unit.ifPresent(letter -> members.put("unit", text(letter)));
        dates.ifPresent(order -> members.put("dates", text(order)));
        return new JsonValue.Members(object.place(), members);
    }

    private static JsonValue text(String value) {
        return new JsonValue.Text(Place.file(""), value);
    }

    private static void write(JsonValue value, JsonGenerator out) throws IOException {
        if (value instanceof JsonValue.Members object) {
            out.writeStartObject();
            for (Map.Entry<String, JsonValue> member : object.values().entrySet()) {
                out.writeFieldName(member.getKey());
                write(member.getValue(), out);
            }
            out.writeEndObject();
        } else if (value instanceof JsonValue.Items list) {
            out.writeStartArray();
            for (JsonValue item : list.values()) {
                write(item, out);
            }
            out.writeEndArray();
        } else if (value instanceof JsonValue.Text text) {
            out.writeString(text.value());
        } else if (value instanceof JsonValue.Figure figure) {
            out.writeNumber(figure.written());
        } else if (value instanceof JsonValue.Literal literal) {
            out.writeRawValue(literal.words());
        }
    }
}
