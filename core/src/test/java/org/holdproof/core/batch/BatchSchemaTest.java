package org.holdproof.core.batch;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SpecVersion.VersionFlag;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.quantity.QuantityKind;
import org.holdproof.core.quantity.UnreadableQuantityException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** The published schema and the reader take and refuse the same records, as far as a schema can say. */
class BatchSchemaTest {
    private static final JsonSchemaFactory DRAFT = JsonSchemaFactory.getInstance(VersionFlag.V202012);
    private static final JsonNode SCHEMA_TREE = schemaTree();
    private static final JsonSchema SCHEMA = DRAFT.getSchema(SCHEMA_TREE);

    private static final Map<QuantityKind, String> DEFINITIONS = Map.of(
            QuantityKind.SHORT_TIME, "shortTime",
            QuantityKind.TEMPERATURE, "temperature",
            QuantityKind.TEMPERATURE_DIFFERENCE, "temperatureDifference",
            QuantityKind.LENGTH, "length",
            QuantityKind.WEIGHT, "weight",
            QuantityKind.ALTITUDE, "altitude",
            QuantityKind.DAYS, "days",
            QuantityKind.PERCENT, "percent",
            QuantityKind.PARTS_PER_MILLION, "partsPerMillion");

    private static JsonNode schemaTree() {
        try (InputStream in = Objects.requireNonNull(
                BatchReader.class.getResourceAsStream("/org/holdproof/schema/batch-record.schema.json"))) {
            return SampleBatch.JSON.readTree(in);
        } catch (IOException e) {
            throw new ExceptionInInitializerError(e);
        }
    }

    private static boolean schemaTakes(JsonNode record) {
        return SCHEMA.validate(record).isEmpty();
    }

    private static boolean readerTakes(JsonNode record) {
        try {
            SampleBatch.read(record);
            return true;
        } catch (UnreadableInputException e) {
            return false;
        }
    }

    @Test
    void theSampleIsTakenByBoth() throws Exception {
        assertThat(SCHEMA.validate(SampleBatch.tree())).isEmpty();
        assertThat(SampleBatch.read(SampleBatch.tree()).batch()).isEqualTo("T-0001");
    }

    @Test
    void theSchemaIsASchema() {
        assertThat(DRAFT.getSchema(SchemaLocation.of(VersionFlag.V202012.getId()))
                        .validate(SCHEMA_TREE))
                .isEmpty();
    }

    @Test
    void itsWordsAreTheReaders() {
        assertThat(words("/properties/product/properties/species/enum"))
                .isEqualTo(Stream.of(Product.Species.values())
                        .map(Product.Species::title)
                        .toList());
        assertThat(words("/properties/product/properties/form/enum"))
                .isEqualTo(Stream.of(Product.Form.values())
                        .map(Product.Form::title)
                        .toList());
        assertThat(words("/properties/product/properties/shape/enum"))
                .isEqualTo(Stream.of(Product.Shape.values())
                        .map(Product.Shape::title)
                        .toList());
        assertThat(words("/properties/stages/items/oneOf/0/properties/stage/enum"))
                .isEqualTo(Stream.of(Stage.Kind.values())
                        .filter(Stage.Kind::isMoment)
                        .map(Stage.Kind::title)
                        .toList());
        List<String> spells = Stream.of(Stage.Kind.values())
                .filter(kind -> !kind.isMoment())
                .map(Stage.Kind::title)
                .toList();
        assertThat(SCHEMA_TREE
                        .at("/properties/stages/items/oneOf/1/properties/stage/const")
                        .asText())
                .isEqualTo(Stage.Kind.SMOKE.title());
        assertThat(words("/properties/stages/items/oneOf/2/properties/stage/enum"))
                .isEqualTo(spells.subList(1, spells.size()));
        assertThat(words("/properties/stages/items/oneOf/1/properties/moisture/properties/means/enum"))
                .isEqualTo(Stream.of(Moisture.Means.values())
                        .map(Moisture.Means::title)
                        .toList());
        assertThat(words("/properties/end/properties/how/enum"))
                .isEqualTo(Stream.of(Ending.How.values()).map(Ending.How::title).toList());
        assertThat(SCHEMA_TREE.at("/$defs/columns/properties").fieldNames())
                .toIterable()
                .containsExactlyElementsOf(
                        Stream.of(ColumnRole.values()).map(ColumnRole::title).toList());
        assertThat(words("/properties/stages/contains/properties/stage/enum")).isEqualTo(spells);
        assertThat(Stream.of(0, 1, 2).map(i -> SCHEMA_TREE
                        .at("/$defs/instrument/properties/lastCheck/oneOf/" + i + "/properties/method/const")
                        .asText()))
                .containsExactlyElementsOf(Stream.of(Instrument.Method.values())
                        .map(Instrument.Method::title)
                        .toList());
    }

