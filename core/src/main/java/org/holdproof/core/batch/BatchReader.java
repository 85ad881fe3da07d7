package org.holdproof.core.batch;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.input.JsonValue;
import org.holdproof.core.input.NearestWord;
import org.holdproof.core.input.Place;
import org.holdproof.core.input.StrictJson;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.quantity.QuantityKind;

/**
 * Reads a batch record from JSON (RFC 8259, UTF-8, at most 1 MiB). Its members are described by the JSON Schema
 * {@code org/holdproof/schema/batch-record.schema.json} on the class path; what a schema cannot say (order of the
 * stages, plausible figures, times a clock shows twice, columns named twice) is checked here.
 *
 * <p>Every quantity is a text with its unit. A time without an offset is the kitchen's own. Nothing is guessed: a
 * member that must be there and is not, a unit left out, a word nobody knows is a fault that names its place.
 */
public final class BatchReader {
    private static final int LARGEST = 1 << 20;

    private static final PlausibleRange THICKNESS = new PlausibleRange(QuantityKind.LENGTH, 1, 500, "1 mm to 500 mm");
    private static final PlausibleRange WEIGHT = new PlausibleRange(QuantityKind.WEIGHT, 0.001, 500, "1 g to 500 kg");
    private static final PlausibleRange FAT = new PlausibleRange(QuantityKind.PERCENT, 0, 60, "0 % to 60 %");
    /** Up to a saturated brine, 26.4 % near 20 °C (from memory, unconfirmed). */
    private static final PlausibleRange BRINE = new PlausibleRange(QuantityKind.PERCENT, 0, 27, "0 % to 27 %");

    private static final PlausibleRange NITRITE =
            new PlausibleRange(QuantityKind.PARTS_PER_MILLION, 0, 2000, "0 ppm to 2000 ppm");
    private static final PlausibleRange TEMPERATURE =
            new PlausibleRange(QuantityKind.TEMPERATURE, -40, 400, "-40 °C to 400 °C");

    private BatchReader() {}

    /**
     * Reads a batch record from a file.
     *
     * @throws IOException if the file cannot be opened or read
     * @throws UnreadableInputException if it is not a batch record
     */
    public static BatchRecord read(Path file) throws IOException, UnreadableInputException {
        try (InputStream in = Files.newInputStream(file)) {
            return parse(file.toString(), in.readNBytes(LARGEST + 1));
        }
    }

    /**
     * Reads a batch record from memory.
     *
     * @param fileName the file's name for messages
     * @param json the file's bytes
     * @throws UnreadableInputException if it is not a batch record
     */
    public static BatchRecord parse(String fileName, byte[] json) throws UnreadableInputException {
        if (json.length > LARGEST) {
            throw Place.file(fileName)
                    .fault(
                            "more than 1 MiB",
                            "a batch record, a page or two of JSON",
                            "Check that the log and the batch record were not swapped.");
        }
        JsonValue document = StrictJson.read(fileName, json, "a batch record");
        requireAnswers(document);
        Section record = Section.of(
                document,
                "a batch record",
                List.of(
                        "$schema",
                        "batch",
                        "authority",
                        "kitchen",
                        "product",
                        "instrument",
                        "columns",
                        "log",
                        "logs",
                        "stages",
                        "roles",
                        "approval",
                        "end",
                        Outcome.WEIGHTS,
                        Outcome.TENDERNESS));
        record.optionalText("$schema");
        String batch = record.text("batch");
        String authority = record.text("authority");
        Kitchen kitchen = kitchen(record.section("kitchen", "name", "place", "timeZone"));
        Product product = product(record.section(
                "product",
                "name",
                "species",
                "cut",
                "form",
                "fat",
                "shape",
                "thickness",
                "weight",
                "nitrite",
                "brine"));
        List<LogSource> logs = new LogSections(record, kitchen.zone()).read();
        List<Stage> stages = stages(record, kitchen.zone());
        Section roles = record.section("roles", "operator", "reviewer");
        return new BatchRecord(
                batch,
                kitchen,
                authority,
                product,
                logs,
                stages,
                new Roles(roles.text("operator"), roles.optionalText("reviewer")),
                record.optionalText("approval"),
                end(record, stages, kitchen.zone()),
                Outcome.of(record));
    }

