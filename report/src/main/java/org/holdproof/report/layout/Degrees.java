package org.holdproof.report.layout;

import java.util.List;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.TemperatureUnit;

/** Prints temperatures in the scales the authority reads, the leading one first, the other in brackets. */
final class Degrees {
    private final List<TemperatureUnit> units;

    /** @param units the scales, the first one leading; °C where none is named */
    Degrees(List<TemperatureUnit> units) {
        this.units = units.isEmpty() ? List.of(TemperatureUnit.CELSIUS) : List.copyOf(units);
    }

    List<TemperatureUnit> units() {
        return units;
    }

    /** A temperature to a tenth of a degree. */
    String text(double celsius) {
        return text(celsius, 1);
    }

    String text(double celsius, int places) {
        StringBuilder text = new StringBuilder();
        for (TemperatureUnit unit : units) {
            String figure = Figures.number(unit.fromCelsius(celsius), places) + " " + unit.symbol();
            text.append(text.isEmpty() ? figure : " (" + figure + ")");
        }
        return text.toString();
    }

    /** A difference of temperatures. */
    String difference(double celsius) {
        StringBuilder text = new StringBuilder();
        for (TemperatureUnit unit : units) {
            String figure = Figures.number(unit.differenceFromCelsius(celsius), 2) + " " + unit.symbol();
            text.append(text.isEmpty() ? figure : " (" + figure + ")");
        }
        return text.toString();
    }

    /** A rule's temperature as the rule prints it, whatever the scale; what it is exactly on the others in brackets. */
    String printed(Boundary boundary) {
        StringBuilder text = new StringBuilder(boundary.text());
        for (TemperatureUnit unit : units) {
            if (unit != boundary.unit()) {
                text.append(" (")
                        .append(Figures.trimmed(unit.fromCelsius(boundary.celsius()), 2))
                        .append(' ')
                        .append(unit.symbol())
                        .append(')');
            }
        }
        return text.toString();
    }
}
