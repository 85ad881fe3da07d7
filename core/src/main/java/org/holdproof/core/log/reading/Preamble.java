package org.holdproof.core.log.reading;

import java.time.DateTimeException;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.holdproof.core.quantity.TemperatureUnit;

/**
 * What the lines above the table settle for all of it.
 *
 * @param unit the temperature unit, from a line such as {@code Unit: C}
 * @param zone the zone of the clock, from a line such as {@code Time zone: UTC+02:00}
 */
record Preamble(Optional<TemperatureUnit> unit, Optional<ZoneId> zone) {
    private static final Pattern ENTRY = Pattern.compile("\\s*#*\\s*([^:=]{1,60}?)\\s*[:=]+\\s*(.*?)[\\s:=]*");
    private static final Pattern UNIT_KEY = Pattern.compile(
            "(?:.*\\b)?(?:units?|scale|einheit|unité|unidad|eenheid|enhet)\\b.*", Pattern.UNICODE_CHARACTER_CLASS);
    private static final Pattern CELSIUS =
            Pattern.compile("(?:[°º˚]|deg(?:rees?)?\\.?)?\\s*(?:c|celsius|centigrade)|℃");
    private static final Pattern FAHRENHEIT = Pattern.compile("(?:[°º˚]|deg(?:rees?)?\\.?)?\\s*(?:f|fahrenheit)|℉");
    private static final Pattern ZONE_KEY =
            Pattern.compile(".*\\b(?:time ?zone|tz|utc offset|gmt offset|zeitzone)\\b.*");
    private static final Pattern OFFSET = Pattern.compile("(?:utc|gmt)?\\s*([+-])\\s*(\\d{1,2})(?::?(\\d{2}))?");

    /** @throws Refusal if two lines name different units */
    static Preamble of(List<SampleRow> rows) {
        Optional<TemperatureUnit> unit = Optional.empty();
        Optional<ZoneId> zone = Optional.empty();
        for (SampleRow row : rows) {
            Matcher entry = ENTRY.matcher(String.join(":", row.cells().subList(0, row.width())));
            if (!entry.matches()) {
                continue;
            }
            String key = entry.group(1).toLowerCase(Locale.ROOT);
            String text = SampleRow.strip(entry.group(2));
            String lower = text.toLowerCase(Locale.ROOT);
            if (UNIT_KEY.matcher(key).matches()) {
                if (lower.matches("(?:°\\s*)?k|kelvin")) {
                    throw new Refusal(
                            row.line(),
                            0,
                            Refusal.quote(text) + " as the unit",
                            "°C or °F",
                            "Export the log in °C or °F.");
                }
                Optional<TemperatureUnit> named = CELSIUS.matcher(lower).matches()
                        ? Optional.of(TemperatureUnit.CELSIUS)
                        : FAHRENHEIT.matcher(lower).matches()
                                ? Optional.of(TemperatureUnit.FAHRENHEIT)
                                : Optional.empty();
                if (named.isPresent() && unit.isPresent() && !named.equals(unit)) {
                    throw new Refusal(
                            row.line(),
                            0,
                            Refusal.quote(text) + " as the unit",
                            "the same unit as in a line above, " + unit.get().symbol(),
                            "Remove the wrong one of the two lines.");
                }
                unit = named.isPresent() ? named : unit;
            } else if (ZONE_KEY.matcher(key).matches()) {
                Optional<ZoneId> named = zone(text);
                zone = named.isPresent() ? named : zone;
            }
        }
        return new Preamble(unit, zone);
    }

    /** A zone by offset or by region; abbreviations such as CST, which mean several zones, name none. */
    static Optional<ZoneId> zone(String text) {
        String lower = text.toLowerCase(Locale.ROOT);
        if (lower.equals("utc") || lower.equals("gmt") || lower.equals("z")) {
            return Optional.of(ZoneOffset.UTC);
        }
        Matcher offset = OFFSET.matcher(lower);
        try {
            if (offset.matches()) {
                int minutes = Integer.parseInt(offset.group(2)) * 60
                        + Optional.ofNullable(offset.group(3))
                                .map(Integer::parseInt)
                                .orElse(0);
                return Optional.of(
                        ZoneOffset.ofTotalSeconds(minutes * (offset.group(1).equals("-") ? -60 : 60)));
            }
            return text.indexOf('/') > 0 ? Optional.of(ZoneId.of(text)) : Optional.empty();
        } catch (DateTimeException noZone) {
            return Optional.empty();
        }
    }
}
