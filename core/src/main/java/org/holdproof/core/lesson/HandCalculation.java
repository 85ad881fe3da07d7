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
    private static final String TABLE = "fsis-2021-meat-6.5-log";
    private static final double COLD_FAHRENHEIT = 130;
    private static final double HOT_FAHRENHEIT = 140;

    static HandCalculation of(List<LethalityTable> tables) {
        LethalityTable table = tables.stream()
                .filter(found -> found.id().equals(TABLE))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no table " + TABLE));
        LethalityRow cold = row(table, COLD_FAHRENHEIT);
        LethalityRow hot = row(table, HOT_FAHRENHEIT);
        double target = table.targetLog10().orElseThrow();
        double coldD = threeFigures(cold.seconds() / 60 / target);
        double hotD = threeFigures(hot.seconds() / 60 / target);
        double log = Math.rint(Math.log10(coldD / hotD) * 1000) / 1000;
        double z = tenths((tenths(hot.at().celsius()) - tenths(cold.at().celsius())) / log);
        return new HandCalculation(table, cold, hot, target, coldD, hotD, log, z);
    }

    private static LethalityRow row(LethalityTable table, double fahrenheit) {
        return table.rows().stream()
                .filter(row -> row.at().unit() == TemperatureUnit.FAHRENHEIT
                        && row.at().value() == fahrenheit)
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(table.id() + " has no row at " + fahrenheit + " °F"));
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
