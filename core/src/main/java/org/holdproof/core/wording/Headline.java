package org.holdproof.core.wording;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Comparison;
import org.holdproof.core.quantity.TemperatureUnit;

/** One line for a question and its figures, the same wherever it is shown. */
public final class Headline {
    private static final String MINUTES = "min";

    private final Wording wording;

    public Headline(Wording wording) {
        this.wording = wording;
    }

    /**
     * The line: {@code Cooled in time, stage 1: 95 to 104 min (at most 120 min)}.
     *
     * @param title the question in a few words
     * @param measured what the record shows
     * @param limit the limit, in {@code unit}
     * @param unit {@code min}, a temperature scale's sign or another unit
     */
    public String of(
            String title,
            Optional<Bounded> measured,
            Comparison comparison,
            OptionalDouble limit,
            Optional<String> unit) {
        if (measured.isEmpty()) {
            return title;
        }
        String line = title + ": " + figures(measured.get(), limit, unit);
        return limit.isPresent()
                ? line + " (" + comparison.words() + " " + limit(measured.get(), limit.getAsDouble(), unit) + ")"
                : line;
    }

    /** The same of a difference of temperatures, such as a thermometer's error. */
    public String ofDifference(
            String title,
            Optional<Bounded> measured,
            Comparison comparison,
            OptionalDouble limit,
            TemperatureUnit unit) {
        if (measured.isEmpty()) {
            return title;
        }
        String line = title + ": "
                + range(
                        difference(
                                Math.min(measured.get().worst(), measured.get().best()), unit),
                        difference(
                                Math.max(measured.get().worst(), measured.get().best()), unit));
        return limit.isPresent()
                ? line + " (" + comparison.words() + " " + difference(limit.getAsDouble(), unit) + ")"
                : line;
    }

    private String difference(double value, TemperatureUnit unit) {
        return wording.difference(unit.differenceToCelsius(value));
    }

    private String limit(Bounded figure, double limit, Optional<String> unit) {
        return unit.filter(MINUTES::equals).isPresent()
                ? Durations.telling(List.of(figure.worst(), figure.best()), OptionalDouble.of(limit))
                        .exactly(limit)
                : figures(Bounded.exactly(limit), OptionalDouble.empty(), unit);
    }

    private String figures(Bounded figure, OptionalDouble limit, Optional<String> unit) {
        double low = Math.min(figure.worst(), figure.best());
        double high = Math.max(figure.worst(), figure.best());
        if (unit.filter(MINUTES::equals).isPresent()) {
            Durations durations = Durations.telling(List.of(low, high), limit);
            return range(durations.text(low), durations.text(high));
        }
        for (TemperatureUnit scale : TemperatureUnit.values()) {
            if (unit.filter(scale.symbol()::equals).isPresent()) {
                return range(wording.temperature(scale.toCelsius(low)), wording.temperature(scale.toCelsius(high)));
            }
        }
        String suffix = unit.map(symbol -> " " + symbol).orElse("");
        return range(number(low) + suffix, number(high) + suffix);
    }

    private static String range(String low, String high) {
        return low.equals(high) ? low : low + " to " + high;
    }

    private static String number(double value) {
        if (Double.isInfinite(value)) {
            return "no bound";
        }
        return value == Math.rint(value) ? Long.toString((long) value) : String.format(Locale.ROOT, "%.1f", value);
    }
}
