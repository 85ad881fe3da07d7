package org.holdproof.core.batch;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.holdproof.core.input.JsonValue;
import org.holdproof.core.input.NearestWord;
import org.holdproof.core.input.Place;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.quantity.UnreadableQuantityException;
import org.holdproof.core.wording.Printable;

/** One object of a batch record, asked for its members by name; what it cannot give it explains. */
final class Section {
    private static final int LONGEST_TEXT = 200;

    private final Place place;
    private final Map<String, JsonValue> values;

    private Section(Place place, Map<String, JsonValue> values) {
        this.place = place;
        this.values = values;
    }

    /** The object, once every member is one of the known. */
    static Section of(JsonValue value, String what, List<String> known) throws UnreadableInputException {
        if (!(value instanceof JsonValue.Members members)) {
            throw value.place()
                    .fault(
                            value.words(),
                            what + ", an object with " + String.join(", ", known),
                            "Put its members between { and }.");
        }
        for (Map.Entry<String, JsonValue> member : members.values().entrySet()) {
            if (!known.contains(member.getKey())) {
                throw member.getValue()
                        .place()
                        .fault(
                                "the unknown member '" + member.getKey() + "'",
                                "one of " + String.join(", ", known),
                                NearestWord.to(member.getKey(), known)
                                        .map(near -> "Did you mean '" + near + "'?")
                                        .orElse("Delete it, or put it where it belongs."));
            }
        }
        return new Section(members.place(), members.values());
    }

    Place place() {
        return place;
    }

    boolean has(String name) {
        return values.containsKey(name);
    }

    JsonValue required(String name, String expected) throws UnreadableInputException {
        JsonValue value = values.get(name);
        if (value == null) {
            throw place.member(name).fault("nothing", expected, "Add the member '" + name + "'.");
        }
        return value;
    }

    Section section(String name, String... known) throws UnreadableInputException {
        return of(required(name, "an object with " + String.join(", ", known)), "'" + name + "'", List.of(known));
    }

    Optional<Section> optionalSection(String name, String... known) throws UnreadableInputException {
        return has(name) ? Optional.of(section(name, known)) : Optional.empty();
    }

    List<JsonValue> items(String name) throws UnreadableInputException {
        JsonValue value = required(name, "a list");
        if (value instanceof JsonValue.Items items) {
            return items.values();
        }
        throw value.place().fault(value.words(), "a list", "Put it between [ and ].");
    }

    /** A line of text that says something. */
    String text(String name) throws UnreadableInputException {
        return line(required(name, "a text"));
    }

    /** A line of text, or an empty one where the member is missing or blank. */
    String optionalText(String name) throws UnreadableInputException {
        JsonValue value = values.get(name);
        return value == null
                        || (value instanceof JsonValue.Text text && text.value().isBlank())
                ? ""
                : line(value);
    }

    /** A line of text that says something, with its outer blanks off. */
    static String line(JsonValue value) throws UnreadableInputException {
        String line = textOf(value, "a text").value().strip();
        if (line.isEmpty()
                || line.codePointCount(0, line.length()) > LONGEST_TEXT
                || !line.codePoints().allMatch(Printable::is)) {
            throw value.place()
                    .fault(
                            value.words(),
                            "one line of text of at most " + LONGEST_TEXT + " characters",
                            line.isEmpty()
                                    ? "Write something between the quotes."
                                    : "Shorten it, and leave out line breaks and control characters.");
        }
        return line;
    }

    /** The value where it is a string. */
    static JsonValue.Text textOf(JsonValue value, String expected) throws UnreadableInputException {
        if (value instanceof JsonValue.Text text) {
            return text;
        }
        throw value.place()
                .fault(
                        value.words(),
                        expected,
                        value.words().equals("null")
                                ? "Leave the member out where nothing is known."
                                : "Write it between quotes.");
    }

    /** One of an enumeration's words. */
    <E> E choice(String name, E[] choices, Function<E, String> title) throws UnreadableInputException {
        List<String> words = Stream.of(choices).map(title).toList();
        String expected =
                "one of " + words.stream().map(word -> "'" + word + "'").collect(Collectors.joining(", "));
        JsonValue.Text text = textOf(required(name, expected), expected);
        int place = words.indexOf(text.value());
        if (place < 0) {
            throw text.place()
                    .fault(
                            text.words(),
                            expected,
                            NearestWord.to(text.value(), words)
                                    .map(near -> "Did you mean '" + near + "'?")
                                    .orElse("Choose the one that fits."));
        }
        return choices[place];
    }

    double quantity(String name, PlausibleRange range) throws UnreadableInputException {
        JsonValue value = required(name, range.kind().expected());
        if (!(value instanceof JsonValue.Text text)) {
            String example = "\"" + range.kind().example() + "\"";
            throw value.place()
                    .fault(
                            value.words(),
                            range.kind().expected(),
                            value instanceof JsonValue.Figure
                                    ? "Write it between quotes with its unit, as in " + example + "."
                                    : "Write it as in " + example + ", or leave the member out where it may be.");
        }
        double figure;
        try {
            figure = range.kind().parse(text.value());
        } catch (UnreadableQuantityException e) {
            throw text.place().fault(text.words(), e.expected(), e.remedy());
        }
        if (!range.holds(figure)) {
            throw text.place()
                    .fault(
                            text.words(),
                            range.kind().words() + " from " + range.words(),
                            "Check the figure and its unit.");
        }
        return figure;
    }

    OptionalDouble optionalQuantity(String name, PlausibleRange range) throws UnreadableInputException {
        return has(name) ? OptionalDouble.of(quantity(name, range)) : OptionalDouble.empty();
    }

    Instant instant(String name, ZoneId zone) throws UnreadableInputException {
        String expected = "a time such as '2031-04-12T14:00'";
        return TimeText.instant(textOf(required(name, expected), expected), zone);
    }

    /** Lines of text; none where the member is missing. */
    List<JsonValue.Text> lines(String name) throws UnreadableInputException {
        List<JsonValue.Text> lines = new ArrayList<>();
        for (JsonValue item : has(name) ? items(name) : List.<JsonValue>of()) {
            lines.add(new JsonValue.Text(item.place(), line(item)));
        }
        return lines;
    }
}
