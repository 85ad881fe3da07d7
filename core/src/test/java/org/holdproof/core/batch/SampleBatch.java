package org.holdproof.core.batch;

import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import org.holdproof.core.input.UnreadableInputException;

/** A batch record with every member, invented for the tests, and changes to it. */
final class SampleBatch {
    static final ObjectMapper JSON = new ObjectMapper();

    private SampleBatch() {}

    static byte[] bytes() {
        try (InputStream in = Objects.requireNonNull(SampleBatch.class.getResourceAsStream("sample-batch.json"))) {
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static String text() {
        return new String(bytes(), StandardCharsets.UTF_8);
    }

    static ObjectNode tree() {
        return (ObjectNode) json(text());
    }

    static JsonNode json(String text) {
        try {
            return JSON.readTree(text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The sample with the value at a pointer put or replaced; its parent must exist. */
    static ObjectNode with(String pointer, String value) {
        ObjectNode tree = tree();
        put(tree, pointer, json(value));
        return tree;
    }

    static void put(ObjectNode tree, String pointer, JsonNode value) {
        JsonPointer place = JsonPointer.compile(pointer);
        JsonNode parent = tree.at(place.head());
        if (parent instanceof ArrayNode array) {
            if (place.last().getMatchingIndex() == array.size()) {
                array.add(value);
            } else {
                array.set(place.last().getMatchingIndex(), value);
            }
        } else {
            ((ObjectNode) parent).set(place.last().getMatchingProperty(), value);
        }
    }

    static ObjectNode without(String pointer) {
        ObjectNode tree = tree();
        JsonPointer place = JsonPointer.compile(pointer);
        ((ObjectNode) tree.at(place.head())).remove(place.last().getMatchingProperty());
        return tree;
    }

    static BatchRecord read(JsonNode tree) throws UnreadableInputException {
        return read(tree.toString());
    }

    static BatchRecord read(String text) throws UnreadableInputException {
        return BatchReader.parse("batch.json", text.getBytes(StandardCharsets.UTF_8));
    }
}
