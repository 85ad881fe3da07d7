package org.holdproof.report.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.holdproof.core.assess.Check;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.TemperatureUnit;

/** Prints a check's figures. */
final class Figures {
    private static final int MOST_PLACES = 4;

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

    /** The limit as it reads: {@code at most 120 min}; empty where the check has none. */
    String limit(Check check) {
        return check.limit().isEmpty()
                ? ""
                : check.comparison().words() + " " + value(check, check.limit().getAsDouble(), MOST_PLACES, true);
    }

    /** The figures from worst to best, a line each; one line where they are one figure, none where there is none. */
    List<String> measured(Check check) {
        Optional<Bounded> figure = check.measured();
        if (figure.isEmpty()) {
            return List.of();
        }
        int places = places(check);
        String worst = end(check, figure.get().worst(), places);
        String nominal = end(check, figure.get().nominal(), places);
        String best = end(check, figure.get().best(), places);
        List<String> lines = new ArrayList<>();
        if (worst.equals(best) && worst.equals(nominal)) {
            lines.add(worst);
            return lines;
        }
        lines.add("worst " + worst);
        lines.add("nominal " + nominal);
        lines.add("best " + best);
        return lines;
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
        Optional<TemperatureUnit> scale = scale(check.unit());
        if (scale.isPresent()) {
            TemperatureUnit leading = degrees.units().get(0);
            double difference = leading.differenceFromCelsius(scale.get().differenceToCelsius(margin));
            return sign + number(difference, places) + " " + leading.symbol();
        }
        return sign + number(margin, places) + unit(check);
    }

    private String end(Check check, double value, int places) {
        return Double.isInfinite(value) ? "not bounded" : value(check, value, places, false);
    }

    private String value(Check check, double value, int places, boolean trim) {
        Optional<TemperatureUnit> scale = scale(check.unit());
        if (scale.isEmpty()) {
            return (trim ? trimmed(value, places) : number(value, places)) + unit(check);
        }
        if (trim) {
            // A limit stays in the scale its rule prints it in.
            return degrees.printed(new org.holdproof.core.standard.Boundary(value, scale.get()));
        }
        return degrees.text(scale.get().toCelsius(value), places);
    }

    /** One place, or as many as it takes to tell a figure from the limit it is not equal to. */
    private int places(Check check) {
        int places = check.unit().equals("min") || scale(check.unit()).isPresent() ? 1 : 2;
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

    private static boolean isWhole(double value) {
        return Double.isInfinite(value) || value == Math.rint(value);
    }

    private static String unit(Check check) {
        return check.unit().isEmpty() ? "" : " " + check.unit();
    }

    private static Optional<TemperatureUnit> scale(String unit) {
        for (TemperatureUnit scale : TemperatureUnit.values()) {
            if (scale.symbol().equals(unit)) {
                return Optional.of(scale);
            }
        }
        return Optional.empty();
    }
}
