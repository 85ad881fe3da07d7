package org.holdproof.core.batch;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.batch.Instrument.InstrumentCheck;
import org.holdproof.core.batch.Instrument.Method;
import org.holdproof.core.input.JsonValue;
import org.holdproof.core.input.NearestWord;
import org.holdproof.core.input.Place;
import org.holdproof.core.input.StrictJson;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.log.DateOrder;
import org.holdproof.core.log.LogSettings;
import org.holdproof.core.quantity.QuantityKind;
import org.holdproof.core.quantity.TemperatureUnit;

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
    private static final PlausibleRange TOLERANCE =
            new PlausibleRange(QuantityKind.TEMPERATURE_DIFFERENCE, 0, 5, "0 °C to 5 °C");
    private static final PlausibleRange ICE_READING =
            new PlausibleRange(QuantityKind.TEMPERATURE, -20, 20, "-20 °C to 20 °C (ice melts at 0 °C, 32 °F)");
    private static final PlausibleRange BOILING_READING = new PlausibleRange(
            QuantityKind.TEMPERATURE, 60, 120, "60 °C to 120 °C (water boils at 100 °C, 212 °F, at sea level)");
    private static final PlausibleRange TEMPERATURE =
            new PlausibleRange(QuantityKind.TEMPERATURE, -40, 400, "-40 °C to 400 °C");
    private static final PlausibleRange ALTITUDE =
            new PlausibleRange(QuantityKind.ALTITUDE, -430, 6000, "-430 m to 6000 m");
    private static final PlausibleRange CHECK_EVERY = new PlausibleRange(QuantityKind.DAYS, 1, 3660, "1 d to 3660 d");

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
        Section record = Section.of(
                StrictJson.read(fileName, json, "a batch record"),
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
                        "stages",
                        "roles",
                        "approval",
                        "end"));
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
        Instrument instrument = instrument(record.section("instrument", "id", "tolerance", "lastCheck", "checkEvery"));
        ColumnRoles columns = columns(record.section("columns", "core", "bath", "air"));
        LogSettings log = log(record.optionalSection("log", "unit", "dates", "timeZone", "start"), kitchen.zone());
        List<Stage> stages = stages(record, kitchen.zone());
        Section roles = record.section("roles", "operator", "reviewer");
        return new BatchRecord(
                batch,
                kitchen,
                authority,
                product,
                instrument,
                columns,
                log,
                stages,
                new Roles(roles.text("operator"), roles.optionalText("reviewer")),
                record.optionalText("approval"),
                end(record, stages, kitchen.zone()));
    }

    private static Kitchen kitchen(Section kitchen) throws UnreadableInputException {
        return new Kitchen(kitchen.text("name"), kitchen.optionalText("place"), zone(kitchen));
    }

    private static ZoneId zone(Section section) throws UnreadableInputException {
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

    private static Instrument instrument(Section instrument) throws UnreadableInputException {
        String id = instrument.text("id");
        double tolerance = instrument.quantity("tolerance", TOLERANCE);
        Optional<Section> lastCheck =
                instrument.optionalSection("lastCheck", "date", "method", "reading", "reference", "altitude");
        return new Instrument(
                id,
                tolerance,
                lastCheck.isEmpty() ? Optional.empty() : Optional.of(check(lastCheck.get())),
                instrument.optionalQuantity("checkEvery", CHECK_EVERY));
    }

    private static InstrumentCheck check(Section check) throws UnreadableInputException {
        Method method = check.choice("method", Method.values(), Method::title);
        String expectedDate = "a date such as '2031-04-01'";
        return new InstrumentCheck(
                TimeText.date(Section.textOf(check.required("date", expectedDate), expectedDate)),
                method,
                check.quantity(
                        "reading",
                        switch (method) {
                            case ICE_POINT -> ICE_READING;
                            case BOILING_POINT -> BOILING_READING;
                            case COMPARISON -> TEMPERATURE;
                        }),
                onlyWith(Method.COMPARISON, method, check, "reference", TEMPERATURE),
                onlyWith(Method.BOILING_POINT, method, check, "altitude", ALTITUDE));
    }

    /** A figure one method needs and the others have no use for. */
    private static OptionalDouble onlyWith(
            Method needing, Method method, Section check, String name, PlausibleRange range)
            throws UnreadableInputException {
        if (method == needing) {
            return OptionalDouble.of(check.quantity(name, range));
        }
        if (check.has(name)) {
            throw check.required(name, "")
                    .place()
                    .fault(
                            "'" + name + "' with the method '" + method.title() + "'",
                            "'" + name + "' only with '" + needing.title() + "'",
                            "Correct the method, or leave '" + name + "' out.");
        }
        return OptionalDouble.empty();
    }

    private static ColumnRoles columns(Section columns) throws UnreadableInputException {
        Map<String, String> pointers = new HashMap<>();
        List<List<String>> roles = new ArrayList<>();
        for (String role : List.of("core", "bath", "air")) {
            List<String> headings = new ArrayList<>();
            for (JsonValue.Text heading : columns.lines(role)) {
                String before = pointers.putIfAbsent(
                        heading.value().toLowerCase(Locale.ROOT),
                        heading.place().pointer().orElse(""));
                if (before != null) {
                    throw heading.place()
                            .fault(
                                    heading.words() + ", named at " + before + " already",
                                    "each column once, in one role",
                                    "Keep it where it belongs.");
                }
                headings.add(heading.value());
            }
            roles.add(headings);
        }
        if (roles.get(0).isEmpty()) {
            throw columns.place()
                    .member("core")
                    .fault(
                            "no core column",
                            "the heading of at least one column with a probe in the food",
                            "Add it, as in \"core\": [\"Core 1\"].");
        }
        return new ColumnRoles(roles.get(0), roles.get(1), roles.get(2));
    }

    private static LogSettings log(Optional<Section> given, ZoneId kitchenZone) throws UnreadableInputException {
        if (given.isEmpty()) {
            return new LogSettings(Optional.empty(), Optional.empty(), Optional.of(kitchenZone), Optional.empty());
        }
        Section log = given.get();
        ZoneId zone = log.has("timeZone") ? zone(log) : kitchenZone;
        return new LogSettings(
                log.has("unit")
                        ? Optional.of(log.choice("unit", TemperatureUnit.values(), BatchReader::letter))
                        : Optional.empty(),
                log.has("dates")
                        ? Optional.of(log.choice("dates", DateOrder.values(), BatchReader::initials))
                        : Optional.empty(),
                Optional.of(zone),
                log.has("start") ? Optional.of(log.instant("start", kitchenZone)) : Optional.empty());
    }

    private static String letter(TemperatureUnit unit) {
        return switch (unit) {
            case CELSIUS -> "C";
            case FAHRENHEIT -> "F";
        };
    }

    private static String initials(DateOrder order) {
        return switch (order) {
            case DAY_MONTH_YEAR -> "dmy";
            case MONTH_DAY_YEAR -> "mdy";
            case YEAR_MONTH_DAY -> "ymd";
        };
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
