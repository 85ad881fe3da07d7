package org.holdproof.core.batch;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.holdproof.core.input.JsonValue;
import org.holdproof.core.input.Place;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.log.DateOrder;
import org.holdproof.core.log.LogSettings;
import org.holdproof.core.quantity.QuantityKind;
import org.holdproof.core.quantity.TemperatureUnit;

/** Reads what a batch record says of its logs: one, in members of their own, or a list of them. */
final class LogSections {
    private static final String[] SETTINGS = {"unit", "units", "dates", "timeZone", "start", "date"};
    private static final String[] ROLES = {"core", "bath", "air", "surface"};
    private static final PlausibleRange CLOCK =
            new PlausibleRange(QuantityKind.SHORT_TIME, 0, 400 * 86_400.0, "0 s to 9600 h");
    private static final PlausibleRange CLOCK_WITHIN =
            new PlausibleRange(QuantityKind.SHORT_TIME, 0, 3600, "0 s to 1 h");
    private static final int MOST_LOGS = 32;

    private final Section record;
    private final ZoneId kitchenZone;

    LogSections(Section record, ZoneId kitchenZone) {
        this.record = record;
        this.kitchenZone = kitchenZone;
    }

    List<LogSource> read() throws UnreadableInputException {
        List<LogSource> logs = record.has("logs") ? list() : List.of(single());
        if (logs.stream().flatMap(log -> log.columns().stream()).noneMatch(use -> use.role() == ColumnRole.CORE)) {
            Place place = record.has("logs")
                    ? record.place().member("logs")
                    : record.place().member("columns").member("core");
            throw place.fault(
                    "no core column",
                    "the heading of at least one column with a probe in the food",
                    "Add it, as in \"core\": [\"Core 1\"].");
        }
        return named(logs);
    }

    private LogSource single() throws UnreadableInputException {
        Optional<Section> settings = record.optionalSection("log", with(SETTINGS, "clock"));
        return new LogSource(
                Optional.empty(),
                InstrumentSection.read(instrument(record)),
                settings.isPresent() ? settings(settings.get()) : defaults(),
                settings.isPresent() ? clock(settings.get()) : ClockError.NONE,
                columns(record.section("columns", ROLES)));
    }

    private List<LogSource> list() throws UnreadableInputException {
        for (String single : List.of("instrument", "columns", "log")) {
            if (record.has(single)) {
                throw record.required(single, "")
                        .place()
                        .fault(
                                "'" + single + "' beside 'logs'",
                                "what belongs to a log inside its own item of 'logs'",
                                "Move it into the log it belongs to.");
            }
        }
        List<JsonValue> items = record.items("logs");
        if (items.isEmpty() || items.size() > MOST_LOGS) {
            throw record.required("logs", "")
                    .place()
                    .fault(items.size() + " logs", "1 to " + MOST_LOGS, "List the logs of this cook.");
        }
        List<LogSource> logs = new ArrayList<>();
        Set<String> files = new HashSet<>();
        for (JsonValue item : items) {
            Section log = Section.of(item, "a log", List.of(with(SETTINGS, "file", "instrument", "columns", "clock")));
            String file = log.text("file");
            if (!files.add(file.toLowerCase(Locale.ROOT))) {
                throw log.required("file", "")
                        .place()
                        .fault("'" + file + "' a second time", "each log once", "Give each log a file of its own.");
            }
            logs.add(new LogSource(
                    Optional.of(file),
                    InstrumentSection.read(instrument(log)),
                    settings(log),
                    clock(log),
                    columns(log.section("columns", ROLES))));
        }
        return logs;
    }

    private static Section instrument(Section holder) throws UnreadableInputException {
        return holder.section("instrument", "id", "tolerance", "lastCheck", "checkEvery");
    }

    private static String[] with(String[] names, String... more) {
        List<String> all = new ArrayList<>(List.of(names));
        all.addAll(List.of(more));
        return all.toArray(new String[0]);
    }

    private LogSettings defaults() {
        return new LogSettings(Optional.empty(), Optional.empty(), Optional.of(kitchenZone), Optional.empty());
    }

    private LogSettings settings(Section log) throws UnreadableInputException {
        Map<String, TemperatureUnit> units = new LinkedHashMap<>();
        if (log.has("units")) {
            Map<String, JsonValue> written = log.required("units", "").members();
            Section section = Section.of(log.required("units", ""), "'units'", List.copyOf(written.keySet()));
            for (String heading : written.keySet()) {
                units.put(heading, section.choice(heading, TemperatureUnit.values(), LogSections::letter));
            }
        }
        return new LogSettings(
                log.has("unit")
                        ? Optional.of(log.choice("unit", TemperatureUnit.values(), LogSections::letter))
                        : Optional.empty(),
                units,
                log.has("dates")
                        ? Optional.of(log.choice("dates", DateOrder.values(), LogSections::initials))
                        : Optional.empty(),
                Optional.of(log.has("timeZone") ? BatchReader.zone(log) : kitchenZone),
                log.has("start") ? Optional.of(log.instant("start", kitchenZone)) : Optional.empty(),
                log.has("date")
                        ? Optional.of(TimeText.date(
                                Section.textOf(log.required("date", "a date"), "a date such as '2031-04-01'")))
                        : Optional.empty());
    }

