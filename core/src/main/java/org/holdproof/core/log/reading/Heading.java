package org.holdproof.core.log.reading;

import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.holdproof.core.quantity.TemperatureUnit;

/**
 * What a column's heading says.
 *
 * @param text the heading as printed, without blanks at its ends
 * @param name the heading without its temperature unit
 * @param unit the temperature unit it states
 * @param words its words in lower case
 */
record Heading(String text, String name, Optional<TemperatureUnit> unit, Set<String> words) {
    private static final Pattern STATED = Pattern.compile(
            "[\\s,;:/_\\-]*[(\\[{<]?\\s*(?:\\bin\\s+)?(?:"
                    + "(?:[\u00b0\u00ba\u02da\ufffd]|(?<!\\p{L})(?:deg(?:rees?)?|grad)\\.?)[\\s_]*([cf])(?!\\p{L})"
                    + "|(?:(?:[\u00b0\u00ba\u02da]|(?<!\\p{L})(?:deg(?:rees?)?|grad)\\.?)[\\s_]*)?(?<!\\p{L})(celsius|centigrade|fahrenheit)"
                    + "|([\u2103\u2109]))\\s*[)\\]}>]?",
            Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);
    private static final Pattern BRACKETED =
            Pattern.compile("[\\s,_]*[(\\[{]\\s*([cf])\\s*[)\\]}]", Pattern.CASE_INSENSITIVE);
    private static final Pattern BARE = Pattern.compile("(?:([\\s_,/.\\-]+)([CFcf])|(?<=\\p{Ll})([CF]))$");
    private static final Pattern WORD = Pattern.compile("\\p{Lu}+(?!\\p{Ll})|\\p{Lu}?\\p{Ll}+|[%#]");

    private static final Pattern KELVIN = Pattern.compile("kelvin|°\\s*k\\b|[(\\[{]\\s*k\\s*[)\\]}]|[_ ]k$");
    private static final Pattern PARTS = Pattern.compile(
            "[x×*]\\s*10+\\b|1\\s*/\\s*10+\\b|\\b0[.,]0*1\\s*(?:°|deg|c\\b|f\\b)|\\btenths?\\b|zehntel|dixi[eè]mes?|\\bm°|/\\s*10+\\b");

