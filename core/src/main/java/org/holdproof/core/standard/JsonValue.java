package org.holdproof.core.standard;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import org.holdproof.core.quantity.TemperatureUnit;

/** A value in a JSON file together with its place, for errors that say where. */
record JsonValue(String file, String pointer, JsonNode node) {

    /** A whole document. */
    static JsonValue root(String file, JsonNode node) {
        return new JsonValue(file, "", node);
    }

    /** An object's field, perhaps absent. */
    JsonValue field(String name) {
        return new JsonValue(file, pointer + "/" + name, node.path(name));
    }

    boolean isAbsent() {
        return node.isMissingNode() || node.isNull();
    }

    /** Refuses anything but an object with all the required fields and no others than these and the optional ones. */
    void requireFields(List<String> required, List<String> optional) throws UnreadableTablesException {
        if (!node.isObject()) {
            throw fault("an object", "Lay the value out as in the built-in file.");
        }
        for (Iterator<String> names = node.fieldNames(); names.hasNext(); ) {
            String name = names.next();
            if (!required.contains(name) && !optional.contains(name)) {
                throw new UnreadableTablesException(
                        file,
                        0,
                        pointer + "/" + name,
                        "the field " + CsvSheet.shortened(name),
                        "one of " + String.join(", ", required) + suffix(optional),
                        "Correct the name, or take the field out.");
            }
        }
        for (String name : required) {
            if (!node.has(name)) {
                throw new UnreadableTablesException(
                        file,
                        0,
                        pointer + "/" + name,
                        "nothing",
                        "the field " + name,
                        "Add the field as in the built-in file.");
            }
        }
    }

    private static String suffix(List<String> optional) {
        return optional.isEmpty() ? "" : ", " + String.join(", ", optional);
    }

    List<JsonValue> items() throws UnreadableTablesException {
        if (!node.isArray()) {
            throw fault("a list", "Put the values into square brackets.");
        }
        List<JsonValue> items = new ArrayList<>();
        for (int i = 0; i < node.size(); i++) {
            items.add(new JsonValue(file, pointer + "/" + i, node.get(i)));
        }
        return items;
    }

    List<String> texts() throws UnreadableTablesException {
        List<String> texts = new ArrayList<>();
        for (JsonValue item : items()) {
            texts.add(item.text());
        }
        return texts;
    }

    String text() throws UnreadableTablesException {
        String text = textOrEmpty();
        if (text.isEmpty()) {
            throw fault("text", "Fill the value.");
        }
        return text;
    }

    String textOrEmpty() throws UnreadableTablesException {
        if (!node.isTextual()) {
            throw fault("text in double quotes", "Write the value as text.");
        }
        return node.textValue().strip();
    }

    <E extends Enum<E>> E choice(E[] constants) throws UnreadableTablesException {
        String text = text();
        for (E constant : constants) {
            if (CsvRow.word(constant).equals(text)) {
                return constant;
            }
        }
        throw fault(CsvRow.words(constants), "Write one of these.");
    }

    TemperatureUnit unit() throws UnreadableTablesException {
        return switch (text()) {
            case "C" -> TemperatureUnit.CELSIUS;
            case "F" -> TemperatureUnit.FAHRENHEIT;
            default -> throw fault("C or F", "Write the scale's letter.");
        };
    }

    UnreadableTablesException fault(String expected, String remedy) {
        String found = isAbsent() ? "nothing" : CsvSheet.shortened(node.toString());
        return new UnreadableTablesException(file, 0, pointer, found, expected, remedy);
    }
}
