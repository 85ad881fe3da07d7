package org.holdproof.core.rules.loading;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.holdproof.core.quantity.TemperatureUnit;

/** A value in a JSON file together with its place, for errors that say where. */
public final class JsonValue {
    private final String file;
    private final String pointer;
    private final long line;
    /** A map of fields, a list of items, a text, or {@link Other}. */
    private final Object value;

    JsonValue(String file, String pointer, long line, Object value) {
        this.file = file;
        this.pointer = pointer;
        this.line = line;
        this.value = value;
    }

    /** A number, a truth value or null: nothing the tables use. */
    record Other(String text) {}

    /** Refuses anything but an object with all the required fields and no others than these and the optional ones. */
    public void requireFields(List<String> required, List<String> optional) throws UnreadableTablesException {
        Map<String, JsonValue> fields = fields();
        for (Map.Entry<String, JsonValue> field : fields.entrySet()) {
            if (!required.contains(field.getKey()) && !optional.contains(field.getKey())) {
                throw field.getValue()
                        .fault(
                                "the field " + CsvSheet.shortened(field.getKey()),
                                "one of " + String.join(", ", required)
                                        + (optional.isEmpty() ? "" : ", " + String.join(", ", optional)),
                                "Correct the name, or take the field out.");
            }
        }
        for (String name : required) {
            if (!fields.containsKey(name)) {
                throw fault("no field " + name, "the field " + name, "Add the field as in the built-in file.");
            }
        }
    }

    private Map<String, JsonValue> fields() throws UnreadableTablesException {
        if (!(value instanceof Map<?, ?> map)) {
            throw fault("an object", "Lay the value out as in the built-in file.");
        }
        Map<String, JsonValue> fields = new LinkedHashMap<>();
        map.forEach((name, field) -> fields.put((String) name, (JsonValue) field));
        return fields;
    }

    /** A field that must be there. */
    public JsonValue field(String name) throws UnreadableTablesException {
        Optional<JsonValue> field = fieldIfAny(name);
        if (field.isEmpty()) {
            throw fault("no field " + name, "the field " + name, "Add the field as in the built-in file.");
        }
        return field.get();
    }

    Optional<JsonValue> fieldIfAny(String name) throws UnreadableTablesException {
        return Optional.ofNullable(fields().get(name));
    }

    List<JsonValue> items() throws UnreadableTablesException {
        if (!(value instanceof List<?> list)) {
            throw fault("a list", "Put the values into square brackets.");
        }
        List<JsonValue> items = new ArrayList<>();
        list.forEach(item -> items.add((JsonValue) item));
        return items;
    }

    public List<String> texts() throws UnreadableTablesException {
        List<String> texts = new ArrayList<>();
        for (JsonValue item : items()) {
            texts.add(item.text());
        }
        return texts;
    }

    public String text() throws UnreadableTablesException {
        String text = textOrEmpty();
        if (text.isEmpty()) {
            throw fault("text", "Fill the value.");
        }
        return text;
    }

    String textOrEmpty() throws UnreadableTablesException {
        if (!(value instanceof String text)) {
            throw fault("text in double quotes", "Write the value as text.");
        }
        return text.strip();
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
        String found;
        if (value instanceof String text) {
            found = text.isEmpty() ? "an empty text" : CsvSheet.shortened(text);
        } else if (value instanceof Other other) {
            found = CsvSheet.shortened(other.text());
        } else {
            found = value instanceof List<?> ? "a list" : "an object";
        }
        return fault(found, expected, remedy);
    }

    private UnreadableTablesException fault(String found, String expected, String remedy) {
        return new UnreadableTablesException(file, line, pointer, found, expected, remedy);
    }
}
