package org.holdproof.core.batch;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** One value of a JSON document, with the place it stands at. */
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

    /** A number as it is written; a batch record has no place for one, since every figure carries its unit. */
    record Figure(Place place, String written) implements JsonValue {
        @Override
        public String words() {
            return "the bare number " + written;
        }
    }

    /** {@code true}, {@code false} or {@code null}. */
    record Literal(Place place, String words) implements JsonValue {}
}
