package org.holdproof.report.layout;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.wording.Durations;

/** Prints a check's figures. */
final class Figures {
    private static final int MOST_PLACES = 4;
    private static final String UNBOUNDED = "not bounded";
    private static final String INSTRUMENT = "instrument";

    private final Degrees degrees;

    Figures(Degrees degrees) {
        this.degrees = degrees;
    }

    static String number(double value, int places) {
        String text = String.format(Locale.ROOT, "%." + places + "f", value);
        boolean zero = text.chars().noneMatch(figure -> figure >= '1' && figure <= '9');
        return zero ? text.replace("-", "") : text.replace('-', '−');
    }

    /** A number with no more places than it needs. */
    static String trimmed(double value, int mostPlaces) {
        String text = number(value, mostPlaces);
        return text.contains(".") ? text.replaceAll("0+$", "").replaceAll("\\.$", "") : text;
    }

    /** The limit as it reads: {@code at most 2 h}; empty where the check has none. */
    String limit(Check check) {
        if (check.limit().isEmpty()) {
            return "";
        }
        double limit = check.limit().getAsDouble();
        return check.comparison().words() + " "
                + (isDuration(check) ? durations(check).exactly(limit) : value(check, limit, MOST_PLACES, true));
    }

    /** The figures from worst to best; one text where they are one figure, none where there is none. */
    List<String> measured(Check check) {
        Optional<Bounded> figure = check.measured();
        if (figure.isEmpty()) {
            return List.of();
        }
        int places = places(check);
        double[] ends = {
            figure.get().worst(), figure.get().nominal(), figure.get().best()
        };
        String[] names = {"worst ", "nominal ", "best "};
        if (end(check, ends[0], places).equals(end(check, ends[1], places))
                && end(check, ends[0], places).equals(end(check, ends[2], places))) {
            return List.of(end(check, ends[0], places));
        }
        List<String> parts = new ArrayList<>();
        if (isDuration(check)) {
            for (int i = 0; i < ends.length; i++) {
                parts.add(names[i] + end(check, ends[i], places));
            }
            return parts;
        }
        for (int i = 0; i < ends.length; i++) {
            parts.add(names[i] + (Double.isFinite(ends[i]) ? leading(check, ends[i], places) : UNBOUNDED));
        }
        for (int i = ends.length - 1; i >= 0; i--) {
            if (Double.isFinite(ends[i])) {
                parts.set(i, parts.get(i) + " " + unitAndSecondScale(check, ends, places));
                break;
            }
        }
        return parts.stream().map(String::strip).toList();
    }

    /** The figures at worst and at best; one text where they are one figure, none where there is none. */
    List<String> ends(Check check) {
        List<String> figures = measured(check);
        if (figures.size() != 3) {
            return figures;
        }
        Bounded figure = check.measured().orElseThrow();
        int places = places(check);
        return List.of("worst " + end(check, figure.worst(), places), "best " + end(check, figure.best(), places));
    }

    private static boolean isDuration(Check check) {
        return check.unit().filter("min"::equals).isPresent();
    }

    /** One way for all durations of a check, fine enough that none reads like the limit it is not equal to. */
    private static Durations durations(Check check) {
        List<Double> all = new ArrayList<>();
        check.measured().ifPresent(figure -> all.addAll(List.of(figure.worst(), figure.nominal(), figure.best())));
        return Durations.telling(all, check.limit());
    }

    /** A figure on the leading scale, its unit left out. */
    private String leading(Check check, double value, int places) {
        return scale(check.unit().orElse(""))
                .map(scale -> converted(check, scale, degrees.units().get(0), value, places))
                .orElseGet(() -> number(value, places));
    }

    /** The unit, said once for all figures, and all figures again on the second scale where there is one. */
    private String unitAndSecondScale(Check check, double[] ends, int places) {
        Optional<TemperatureUnit> scale = scale(check.unit().orElse(""));
        if (scale.isEmpty()) {
            return check.unit().orElse("");
        }
        StringBuilder text = new StringBuilder(degrees.units().get(0).symbol());
        for (TemperatureUnit other : degrees.units().subList(1, degrees.units().size())) {
            text.append(Arrays.stream(ends)
                    .filter(Double::isFinite)
                    .mapToObj(value -> converted(check, scale.get(), other, value, places))
                    .collect(Collectors.joining(" · ", " (", " " + other.symbol() + ")")));
        }
        return text.toString();
    }