    /** A draft leaves questions as texts that begin with a question mark and a blank. */
    private static void requireAnswers(JsonValue value) throws UnreadableInputException {
        if (value instanceof JsonValue.Members object) {
            for (JsonValue member : object.values().values()) {
                requireAnswers(member);
            }
        } else if (value instanceof JsonValue.Items list) {
            for (JsonValue item : list.values()) {
                requireAnswers(item);
            }
        } else if (value instanceof JsonValue.Text text && text.value().startsWith("? ")) {
            throw text.fault(
                    "an answer to a question a draft left open",
                    "Write the answer in its place, without the question mark.");
        }
    }

    private static Kitchen kitchen(Section kitchen) throws UnreadableInputException {
        return new Kitchen(kitchen.text("name"), kitchen.optionalText("place"), zone(kitchen));
    }

    static ZoneId zone(Section section) throws UnreadableInputException {
        String expected = "a time zone of the IANA list such as 'Europe/Dublin'";
        JsonValue.Text text = Section.textOf(section.required("timeZone", expected), expected);
        try {
            return ZoneId.of(text.value());
        } catch (DateTimeException e) {
            throw text.place()
                    .fault(
                            text.words(),
                            expected,
                            NearestWord.to(text.value(), ZoneId.getAvailableZoneIds())
                                    .map(near -> "Did you mean '" + near + "'?")
                                    .orElse("Write the continent and the zone's leading city."));
        }
    }

    private static Product product(Section product) throws UnreadableInputException {
        return new Product(
                product.text("name"),
                product.choice("species", Product.Species.values(), Product.Species::title),
                product.optionalText("cut"),
                product.choice("form", Product.Form.values(), Product.Form::title),
                product.optionalQuantity("fat", FAT),
                product.choice("shape", Product.Shape.values(), Product.Shape::title),
                product.optionalQuantity("thickness", THICKNESS),
                product.optionalQuantity("weight", WEIGHT),
                product.optionalQuantity("nitrite", NITRITE),
                product.optionalQuantity("brine", BRINE));
    }

    private static List<Stage> stages(Section record, ZoneId zone) throws UnreadableInputException {
        List<Stage> stages = new ArrayList<>();
        Optional<Stage> spell = Optional.empty();
        for (JsonValue item : record.items("stages")) {
            Section members =
                    Section.of(item, "a stage", List.of("stage", "at", "from", "to", "setPoint", "moisture", "mark"));
            Stage stage = stage(members, zone);
            String begins = stage.kind().isMoment() ? "at" : "from";
            if (!stages.isEmpty()
                    && stage.from().isBefore(stages.get(stages.size() - 1).from())) {
                throw early(members, begins, stages.get(stages.size() - 1), "the stages in the order of time", zone);
            }
            if (!stage.kind().isMoment()) {
                if (spell.isPresent() && spell.get().to().isEmpty()) {
                    throw early(members, begins, spell.get(), "a stage without an end to be the last", zone);
                }
                if (spell.isPresent() && stage.from().isBefore(spell.get().to().orElseThrow())) {
                    throw early(members, begins, spell.get(), "one stage to end before the next begins", zone);
                }
                spell = Optional.of(stage);
            }
            stages.add(stage);
        }
        if (spell.isEmpty()) {
            throw record.required("stages", "")
                    .place()
                    .fault(
                            "no stage with a beginning and an end",
                            "at least one, such as the bath",
                            "Add the stages the food went through, with their times.");
        }
        return stages;
    }

    private static Optional<Ending> end(Section record, List<Stage> stages, ZoneId zone)
            throws UnreadableInputException {
        Optional<Section> end = record.optionalSection("end", "how", "at");
        if (end.isEmpty()) {
            return Optional.empty();
        }
        Ending ending = new Ending(
                end.get().choice("how", Ending.How.values(), Ending.How::title),
                end.get().instant("at", zone));
        Stage last = stages.get(stages.size() - 1);
        if (ending.at().isBefore(last.to().orElse(last.from()))) {
            throw early(end.get(), "at", last, "an end after the last stage", zone);
        }
        return Optional.of(ending);
    }

