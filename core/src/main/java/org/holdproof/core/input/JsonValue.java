package org.holdproof.core.input;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.holdproof.core.quantity.TemperatureUnit;

/** One value of a JSON document, with the place it stands at; asked for what it is not, it says what to write. */
public sealed interface JsonValue {
    Place place();

    /** What it is, as an error names it. */
    String words();

    /** An object, its members in the order of the file. */
    record Members(Place place, Map<String, JsonValue> values) implements JsonValue {
        public Members {
            values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
        }

        @Override
        public String words() {
            return "an object {…}";
        }
    }

    /** An array. */
    record Items(Place place, List<JsonValue> values) implements JsonValue {
        public Items {
            values = List.copyOf(values);
        }

        @Override
        public String words() {
            return "a list […]";
        }
    }

    /** A string. */
    record Text(Place place, String value) implements JsonValue {
        private static final int SHOWN = 60;

        @Override
        public String words() {
            return "'" + (value.length() > SHOWN ? value.substring(0, SHOWN) + "…" : value) + "'";
        }
    }

    /** A number as it is written; no file of ours has a place for one, since every figure carries its unit. */
    record Figure(Place place, String written) implements JsonValue {
        @Override
        public String words() {
            return "the bare number " + written;
        }
    }

    /** {@code true}, {@code false} or {@code null}. */
    record Literal(Place place, String words) implements JsonValue {}

    /** What is wrong with it. */
    default UnreadableInputException fault(String expected, String remedy) {
        return place().fault(words(), expected, remedy);
    }

    /** Refuses anything but an object with all the required members and no others than these and the optional ones. */
    default void requireFields(List<String> required, List<String> optional) throws UnreadableInputException {
        List<String> known = new ArrayList<>(required);
        known.addAll(optional);
        for (Map.Entry<String, JsonValue> member : members().entrySet()) {
            if (!known.contains(member.getKey())) {
                throw member.getValue()
                        .place()
                        .fault(
                                "the unknown member '" + member.getKey() + "'",
                                "one of " + String.join(", ", known),
                                NearestWord.to(member.getKey(), known)
                                        .map(near -> "Did you mean '" + near + "'?")
                                        .orElse("Correct the name, or take it out."));
            }
        }
        for (String name : required) {
            field(name);
        }
    }

    /** The members of an object. */
    default Map<String, JsonValue> members() throws UnreadableInputException {
        if (this instanceof Members object) {
            return object.values();
        }
        throw fault("an object", "Put its members between { and }.");
    }

    /** A member that must be there. */
    default JsonValue field(String name) throws UnreadableInputException {
        JsonValue member = members().get(name);
        if (member == null) {
            throw place().member(name).fault("nothing", "the member '" + name + "'", "Add the member '" + name + "'.");
        }
        return member;
    }

    /** A member that may be missing. */
    default Optional<JsonValue> fieldIfAny(String name) throws UnreadableInputException {
        return Optional.ofNullable(members().get(name));
    }

    /** The items of a list. */
    default List<JsonValue> items() throws UnreadableInputException {
        if (this instanceof Items list) {
            return list.values();
        }
        throw fault("a list", "Put it between [ and ].");
    }

    /** The items of a list of texts. */
    default List<String> texts() throws UnreadableInputException {
        List<String> texts = new ArrayList<>();
        for (JsonValue item : items()) {
            texts.add(item.text());
        }
        return texts;
    }

    /** A text that says something, without its outer blanks. */
    default String text() throws UnreadableInputException {
        String text = textOrEmpty();
        if (text.isEmpty()) {
            throw fault("text", "Write something between the quotes.");
        }
        return text;
    }

    /** A text without its outer blanks. */
    default String textOrEmpty() throws UnreadableInputException {
        if (this instanceof Text text) {
            return text.value().strip();
        }
        throw fault("text in double quotes", "Write the value as text.");
    }

    /** The constant whose word ({@link CsvRow#word}) stands here. */
    default <E extends Enum<E>> E choice(E[] constants) throws UnreadableInputException {
        String text = text();
        for (E constant : constants) {
            if (CsvRow.word(constant).equals(text)) {
                return constant;
            }
        }
        throw fault(CsvRow.words(constants), "Write one of these.");
    }

    /** {@code C} or {@code F}. */
    default TemperatureUnit unit() throws UnreadableInputException {
        return switch (text()) {
            case "C" -> TemperatureUnit.CELSIUS;
            case "F" -> TemperatureUnit.FAHRENHEIT;
            default -> throw fault("C or F", "Write the scale's letter.");
        };
    }
}
