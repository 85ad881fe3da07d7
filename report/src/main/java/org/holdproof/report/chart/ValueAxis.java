package org.holdproof.report.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * An upright axis.
 *
 * @param top where the highest value lies on the sheet, in points
 * @param height in points
 * @param low the value at its foot
 * @param high the value at its head, above {@code low}
 */
public record ValueAxis(double top, double height, double low, double high) {
    private static final double[] STEPS = {1, 2, 5, 10};

    /** An axis that holds all of a range, widened to full steps. */
    static ValueAxis around(double top, double height, double low, double high, int aboutTicks) {
        double room = Math.max(high - low, 1e-6);
        double step = step(room, aboutTicks);
        double foot = Math.floor(low / step) * step;
        double head = Math.ceil(high / step) * step;
        return new ValueAxis(top, height, foot, head > foot ? head : foot + step);
    }

    double y(double value) {
        return top + height * (high - value) / (high - low);
    }

    /** Round values on the axis, about this many. */
    List<Double> ticks(int about) {
        double step = step(high - low, about);
        List<Double> ticks = new ArrayList<>();
        for (long i = (long) Math.ceil(low / step - 1e-9); i * step <= high + step * 1e-9; i++) {
            ticks.add(i * step);
        }
        return ticks;
    }

    static String label(double value) {
        if (Math.abs(value - Math.rint(value)) < 1e-9) {
            return Long.toString(Math.round(value)).replace('-', '−');
        }
        return String.format(Locale.ROOT, "%.1f", value).replace('-', '−');
    }

    private static double step(double range, int about) {
        double rough = range / Math.max(1, about);
        double power = Math.pow(10, Math.floor(Math.log10(rough)));
        for (double step : STEPS) {
            if (step * power >= rough * 0.999) {
                return step * power;
            }
        }
        return 10 * power;
    }
}
