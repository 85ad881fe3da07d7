package org.holdproof.core.plan;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.holdproof.core.batch.Product.Shape;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.TemperatureUnit;

/** How a plan's figures are written: the reader's scales, times never rounded down. */
public final class PlanWording {
    private static final double ROUNDING = 1e-6;
    private static final double KILOGRAMS_A_POUND = 0.45359237;
    private static final double OUNCES_A_POUND = 16;

    private final List<TemperatureUnit> units;

    /** @param units the reader's scales, the first one leading; °C where there is none */
    public PlanWording(List<TemperatureUnit> units) {
        this.units = units.isEmpty() ? List.of(TemperatureUnit.CELSIUS) : List.copyOf(units);
    }

    /** The scale the reader thinks in. */
    public TemperatureUnit leading() {
        return units.get(0);
    }

    /** A temperature in each of the reader's scales: {@code 144 °F (62.2 °C)}. */
    public String temperature(double celsius) {
        String first = in(units.get(0), celsius);
        String rest = units.stream().skip(1).map(unit -> in(unit, celsius)).collect(Collectors.joining(", "));
        return rest.isEmpty() ? first : first + " (" + rest + ")";
    }

    /** A temperature in the leading scale: {@code 144 °F}. */
    public String leading(double celsius) {
        return in(leading(), celsius);
    }

    /** A rule's temperature as printed, and what it is exactly on the reader's other scale. */
    public String boundary(Boundary boundary) {
        TemperatureUnit other =
                boundary.unit() == TemperatureUnit.CELSIUS ? TemperatureUnit.FAHRENHEIT : TemperatureUnit.CELSIUS;
        return units.contains(other)
                ? boundary.text()
                        + String.format(
                                Locale.ROOT, " (%.2f %s)", other.fromCelsius(boundary.celsius()), other.symbol())
                : boundary.text();
    }

    /** A difference of temperatures in the leading scale: {@code 0.9 °F}. */
    public String difference(double celsius) {
        return PlannedCook.plain(leading().differenceFromCelsius(celsius)) + " "
                + leading().symbol();
    }

    /** A weight as the reader of the leading scale weighs: {@code 5.4 kg}, {@code 12 lb}, {@code 150 g}, {@code 6 oz}. */
    public String weight(double kilograms) {
        if (leading() == TemperatureUnit.FAHRENHEIT) {
            double pounds = kilograms / KILOGRAMS_A_POUND;
            return pounds < 1 ? figure(pounds * OUNCES_A_POUND) + " oz" : figure(pounds) + " lb";
        }
        return kilograms < 1 ? Math.round(kilograms * 1000) + " g" : figure(kilograms) + " kg";
    }

    /** A time, up to the next whole minute: {@code 45 min}, {@code 3 h 05 min}, {@code 26 h}. */
    public static String time(double minutes) {
        if (Double.isInfinite(minutes)) {
            return "no bound";
        }
        long whole = (long) Math.ceil(minutes - ROUNDING);
        if (whole < 60) {
            return whole + " min";
        }
        return whole / 60 + " h" + (whole % 60 == 0 ? "" : String.format(Locale.ROOT, " %02d min", whole % 60));
    }

    /** A temperature to the whole degree of the leading scale: {@code 161 °F}. */
    public String whole(double celsius) {
        return Math.round(leading().fromCelsius(celsius)) + " " + leading().symbol();
    }

    /** The piece's shape as said, or that nothing was. */
    public static String shape(PlannedCook cook) {
        return cook.shape().map(Shape::title).orElse("shape not said");
    }

    /** What the covering time covers because it was not said, to be read in a list; else empty. */
    public static String unsaid(PlannedCook cook) {
        return (cook.shape().isEmpty() ? "a slab, " : "") + (cook.fatPercent().isEmpty() ? "a fatty cut, " : "");
    }

    private static String in(TemperatureUnit unit, double celsius) {
        return figure(unit.fromCelsius(celsius)) + " " + unit.symbol();
    }

    private static String figure(double value) {
        String figure = String.format(Locale.ROOT, "%.1f", value);
        return figure.endsWith(".0") ? figure.substring(0, figure.length() - 2) : figure;
    }
}