    private static final Set<String> TEMPERATURE_WORDS = Set.of(
            "temp",
            "temps",
            "temperature",
            "temperatures",
            "temperatur",
            "temperaturen",
            "température",
            "températures",
            "temperatura",
            "temperaturas",
            "temperatuur",
            "lämpötila",
            "thermocouple",
            "thermometer",
            "kerntemperatur",
            "thermo",
            "tc",
            "rtd",
            "pt");
    private static final Set<String> PLACE_WORDS = Set.of(
            "core", "kern", "bath", "water", "air", "ambient", "meat", "food", "product", "pit", "oven", "smoker",
            "grill", "chamber", "surface", "fridge", "chiller", "freezer", "bag", "centre", "center", "inside");
    private static final Set<String> LABEL_WORDS = Set.of(
            "probe",
            "channel",
            "chan",
            "ch",
            "sensor",
            "zone",
            "unit",
            "input",
            "port",
            "group",
            "point",
            "line",
            "position",
            "rack",
            "shelf",
            "batch",
            "load",
            "tank",
            "vessel",
            "logger",
            "node");
    private static final Set<String> OTHER_WORDS = Set.of(
            "%",
            "#",
            "rh",
            "humidity",
            "humid",
            "feuchte",
            "humedad",
            "hum",
            "battery",
            "batt",
            "bat",
            "batterie",
            "voltage",
            "volt",
            "volts",
            "mv",
            "pressure",
            "press",
            "hpa",
            "mbar",
            "psi",
            "bar",
            "rssi",
            "signal",
            "index",
            "no",
            "nr",
            "row",
            "record",
            "records",
            "sample",
            "serial",
            "id",
            "event",
            "alarm",
            "alert",
            "status",
            "state",
            "note",
            "notes",
            "comment",
            "comments",
            "remark",
            "remarks",
            "mark",
            "operator",
            "user",
            "fan",
            "speed",
            "rpm",
            "co",
            "power",
            "watt",
            "watts",
            "duty",
            "weight",
            "mass",
            "kg",
            "co2",
            "lux",
            "light",
            "door",
            "lat",
            "lon",
            "latitude",
            "longitude",
            "gps",
            "ph",
            "level",
            "time",
            "date",
            "timer",
            "elapsed",
            "seq",
            "sequence",
            "number",
            "num",
            "count",
            "counter",
            "quality",
            "valid",
            "flag",
            "error",
            "code",
            "name",
            "type",
            "lid",
            "valve",
            "pump",
            "flow",
            "stage",
            "step",
            "program",
            "day");
    private static final Set<String> CLOCK_WORDS = Set.of(
            "time",
            "times",
            "date",
            "datum",
            "zeit",
            "uhrzeit",
            "zeitpunkt",
            "zeitstempel",
            "timestamp",
            "datetime",
            "clock",
            "heure",
            "fecha",
            "hora",
            "tijd",
            "tijdstip",
            "ora",
            "data",
            "dato",
            "tid",
            "tidspunkt",
            "elapsed",
            "duration",
            "epoch",
            "unix",
            "second",
            "seconds",
            "sec",
            "secs",
            "minute",
            "minutes",
            "mins",
            "hour",
            "hours",
            "when",
            "logged",
            "recorded",
            "measured",
            "utc",
            "gmt",
            "localtime",
            "runtime",
            "stamp",
            "moment",
            "horodatage",
            "tempo",
            "instant");
    private static final Set<String> ELAPSED_WORDS = Set.of(
            "elapsed",
            "duration",
            "since",
            "runtime",
            "run",
            "laufzeit",
            "dauer",
            "relative",
            "offset",
            "durée",
            "stopwatch");
    private static final Set<String> SETTING_WORDS =
            Set.of("set", "setpoint", "sp", "target", "limit", "threshold", "alarm", "soll", "sollwert");
    private static final Pattern NUMBERED_PROBE =
            Pattern.compile("(?:probe|channel|chan|ch|sensor|tc|t)[\\s_#.-]*\\d+", Pattern.CASE_INSENSITIVE);
    private static final Pattern BARE_T = Pattern.compile("t(?:\\s*[/(\\[].*)?", Pattern.CASE_INSENSITIVE);
    private static final Set<String> OTHER_CLOCK_WORDS = Set.of(
            "upload",
            "uploaded",
            "sync",
            "synced",
            "synchronised",
            "synchronized",
            "received",
            "export",
            "exported",
            "server",
            "modified",
            "alarm",
            "created",
            "sent");

    Heading {
        words = Set.copyOf(words);
    }

    /**
     * Reads a heading. A letter C or F at the end of one is a unit only where it cannot be a probe's letter: not beside
     * headings that end in other letters, nor behind a word such as "probe" or "channel".
     *
     * @param raw the heading's cell
     * @param all all headings of the row
     */
    static Heading of(String raw, List<String> all) {
        String text = raw.strip();
        Set<String> words = words(text);
        EnumSet<TemperatureUnit> units = EnumSet.noneOf(TemperatureUnit.class);
        String name = text;
        Matcher stated = STATED.matcher(text);
        while (stated.find()) {
            units.add(unitOf(stated.group()));
        }
        if (units.isEmpty()) {
            Matcher bracketed = BRACKETED.matcher(text);
            if (bracketed.find()) {
                units.add(unitOf(bracketed.group(1)));
                name = bracketed.replaceFirst("");
            } else {
                Matcher bare = BARE.matcher(text);
                if (bare.find() && bareIsUnit(text.substring(0, bare.start()), bare, words, all)) {
                    units.add(unitOf(bare.group().substring(bare.group().length() - 1)));
                    name = text.substring(0, bare.start());
                }
            }
        } else if (units.size() == 1) {
            name = stated.replaceAll("");
        }
        Optional<TemperatureUnit> unit =
                units.size() == 1 ? Optional.of(units.iterator().next()) : Optional.empty();
        return new Heading(text, tidy(name), unit, words);
    }

    private static boolean bareIsUnit(String stem, Matcher bare, Set<String> words, List<String> all) {
        boolean temperature = words.stream().anyMatch(TEMPERATURE_WORDS::contains);
        if (!temperature) {
            Optional<String> mark = Optional.ofNullable(bare.group(1));
            boolean place = words.stream().anyMatch(PLACE_WORDS::contains);
            boolean label = words.stream().anyMatch(LABEL_WORDS::contains);
            boolean strongMark = mark.isPresent() && !mark.get().isBlank();
            if (label || stem.isBlank() || mark.isEmpty() || !(place || strongMark)) {
                return false;
            }
        }
        for (String other : all) {
            String sibling = other.strip();
            if (sibling.length() > stem.length()
                    && sibling.startsWith(stem)
                    && sibling.substring(stem.length()).matches("[\\s_,/.\\-]*[A-Za-z]")
                    && !sibling.matches(".*[CFcf]")) {
                return false;
            }
        }
        return true;
    }

