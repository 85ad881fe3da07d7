package org.holdproof.core.lesson;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.TemperatureUnit;

/** Figures as the lesson says them. */
public final class InWords {
    private InWords() {}

    /** A figure with one decimal at most, none where it is whole. */
    public static String figure(double value) {
        String text = String.format(Locale.ROOT, "%.1f", value);
        return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
    }

    /** {@code 53.4 °C}. */
    public static String celsius(double celsius) {
        return figure(celsius) + " °C";
    }

    /** A temperature as printed, with the other scale beside it: {@code 130 °F (54.4 °C)}. */
    public static String boundary(Boundary at) {
        TemperatureUnit other =
                at.unit() == TemperatureUnit.CELSIUS ? TemperatureUnit.FAHRENHEIT : TemperatureUnit.CELSIUS;
        return at.text() + " (" + figure(other.fromCelsius(at.celsius())) + " " + other.symbol() + ")";
    }

    /** A time to the nearest quarter of an hour: {@code 7¼ h}. */
    public static String hours(double hours) {
        long quarters = Math.round(hours * 4);
        String part =
                switch ((int) (quarters % 4)) {
                    case 1 -> "¼";
                    case 2 -> "½";
                    case 3 -> "¾";
                    default -> "";
                };
        return (quarters >= 4 || part.isEmpty() ? quarters / 4 : "") + part + " h";
    }

    /** A time in minutes, as a person works it out: {@code 59 min}, {@code 5.5 min}. */
    static String minutes(double minutes) {
        return (minutes < 10 ? figure(minutes) : Long.toString(Math.round(minutes))) + " min";
    }

    static String list(List<String> words) {
        return words.size() < 2
                ? String.join("", words)
                : words.stream().limit(words.size() - 1).collect(Collectors.joining(", ")) + " and "
                        + words.get(words.size() - 1);
    }
}