    private static List<String> words(String pointer) {
        List<String> words = new ArrayList<>();
        SCHEMA_TREE.at(pointer).forEach(word -> words.add(word.asText()));
        return words;
    }

    @ParameterizedTest(name = "{0} = {1}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            textBlock =
                    """
        /batch                         | 412
        /batch                         | ""
        /batch                         | " "
        /batch                         | "a\\nb"
        /batch                         | "a\\u202Eb"
        /kitchen                       | []
        /kitchen/colour                | "red"
        /kitchen/timeZone              | ""
        /product/species               | "pig"
        /product/form                  | "ground"
        /product/shape                 | "brick"
        /product/shape                 | null
        /product/fat                   | 12
        /product/fat                   | "12"
        /product/fat                   | "-1 %"
        /product/thickness             | 65
        /product/thickness             | null
        /product/thickness             | "65"
        /product/thickness             | "65,5 mm"
        /product/thickness             | "65 kg"
        /product/weight                | "4,2 kg"
        /product/nitrite               | "120 %"
        /product/brine                 | true
        /product/thicknes              | "65 mm"
        /instrument/tolerance          | 0.5
        /instrument/tolerance          | "-0.5 °C"
        /instrument/lastCheck/method   | "steam"
        /instrument/lastCheck/method   | "ice point"
        /instrument/lastCheck/method   | "comparison"
        /instrument/lastCheck/reference | "99 °C"
        /instrument/lastCheck/date     | "1/4/2031"
        /instrument/lastCheck/date     | "2031-13-01"
        /instrument/checkEvery         | "30"
        /columns/core                  | []
        /columns/core                  | "Core 1"
        /columns/core/1                | "Core 1"
        /columns/water                 | []
        /columns/air                   | [{"column": "Smoker", "until": "2031-04-12T18:00"}]
        /columns/air                   | [{"from": "2031-04-12T18:00"}]
        /columns/air                   | [12]
        /log/clock                     | {"ahead": "7 min", "behind": "7 min"}
        /log/clock                     | {"within": "1 min"}
        /log/clock                     | {"ahead": "7"}
        /log/units                     | {"Core 1": "K"}
        /log/date                      | "12.4.2031"
        /logs                          | []
        /logs                          | [{"file": "a.csv"}]
        /end                           | {"how": "eaten", "at": "2031-04-13T18:00"}
        /end                           | {"how": "served"}
        /log/unit                      | "K"
        /log/dates                     | "dym"
        /log/start                     | "noon"
        /stages                        | []
        /stages                        | [{"stage": "serve", "at": "2031-04-12T14:00"}]
        /stages                        | {}
        /stages/0/stage                | "smoking"
        /stages/0/stage                | "bag"
        /stages/0/at                   | "2031-04-12T14:00"
        /stages/0/from                 | "2031-04-12 14:00"
        /stages/0/from                 | "2031-04-12T25:00"
        /stages/0/from                 | "0031-04-12T14:00"
        /stages/0/setPoint             | "110"
        /stages/1/setPoint             | "20 °C"
        /stages/1/to                   | "2031-04-12T20:11"
        /roles                         | {}
        /roles/operator                | ""
        /notes                         | "x"
        """)
    void bothRefuse(String pointer, String value) {
        ObjectNode record = SampleBatch.with(pointer, value);
        assertThat(readerTakes(record)).as("reader").isFalse();
        assertThat(schemaTakes(record)).as("schema").isFalse();
    }

