package org.holdproof.core.lesson;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.core.rules.LethalityTable;

/**
 * D-values, z-value and holding times from two printed rows, rounded at every step as a class with a pocket calculator
 * rounds, so that it comes to the same figures.
 *
 * @param targetLog10 the reduction the rows stand for
 * @param coldDMinutes D at the colder row, three figures
 * @param zCelsius one decimal
 */
public record HandCalculation(
        LethalityTable table,
        LethalityRow cold,
        LethalityRow hot,
        double targetLog10,
        double coldDMinutes,
        double hotDMinutes,
        double logOfRatio,
        double zCelsius) {
    /** The two rows lie this far apart, in °F. */
    private static final double APART_FAHRENHEIT = 10;

    /**
     * From a table's lowest row and the one 10 °F above it.
     *
     * @param rows the table's rows for one food, the lowest first
     * @throws IllegalArgumentException if the table names no reduction or the rows are not there in °F
     */
    static HandCalculation of(LethalityTable table, List<LethalityRow> rows) {
        LethalityRow cold = rows.get(0);
        LethalityRow hot = rows.stream()
                .filter(row -> row.at().unit() == TemperatureUnit.FAHRENHEIT
                        && row.at().value() == cold.at().value() + APART_FAHRENHEIT)
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(
                        table.id() + " has no row " + APART_FAHRENHEIT + " °F above its lowest"));
        double target =
                table.targetLog10().orElseThrow(() -> new IllegalArgumentException(table.id() + " names no reduction"));
        double coldD = threeFigures(cold.seconds() / 60 / target);
        double hotD = threeFigures(hot.seconds() / 60 / target);
        double log = Math.rint(Math.log10(coldD / hotD) * 1000) / 1000;
        double z = tenths((tenths(hot.at().celsius()) - tenths(cold.at().celsius())) / log);
        return new HandCalculation(table, cold, hot, target, coldD, hotD, log, z);
    }

    /** The hold at a set point at or above the colder row, in minutes. */
    public double minutes(double celsius) {
        return targetLog10
                * coldDMinutes
                / Math.pow(10, (celsius - tenths(cold.at().celsius())) / zCelsius);
    }

    /** The steps, one a line. */
    public List<String> steps(List<Double> setPoints) {
        String target = InWords.figure(targetLog10);
        double coldCelsius = tenths(cold.at().celsius());
        double hotCelsius = tenths(hot.at().celsius());
        List<String> steps = new ArrayList<>();
        steps.add("D at " + InWords.boundary(cold.at()) + " = " + cold.printedTime() + " ÷ " + target + " = "
                + plain(coldDMinutes) + " min. D at " + InWords.boundary(hot.at()) + " = " + hot.printedTime() + " ÷ "
                + target + " = " + plain(hotDMinutes) + " min.");
        steps.add(String.format(
                Locale.ROOT,
                "z = (%s − %s) ÷ log(%s ÷ %s) = %s ÷ %.3f = %s °C: that much hotter, ten times faster.",
                InWords.figure(hotCelsius),
                InWords.figure(coldCelsius),
                plain(coldDMinutes),
                plain(hotDMinutes),
                InWords.figure(hotCelsius - coldCelsius),
                logOfRatio,
                InWords.figure(zCelsius)));
        List<String> times = setPoints.stream()
                .filter(celsius -> celsius > coldCelsius && celsius <= hotCelsius + zCelsius)
                .map(celsius -> InWords.celsius(celsius) + ": " + InWords.minutes(minutes(celsius)))
                .toList();
        steps.add("Hold for " + target + " logs at T = " + target + " × " + plain(coldDMinutes) + " ÷ 10^((T − "
                + InWords.figure(coldCelsius) + ") ÷ " + InWords.figure(zCelsius) + ")"
                + (times.isEmpty() ? "." : ". " + String.join("; ", times) + "."));
        return List.copyOf(steps);
    }

    private static double threeFigures(double value) {
        return new BigDecimal(value).round(new MathContext(3)).doubleValue();
    }

    private static double tenths(double value) {
        return Math.rint(value * 10) / 10;
    }

    private static String plain(double value) {
        return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }
}