    private static ClockError clock(Section log) throws UnreadableInputException {
        Optional<Section> clock = log.optionalSection("clock", "ahead", "behind", "within");
        if (clock.isEmpty()) {
            return ClockError.NONE;
        }
        if (clock.get().has("ahead") == clock.get().has("behind")) {
            throw clock.get()
                    .place()
                    .fault(
                            clock.get().has("ahead") ? "'ahead' and 'behind'" : "neither 'ahead' nor 'behind'",
                            "how far the logger's clock was ahead of the kitchen's, or behind",
                            "Write one of them, as in \"ahead\": \"7 min\"; \"0 s\" where it agreed.");
        }
        double seconds = clock.get().has("ahead")
                ? clock.get().quantity("ahead", CLOCK)
                : -clock.get().quantity("behind", CLOCK);
        double within = clock.get().optionalQuantity("within", CLOCK_WITHIN).orElse(0);
        return new ClockError(Math.round(seconds * 1000), Math.round(within * 1000));
    }

    private List<ColumnUse> columns(Section columns) throws UnreadableInputException {
        Map<String, List<ColumnUse>> before = new HashMap<>();
        Map<ColumnUse, String> pointers = new HashMap<>();
        List<ColumnUse> uses = new ArrayList<>();
        for (ColumnRole role : ColumnRole.values()) {
            for (JsonValue item : columns.has(role.title()) ? columns.items(role.title()) : List.<JsonValue>of()) {
                ColumnUse use = use(item, role);
                List<ColumnUse> same =
                        before.computeIfAbsent(use.heading().toLowerCase(Locale.ROOT), any -> new ArrayList<>());
                for (ColumnUse other : same) {
                    if (use.overlaps(other)) {
                        throw item.place()
                                .fault(
                                        "'" + use.heading() + "', named at " + pointers.get(other) + " already",
                                        "each column in one role at a time",
                                        "Keep it where it belongs; if the probe was moved, say 'from' and 'to' in both"
                                                + " places.");
                    }
                }
                same.add(use);
                pointers.putIfAbsent(use, item.place().pointer().orElse(""));
                uses.add(use);
            }
        }
        return uses;
    }

    private ColumnUse use(JsonValue item, ColumnRole role) throws UnreadableInputException {
        if (!(item instanceof JsonValue.Members)) {
            String heading = Section.line(item);
            return new ColumnUse(heading, role, heading, Optional.empty(), Optional.empty());
        }
        Section use = Section.of(item, "a column", List.of("column", "probe", "from", "to"));
        String heading = use.text("column");
        Optional<Instant> from = use.has("from") ? Optional.of(use.instant("from", kitchenZone)) : Optional.empty();
        Optional<Instant> to = use.has("to") ? Optional.of(use.instant("to", kitchenZone)) : Optional.empty();
        if (from.isPresent() && to.isPresent() && !to.get().isAfter(from.get())) {
            JsonValue end = use.required("to", "");
            throw end.place()
                    .fault(
                            end.words(),
                            "an end after the beginning, "
                                    + use.required("from", "").words(),
                            "Correct the times; past midnight the date is the next day's.");
        }
        return new ColumnUse(heading, role, use.has("probe") ? use.text("probe") : heading, from, to);
    }

    /** A name that two roles share gets its role behind it, so that each name means one place. */
    private static List<LogSource> named(List<LogSource> logs) {
        Map<String, Set<ColumnRole>> roles = new HashMap<>();
        logs.stream().flatMap(log -> log.columns().stream()).forEach(use -> roles.computeIfAbsent(
                        use.probe().toLowerCase(Locale.ROOT), any -> new HashSet<>())
                .add(use.role()));
        return logs.stream()
                .map(log -> new LogSource(
                        log.file(),
                        log.instrument(),
                        log.settings(),
                        log.clock(),
                        log.columns().stream()
                                .map(use -> roles.getOrDefault(use.probe().toLowerCase(Locale.ROOT), Set.of())
                                                        .size()
                                                > 1
                                        ? new ColumnUse(
                                                use.heading(),
                                                use.role(),
                                                use.probe() + " (" + use.role().title() + ")",
                                                use.from(),
                                                use.to())
                                        : use)
                                .toList()))
                .toList();
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
}