    private static UnreadableInputException early(
            Section stage, String begins, Stage before, String expected, ZoneId zone) throws UnreadableInputException {
        JsonValue time = stage.required(begins, "");
        String spell = before.kind().isMoment()
                ? " was at " + onClock(before.from(), zone)
                : " ran from " + onClock(before.from(), zone)
                        + before.to().map(to -> " to " + onClock(to, zone)).orElse(" without an end");
        return time.place()
                .fault(
                        time.words() + " after a '" + before.kind().title() + "' that" + spell,
                        expected,
                        "Correct the times or the order.");
    }

    private static String onClock(Instant instant, ZoneId zone) {
        return instant.atZone(zone).toOffsetDateTime().toString();
    }

    private static Stage stage(Section stage, ZoneId zone) throws UnreadableInputException {
        Stage.Kind kind = stage.choice("stage", Stage.Kind.values(), Stage.Kind::title);
        if (kind.isMoment()) {
            misplaced(stage, kind, "'at', for it is a moment", "from", "to", "setPoint", "moisture", "mark");
            return new Stage(kind, stage.instant("at", zone), Optional.empty(), OptionalDouble.empty());
        }
        misplaced(stage, kind, "'from' and 'to', for it lasts", "at");
        Instant from = stage.instant("from", zone);
        Optional<Instant> to = stage.has("to") ? Optional.of(stage.instant("to", zone)) : Optional.empty();
        if (to.isPresent() && !to.get().isAfter(from)) {
            JsonValue end = stage.required("to", "");
            throw end.place()
                    .fault(
                            end.words(),
                            "an end after the beginning, "
                                    + stage.required("from", "").words(),
                            "Correct the times; past midnight the date is the next day's.");
        }
        return new Stage(
                kind,
                from,
                to,
                stage.optionalQuantity("setPoint", TEMPERATURE),
                moisture(stage, kind, zone),
                mark(stage, kind));
    }

    private static String mark(Section stage, Stage.Kind kind) throws UnreadableInputException {
        if (kind != Stage.Kind.TIME_ONLY) {
            misplaced(stage, kind, "a mark on food kept by time alone only", "mark");
        }
        return stage.optionalText("mark");
    }

    /** What kept the surface moist, throughout the stage or between two times of its own. */
    private static Optional<Moisture> moisture(Section stage, Stage.Kind kind, ZoneId zone)
            throws UnreadableInputException {
        Optional<Section> moisture = stage.optionalSection("moisture", "means", "from", "to");
        if (moisture.isEmpty()) {
            return Optional.empty();
        }
        if (kind != Stage.Kind.SMOKE) {
            misplaced(stage, kind, "no moisture, which is asked of a smoker only", "moisture");
        }
        Moisture.Means means = moisture.get().choice("means", Moisture.Means.values(), Moisture.Means::title);
        if (!moisture.get().has("from") && !moisture.get().has("to")) {
            return Optional.of(new Moisture(means, OptionalDouble.empty()));
        }
        Instant from = moisture.get().instant("from", zone);
        Instant to = moisture.get().instant("to", zone);
        if (!to.isAfter(from)) {
            JsonValue end = moisture.get().required("to", "");
            throw end.place().fault(end.words(), "an end after the beginning", "Correct the times of the moisture.");
        }
        return Optional.of(
                new Moisture(means, OptionalDouble.of((to.toEpochMilli() - from.toEpochMilli()) / 60_000.0)));
    }

    private static void misplaced(Section stage, Stage.Kind kind, String instead, String... names)
            throws UnreadableInputException {
        for (String name : names) {
            if (stage.has(name)) {
                throw stage.required(name, "")
                        .place()
                        .fault(
                                "'" + name + "' in the stage '" + kind.title() + "'",
                                instead,
                                "Leave '" + name + "' out.");
            }
        }
    }
}