    private static TemperatureUnit unitOf(String statement) {
        String lower = statement.toLowerCase(Locale.ROOT);
        if (lower.contains("fahrenheit") || lower.indexOf('\u2109') >= 0) {
            return TemperatureUnit.FAHRENHEIT;
        }
        if (lower.contains("celsius") || lower.contains("centigrade") || lower.indexOf('\u2103') >= 0) {
            return TemperatureUnit.CELSIUS;
        }
        String letters = lower.replaceAll("[^\\p{L}]", "");
        return letters.endsWith("f") ? TemperatureUnit.FAHRENHEIT : TemperatureUnit.CELSIUS;
    }

    private static String tidy(String name) {
        return name.replaceAll("^[\\s,;:/_\\-]+|[\\s,;:/_\\-]+$", "").strip();
    }

    private static Set<String> words(String text) {
        Set<String> words = new HashSet<>();
        Matcher word = WORD.matcher(text);
        while (word.find()) {
            words.add(word.group().toLowerCase(Locale.ROOT));
        }
        return words;
    }

    private boolean has(Set<String> vocabulary) {
        for (String word : words) {
            if (vocabulary.contains(word)) {
                return true;
            }
        }
        return false;
    }

    /** Whether it says that the column is a temperature: by a unit, or by the word where nothing else is meant. */
    boolean isTemperature() {
        return !has(SETTING_WORDS) && (unit.isPresent() || (has(TEMPERATURE_WORDS) && !has(OTHER_WORDS)));
    }

    /** Whether it names a place where a kitchen measures temperature, or a probe by its number, and nothing else. */
    boolean isPlace() {
        return (has(PLACE_WORDS) || NUMBERED_PROBE.matcher(text).find()) && !isOther();
    }

    /** Whether it says that the column is something else than a measured temperature. */
    boolean isOther() {
        return text.isEmpty() || has(SETTING_WORDS) || (unit.isEmpty() && has(OTHER_WORDS));
    }

    /** Whether it may head a clock. */
    boolean isClock() {
        boolean unitAlone = words.size() == 1 && elapsedUnitMillis() > 0;
        boolean clock = has(CLOCK_WORDS)
                || has(ELAPSED_WORDS)
                || unitAlone
                || BARE_T.matcher(text).matches();
        return clock && unit.isEmpty() && !has(TEMPERATURE_WORDS);
    }

    /** Whether it heads a clock that tells something else than when the reading was taken. */
    boolean isOtherClock() {
        return has(OTHER_CLOCK_WORDS);
    }

    /** Whether it says that the time is elapsed time. */
    boolean isElapsed() {
        return has(ELAPSED_WORDS);
    }

    /** The one unit of time it names, in milliseconds, or 0. */
    double elapsedUnitMillis() {
        double millis = 0;
        for (String word : words) {
            double other =
                    switch (word) {
                        case "ms", "msec", "millis", "millisecond", "milliseconds" -> 1;
                        case "s", "sec", "secs", "second", "seconds", "sek", "sekunden", "secondes", "segundos" -> 1000;
                        case "min", "mins", "minute", "minutes", "minuten", "minutos" -> 60_000;
                        case "h", "hr", "hrs", "hour", "hours", "std", "stunden", "heures", "horas" -> 3_600_000;
                        default -> 0;
                    };
            if (other > 0 && millis > 0) {
                return 0;
            }
            millis = Math.max(millis, other);
        }
        return millis;
    }

    /** A scale of temperature that is neither °C nor °F in whole degrees, where it states one. */
    Optional<String> otherScale() {
        String lower = text.toLowerCase(Locale.ROOT);
        if (KELVIN.matcher(lower).find()) {
            return Optional.of("kelvin");
        }
        return PARTS.matcher(lower).find() ? Optional.of("parts of a degree") : Optional.empty();
    }

    /** Whether it prints a pattern such as {@code mm:ss}, in whatever letter case. */
    boolean hasPattern(String pattern) {
        return text.toLowerCase(Locale.ROOT).matches(".*(?<![a-z:])" + pattern + "(?![a-z:]).*");
    }

    /** Whether it states that the clock runs on coordinated universal time. */
    boolean isUniversalTime() {
        return words.contains("utc") || words.contains("gmt");
    }
}