    /** Faults of the right form: only the reader, which knows figures, zones and the order of time, can see them. */
    @ParameterizedTest(name = "{0} = {1}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            textBlock =
                    """
        /product/thickness     | "501 mm"
        /kitchen/timeZone      | "America/Chicgo"
        /columns/bath/0        | "core 1"
        /columns/air           | [{"column": "Core 1", "from": "2031-04-12T18:00"}]
        /columns/air           | [{"column": "A", "from": "2031-04-12T18:00", "to": "2031-04-12T17:00"}]
        /log/clock             | {"ahead": "7 min", "within": "2 h"}
        /end                   | {"how": "served", "at": "2031-04-12T13:00"}
        /instrument/lastCheck/date | "2031-02-30"
        /stages/0/to           | "2031-04-12T13:00"
        /stages/0/to           | "2031-04-12T21:00"
        /stages/1/at           | "2031-04-12T13:00"
        """)
    void theReaderRefusesWhatASchemaCannotSee(String pointer, String value) {
        ObjectNode record = SampleBatch.with(pointer, value);
        assertThat(readerTakes(record)).as("reader").isFalse();
        assertThat(schemaTakes(record)).as("schema").isTrue();
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void bothTakeEveryRecordOfTheGenerator(long seed) {
        ObjectNode record = new RandomBatch(new Random(seed)).record();
        assertThat(SCHEMA.validate(record)).as("schema, %s", record).isEmpty();
        assertThat(readerTakes(record)).as("reader, %s", record).isTrue();
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theyAgreeOnEverySingleChangeOfForm(long seed) {
        Random random = new Random(seed);
        ObjectNode record = new RandomBatch(random).record();
        String change = changeOne(record, random);
        assertThat(readerTakes(record)).as("%s in %s", change, record).isEqualTo(schemaTakes(record));
    }

    static LongStream seeds() {
        return LongStream.range(0, 1000);
    }

    /** Deletes a member, adds one, or gives one a value of another type or without sense. */
    private static String changeOne(ObjectNode record, Random random) {
        List<ObjectNode> objects = new ArrayList<>();
        collect(record, objects);
        ObjectNode object = objects.get(random.nextInt(objects.size()));
        List<String> names = new ArrayList<>();
        object.fieldNames().forEachRemaining(names::add);
        // an end missing inside the row of stages is a fault of order, which a schema cannot see
        names.remove("to");
        String name = names.get(random.nextInt(names.size()));
        List<String> values =
                List.of("null", "1", "0.0", "true", "[]", "{}", "[1]", "\"\"", "\"?\"", "\"12\"", "\"1,5 mm\"");
        switch (random.nextInt(3)) {
            case 0 -> {
                object.remove(name);
                return "without " + name;
            }
            case 1 -> {
                object.put(name + "s", "x");
                return "with " + name + "s";
            }
            default -> {
                // a free text may be anything, so a text is no fault there
                String value = values.get(random.nextInt(values.size()));
                object.set(name, SampleBatch.json(value));
                return name + " = " + value;
            }
        }
    }

    private static void collect(JsonNode node, List<ObjectNode> objects) {
        if (node instanceof ObjectNode object && !object.isEmpty()) {
            objects.add(object);
        }
        node.forEach(child -> collect(child, objects));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theyAgreeOnTheFormOfAQuantity(long seed) {
        Random random = new Random(seed);
        List<String> parts = List.of(
                "", " ", "\u00a0", "\u202f", "+", "±", "0", "65", "1.5", ".5", "7.", "1,5", "1e3", "°C", "C", "ºF", "℃",
                "K", "mm", "cm", "m", "in", "\"", "″", "g", "kg", "lb", "lbs", "oz", "ft", "d", "day", "days", "%",
                "ppm", "mg/kg", "\t");
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < 4; i++) {
            int from = i == 1 ? 6 : 0;
            text.append(parts.get(from + random.nextInt((i == 3 ? parts.size() : i == 1 ? 13 : 37) - from)));
        }
        for (QuantityKind kind : QuantityKind.values()) {
            boolean read;
            try {
                kind.parse(text.toString());
                read = true;
            } catch (UnreadableQuantityException e) {
                read = false;
            }
            String pattern = SCHEMA_TREE
                    .at("/$defs/" + DEFINITIONS.get(kind) + "/pattern")
                    .asText();
            assertThat(text.toString().matches(pattern))
                    .as("%s as %s", text, kind)
                    .isEqualTo(read);
        }
    }

    /** Records of the right form and sense, drawn at random. */
    private static final class RandomBatch {
        private final Random random;

        RandomBatch(Random random) {
            this.random = random;
        }

        ObjectNode record() {
            ObjectNode record = SampleBatch.JSON.createObjectNode();
            text(record, "batch");
            text(record, "authority");
            ObjectNode kitchen = record.putObject("kitchen");
            text(kitchen, "name");
            if (random.nextBoolean()) {
                kitchen.put("place", random.nextBoolean() ? "" : "Here");
            }
            kitchen.put("timeZone", pick("Europe/Dublin", "America/Chicago", "UTC", "Australia/Lord_Howe", "+02:00"));
            product(record.putObject("product"));
            if (random.nextBoolean()) {
                instrument(record.putObject("instrument"));
                columns(record.putObject("columns"));
                if (random.nextBoolean()) {
                    log(record.putObject("log"));
                }
            } else {
                ArrayNode logs = record.putArray("logs");
                for (String file : List.of("a.csv", "b.csv")) {
                    ObjectNode log = logs.addObject();
                    log.put("file", file);
                    instrument(log.putObject("instrument"));
                    columns(log.putObject("columns"));
                    log(log);
                }
            }
            stages(record.putArray("stages"));
            if (random.nextBoolean()) {
                record.putObject("end")
                        .put("how", random(Ending.How.values()).title())
                        .put("at", "2033-01-01T00:00");
            }
            ObjectNode roles = record.putObject("roles");
            text(roles, "operator");
            if (random.nextBoolean()) {
                text(roles, "reviewer");
            }
            return record;
        }

        private void product(ObjectNode product) {
            text(product, "name");
            product.put("species", random(Product.Species.values()).title());
            product.put("form", random(Product.Form.values()).title());
            product.put("shape", random(Product.Shape.values()).title());
            maybe(product, "cut", "loin");
            maybe(product, "fat", figure(0, 59) + " %");
            maybe(product, "thickness", pick(figure(1, 499) + " mm", figure(1, 49) + "cm", figure(1, 18) + "\""));
            maybe(product, "weight", pick(figure(1, 499) + " kg", figure(1, 999) + "g", figure(1, 99) + "\u00a0lb"));
            maybe(product, "nitrite", pick(figure(0, 1999) + " ppm", figure(0, 200) + " mg/kg"));
            maybe(product, "brine", figure(0, 26) + "%");
        }

        private void instrument(ObjectNode instrument) {
            text(instrument, "id");
            instrument.put("tolerance", pick(figure(0, 4) + " °C", "±" + figure(0, 8) + " °F", figure(0, 4) + " K"));
            maybe(instrument, "checkEvery", (1 + random.nextInt(3660)) + " d");
            if (random.nextBoolean()) {
                ObjectNode check = instrument.putObject("lastCheck");
                check.put("date", "20%02d-%02d-%02d".formatted(random.nextInt(100), day(12), day(28)));
                switch (random(Instrument.Method.values())) {
                    case ICE_POINT ->
                        check.put("method", "ice point").put("reading", pick("−0.2 °C", "0 °C", figure(0, 60) + " °F"));
                    case BOILING_POINT ->
                        check.put("method", "boiling point")
                                .put("reading", figure(60, 119) + " °C")
                                .put("altitude", pick("-400 m", figure(0, 5999) + " m", figure(0, 19000) + " ft"));
                    case COMPARISON ->
                        check.put("method", "comparison")
                                .put("reading", figure(0, 99) + " °C")
                                .put("reference", figure(0, 99) + " °C");
                }
            }
        }

        private void columns(ObjectNode columns) {
            int next = 0;
            for (String role : List.of("core", "bath", "air", "surface")) {
                int count = random.nextInt(4);
                if (role.equals("core") || count > 0) {
                    ArrayNode headings = columns.putArray(role);
                    for (int i = 0; i < Math.max(count, role.equals("core") ? 1 : 0); i++) {
                        if (random.nextInt(4) > 0) {
                            headings.add("T" + next++);
                        } else {
                            ObjectNode use = headings.addObject();
                            use.put("column", "T" + next++);
                            maybe(use, "probe", "P" + next);
                            maybe(use, "from", "2031-04-12T14:00");
                            maybe(use, "to", "2031-04-12T15:00");
                        }
                    }
                }
            }
        }

        private void log(ObjectNode log) {
            maybe(log, "unit", pick("C", "F"));
            maybe(log, "dates", pick("dmy", "mdy", "ymd"));
            maybe(log, "timeZone", "UTC");
            maybe(log, "start", "2031-04-12T14:00:00.5+01:00");
            maybe(log, "date", "2031-04-12");
            if (random.nextBoolean()) {
                log.putObject("units").put("T0", pick("C", "F"));
            }
            if (random.nextBoolean()) {
                ObjectNode clock = log.putObject("clock");
                clock.put(pick("ahead", "behind"), pick("7 min", "40s", figure(0, 20) + " h"));
                maybe(clock, "within", pick("1 min", "10 s"));
            }
        }

        private void stages(ArrayNode stages) {
            int count = 1 + random.nextInt(5);
            int spell = random.nextInt(count);
            int minute = random.nextInt(600);
            for (int i = 0; i < count; i++) {
                ObjectNode stage = stages.addObject();
                if (i != spell && random.nextInt(3) == 0) {
                    stage.put("stage", pick("bag", "serve")).put("at", time(minute));
                } else {
                    stage.put("stage", pick("smoke", "bath", "hot hold", "chill", "store", "reheat"))
                            .put("from", time(minute));
                    minute += 1 + random.nextInt(600);
                    stage.put("to", time(minute));
                    maybe(stage, "setPoint", pick(figure(0, 399) + " °C", figure(0, 700) + " °F", "-18 °C"));
                }
            }
        }

        private static String time(int minute) {
            return "2031-04-%02dT%02d:%02d".formatted(10 + minute / 1440, minute / 60 % 24, minute % 60);
        }

        private String figure(int low, int high) {
            int whole = low + random.nextInt(high - low + 1);
            return random.nextBoolean() ? Integer.toString(whole) : whole + "." + random.nextInt(100);
        }

        private int day(int last) {
            return 1 + random.nextInt(last);
        }

        private void text(ObjectNode object, String name) {
            object.put(name, pick("A", "Küche 7", "x y", "\u00a0z", "肉", "1"));
        }

        private void maybe(ObjectNode object, String name, String value) {
            if (random.nextBoolean()) {
                object.put(name, value);
            }
        }

        private String pick(String... values) {
            return random(values);
        }

        private <T> T random(T[] values) {
            return values[random.nextInt(values.length)];
        }
    }
}
