package org.holdproof.core.quality;

import java.util.Arrays;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.holdproof.core.heat.Conduction;
import org.holdproof.core.heat.MediumSchedule;
import org.holdproof.core.heat.Piece;
import org.holdproof.core.heat.PieceTemperatures;
import org.holdproof.core.heat.ThermalProperties;

/** Histories the tests reckon with. */
final class Histories {
    /** What the published cases were reckoned with: from 5 °C, 0.48 W/(m K), 1.2e-7 m²/s, 95 W/(m² K) on both faces. */
    private static final double START = 5;

    private static final double CONDUCTIVITY = 0.48;
    private static final double DIFFUSIVITY = 1.2e-7;
    private static final double BATH_COEFFICIENT = 95;

    private Histories() {}

    static CookHistory held(double celsius, double hours) {
        return CookHistory.ofCore(new double[] {0, hours * 60}, new double[] {celsius, celsius});
    }

    /** Straight up and stopped at the end. */
    static CookHistory ramp(double endCelsius, double celsiusPerMinute) {
        return CookHistory.ofCore(
                new double[] {0, (endCelsius - START) / celsiusPerMinute}, new double[] {START, endCelsius});
    }

    /** A slab in a bath. */
    static CookHistory bath(double thicknessMillimetres, double celsius, double hours) {
        double[] minutes = IntStream.rangeClosed(0, 160)
                .mapToDouble(i -> hours * 60 * i * i / 25_600.0)
                .toArray();
        PieceTemperatures run = Conduction.of(
                        Piece.of(thicknessMillimetres, 0.0), ThermalProperties.constant(CONDUCTIVITY, DIFFUSIVITY))
                .run(START, MediumSchedule.held(celsius, BATH_COEFFICIENT), minutes);
        return CookHistory.of(
                minutes,
                run.coreCelsius(),
                IntStream.range(0, minutes.length).mapToDouble(run::meanCelsius).toArray());
    }

    /** Points joined straight; minutes and temperatures in turn. */
    static CookHistory through(double... minutesAndCelsius) {
        int count = minutesAndCelsius.length / 2;
        return CookHistory.ofCore(
                IntStream.range(0, count)
                        .mapToDouble(i -> minutesAndCelsius[2 * i])
                        .toArray(),
                IntStream.range(0, count)
                        .mapToDouble(i -> minutesAndCelsius[2 * i + 1])
                        .toArray());
    }

    /** The same history with points put in between. */
    static CookHistory split(CookHistory history, double... atMinutes) {
        double[] joined = DoubleStream.concat(
                        IntStream.range(0, history.size()).mapToDouble(history::minute), Arrays.stream(atMinutes))
                .sorted()
                .distinct()
                .toArray();
        double[] core = new double[joined.length];
        double[] mean = new double[joined.length];
        for (int i = 0; i < joined.length; i++) {
            CookHistory cut = history.until(joined[i]);
            core[i] = cut.coreCelsius(cut.size() - 1);
            mean[i] = cut.meanCelsius(cut.size() - 1);
        }
        return CookHistory.of(joined, core, mean);
    }
}
