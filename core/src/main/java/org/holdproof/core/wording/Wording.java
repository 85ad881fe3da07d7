package org.holdproof.core.wording;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.TemperatureUnit;

/** How figures are put into a check's sentences: the reader's scales, the kitchen's clock. */
public final class Wording {
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("d MMM HH:mm", Locale.ENGLISH);

    private final List<TemperatureUnit> units;
    private final ZoneId zone;

    public Wording(List<TemperatureUnit> units, ZoneId zone) {
        this.units = units;
        this.zone = zone;
    }

    /** A temperature in each of the reader's scales: {@code 130.0 °F (54.4 °C)}. */
    public String temperature(double celsius) {
        String leading = inUnit(celsius, units.get(0));
        String rest = units.stream().skip(1).map(unit -> inUnit(celsius, unit)).collect(Collectors.joining(", "));
        return rest.isEmpty() ? leading : leading + " (" + rest + ")";
    }

    /** A difference of temperatures in the leading scale: {@code 0.9 °F}. */
    public String difference(double celsius) {
        TemperatureUnit unit = units.get(0);
        return String.format(Locale.ROOT, "%.1f %s", unit.differenceFromCelsius(celsius), unit.symbol());
    }

    /** A rule's temperature as printed, and in the other scale what it is exactly. */
    public String boundary(Boundary boundary) {
        TemperatureUnit other =
                boundary.unit() == TemperatureUnit.CELSIUS ? TemperatureUnit.FAHRENHEIT : TemperatureUnit.CELSIUS;
        if (!units.contains(other)) {
            return boundary.text();
        }
        return boundary.text()
                + String.format(Locale.ROOT, " (%.2f %s)", other.fromCelsius(boundary.celsius()), other.symbol());
    }

    /** An instant on the kitchen's clock. */
    public String clock(long epochMillis) {
        return CLOCK.format(Instant.ofEpochMilli(epochMillis).atZone(zone));
    }

    /** A duration as a person says it: {@code 5 h 59 min}, {@code 112 min}, {@code 14 s}. */
    public static String minutes(double minutes) {
        return TimeScale.of(minutes).text(minutes);
    }

    /** Two durations in one unit: {@code between 2 h 55 min and 3 h 8 min}; one where they read the same. */
    public static String between(double oneMinutes, double otherMinutes) {
        TimeScale scale = TimeScale.of(oneMinutes, otherMinutes);
        String low = scale.text(Math.min(oneMinutes, otherMinutes));
        String high = scale.text(Math.max(oneMinutes, otherMinutes));
        return low.equals(high) ? low : "between " + low + " and " + high;
    }

    /** A word of an enum as records and profiles write it: {@code other-poultry}. */
    public static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static String inUnit(double celsius, TemperatureUnit unit) {
        return String.format(Locale.ROOT, "%.1f %s", unit.fromCelsius(celsius), unit.symbol());
    }
}
