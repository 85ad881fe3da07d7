package org.holdproof.core.quality;

import java.util.List;
import org.holdproof.core.quantity.Predicted;

/**
 * How long tough beef takes to become tender: {@code ln(hours)} against {@code 1/T}, through the published and trade
 * points. It says nothing of how much collagen has dissolved: no rate for beef muscle was published where it could be
 * read, and the calorimetric energies of collagen's denaturing are those of another change.
 *
 * @param lowest the time at 70 °C with the lowest energy it may belong to
 * @param likeliest the time at 70 °C with the likeliest energy
 * @param highest the time at 70 °C with the highest energy
 * @param scatter two of three cases lie within this factor of the line either way
 */
record TenderTime(Line lowest, Line likeliest, Line highest, double scatter) {
    private static final double REFERENCE_CELSIUS = 70;

    /** Below this no point was published. */
    static final double FROM_CELSIUS = 50;

    private static final double STEP_CELSIUS = 0.5;

    /**
     * One line through the points.
     *
     * @param kilojoulesPerMole its slope as an effective activation energy
     * @param hoursAtReference at 70 °C
     */
    record Line(double kilojoulesPerMole, double hoursAtReference) {
        private ArrheniusRate perMinute() {
            return new ArrheniusRate(1 / (60 * hoursAtReference), REFERENCE_CELSIUS, kilojoulesPerMole);
        }

        double hoursAt(double celsius) {
            return 1 / (60 * perMinute().at(celsius));
        }

        /** The core's time from 50 °C up to every point, each minute over the time to tender at its temperature. */
        double[] softeningAlong(CookHistory history) {
            ArrheniusRate rate = perMinute();
            double[] softening = new double[history.size()];
            for (int i = 1; i < history.size(); i++) {
                softening[i] = softening[i - 1];
                double from = history.coreCelsius(i - 1);
                double to = history.coreCelsius(i);
                double minutes = history.minute(i) - history.minute(i - 1);
                if (Math.max(from, to) < FROM_CELSIUS) {
                    continue;
                }
                if (Math.min(from, to) < FROM_CELSIUS) {
                    minutes *= (Math.max(from, to) - FROM_CELSIUS) / Math.abs(to - from);
                    from = Math.max(from, FROM_CELSIUS);
                    to = Math.max(to, FROM_CELSIUS);
                }
                int steps = (int) Math.max(1, Math.ceil(Math.abs(to - from) / STEP_CELSIUS));
                for (int step = 0; step < steps; step++) {
                    softening[i] += minutes
                            / steps
                            * rate.mean(from + (to - from) * step / steps, from + (to - from) * (step + 1) / steps);
                }
            }
            return softening;
        }

        /** The same at the end. */
        double softening(CookHistory history) {
            return softeningAlong(history)[history.size() - 1];
        }
    }

    /** Hours at a temperature on the three lines. */
    Predicted hoursAt(double celsius) {
        double low = lowest.hoursAt(celsius);
        double high = highest.hoursAt(celsius);
        double likely = likeliest.hoursAt(celsius);
        return new Predicted(Math.min(likely, Math.min(low, high)), likely, Math.max(likely, Math.max(low, high)));
    }

    List<Line> lines() {
        return List.of(lowest, likeliest, highest);
    }
}