    private static String converted(Check check, TemperatureUnit from, TemperatureUnit to, double value, int places) {
        return number(
                isDifference(check)
                        ? to.differenceFromCelsius(from.differenceToCelsius(value))
                        : to.fromCelsius(from.toCelsius(value)),
                places);
    }

    /** The worst case's distance from the limit with its sign. */
    String margin(Check check) {
        if (check.measured().isEmpty() || check.limit().isEmpty()) {
            return "—";
        }
        if (check.margin().isEmpty()) {
            return "no bound";
        }
        double margin = check.margin().getAsDouble();
        int places = places(check);
        String sign = margin > 0 ? "+" : "";
        if (isDuration(check)) {
            return (margin > 0 ? "+" : margin < 0 ? "−" : "") + durations(check).text(Math.abs(margin));
        }
        Optional<TemperatureUnit> scale = scale(check.unit().orElse(""));
        if (scale.isPresent()) {
            TemperatureUnit leading = degrees.units().get(0);
            double difference = leading.differenceFromCelsius(scale.get().differenceToCelsius(margin));
            return sign + number(difference, places) + " " + leading.symbol();
        }
        return sign + number(margin, places) + unit(check);
    }

    private String end(Check check, double value, int places) {
        if (Double.isInfinite(value)) {
            return UNBOUNDED;
        }
        return isDuration(check) ? durations(check).text(value) : value(check, value, places, false);
    }

    private String value(Check check, double value, int places, boolean trim) {
        Optional<TemperatureUnit> scale = scale(check.unit().orElse(""));
        if (scale.isEmpty()) {
            return (trim ? trimmed(value, places) : number(value, places)) + unit(check);
        }
        if (trim) {
            // A limit stays in the scale its rule prints it in.
            return isDifference(check)
                    ? degrees.difference(scale.get().differenceToCelsius(value))
                    : degrees.printed(new Boundary(value, scale.get()));
        }
        return isDifference(check)
                ? degrees.difference(scale.get().differenceToCelsius(value))
                : degrees.text(scale.get().toCelsius(value), places);
    }

    /** One place, or as many as it takes to tell a figure from the limit it is not equal to. */
    private int places(Check check) {
        int places = check.unit().filter("min"::equals).isPresent()
                        || scale(check.unit().orElse("")).isPresent()
                ? 1
                : 2;
        if (check.measured().isEmpty()) {
            return places;
        }
        Bounded figure = check.measured().get();
        if (isWhole(figure.worst()) && isWhole(figure.nominal()) && isWhole(figure.best()) && places == 2) {
            return 0;
        }
        if (check.limit().isEmpty()) {
            return places;
        }
        double limit = check.limit().getAsDouble();
        for (double value : new double[] {figure.worst(), figure.nominal(), figure.best()}) {
            while (places < MOST_PLACES
                    && Double.isFinite(value)
                    && Math.abs(value - limit) > Check.FIGURE_SLACK
                    && number(value, places).equals(number(limit, places))) {
                places++;
            }
        }
        return places;
    }

    /** A thermometer's error is a difference of temperatures, though its unit is written like a temperature's. */
    static boolean isDifference(Check check) {
        return check.id().equals(INSTRUMENT);
    }

    private static boolean isWhole(double value) {
        return Double.isInfinite(value) || value == Math.rint(value);
    }

    private static String unit(Check check) {
        return check.unit().map(unit -> " " + unit).orElse("");
    }

    /** The scale a unit names; empty where it is not a temperature's. */
    static Optional<TemperatureUnit> scale(String unit) {
        for (TemperatureUnit scale : TemperatureUnit.values()) {
            if (scale.symbol().equals(unit)) {
                return Optional.of(scale);
            }
        }
        return Optional.empty();
    }
}
