package org.holdproof.core.kinetics;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import java.util.random.RandomGenerator;
import java.util.stream.DoubleStream;
import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.apache.commons.math3.ode.nonstiff.DormandPrince853Integrator;
import org.holdproof.core.log.Trace;

/**
 * The equations of growth and death, integrated numerically: {@code d ln N/dt = mu Q/(1+Q) (1 - N/Nmax) - ln 10 / D},
 * {@code d ln Q/dt = mu} (Baranyi and Roberts 1994), with the Dormand-Prince 8(5,3) integrator of Commons Math 3.6.1.
 */
final class GrowthEquations {
    private static final double LN_10 = Math.log(10);
    private static final double LARGEST_STEP_HOURS = 0.02;

    private final DoubleUnaryOperator growthPerHour;
    private final DoubleUnaryOperator log10DeathPerHour;
    private final double ceilingLog10;
    /** Temperatures where a rate jumps or bends, at which the integration is taken up anew. */
    private final double[] breaks;

    private GrowthEquations(
            DoubleUnaryOperator growthPerHour,
            DoubleUnaryOperator log10DeathPerHour,
            double ceilingLog10,
            double... breaks) {
        this.growthPerHour = growthPerHour;
        this.log10DeathPerHour = log10DeathPerHour;
        this.ceilingLog10 = ceilingLog10;
        this.breaks = breaks;
    }

    static GrowthEquations withGrowth(GrowthRate rate, double ceilingLog10, double... breaks) {
        return new GrowthEquations(rate::at, celsius -> 0, ceilingLog10, breaks);
    }

    static GrowthEquations withDeath(GrowthRate rate, SlowestDeath death, double ceilingLog10, double... breaks) {
        return new GrowthEquations(rate::at, celsius -> 60 * death.log10PerMinute(celsius), ceilingLog10, breaks);
    }

    double log10PerGramAfter(Trace trace, GrowthState start) {
        double ready = start.ready();
        double[] y = {
            start.log10PerGram() * LN_10, ready == 1 ? 700 : Math.log(ready / (1 - ready)),
        };
        DormandPrince853Integrator integrator = new DormandPrince853Integrator(1e-12, LARGEST_STEP_HOURS, 1e-11, 1e-11);
        for (int i = 0; i + 1 < trace.size(); i++) {
            double hours = trace.minutesAfter(i) / 60;
            double from = trace.celsius(i);
            double to = trace.celsius(i + 1);
            double[] times = DoubleStream.concat(
                            DoubleStream.of(0, hours),
                            Arrays.stream(breaks).map(celsius -> (celsius - from) / (to - from) * hours))
                    .filter(time -> time >= 0 && time <= hours)
                    .sorted()
                    .toArray();
            for (int k = 0; k + 1 < times.length; k++) {
                if (times[k + 1] - times[k] > 1e-9) {
                    double begin = times[k];
                    double end = times[k + 1];
                    // a hair inside the piece, so that no stage looks across the break
                    double hair = 1e-12 * hours;
                    integrator.integrate(between(from, to, hours, begin + hair, end - hair), begin, y, end, y);
                }
            }
        }
        return y[0] / LN_10;
    }

    private FirstOrderDifferentialEquations between(
            double from, double to, double hours, double earliest, double latest) {
        return new FirstOrderDifferentialEquations() {
            @Override
            public int getDimension() {
                return 2;
            }

            @Override
            public void computeDerivatives(double t, double[] y, double[] yDot) {
                double celsius = from + (to - from) * Math.min(Math.max(t, earliest), latest) / hours;
                double mu = growthPerHour.applyAsDouble(celsius);
                double ready = 1 / (1 + Math.exp(-y[1]));
                double room = 1 - Math.exp(y[0] - ceilingLog10 * LN_10);
                yDot[0] = mu * ready * room - LN_10 * log10DeathPerHour.applyAsDouble(celsius);
                yDot[1] = mu;
            }
        };
    }

    /** A wandering log of some hours, with intervals of 1 to 20 minutes; invented data. */
    static Trace wandering(RandomGenerator random, int readings, double lowCelsius, double highCelsius) {
        long[] millis = new long[readings];
        double[] celsius = new double[readings];
        double at = lowCelsius + random.nextDouble() * (highCelsius - lowCelsius);
        for (int i = 0; i < readings; i++) {
            millis[i] = i == 0 ? 0 : millis[i - 1] + 60_000 + random.nextInt(1_140_000);
            at = Math.min(highCelsius, Math.max(lowCelsius, at + random.nextGaussian() * 6));
            celsius[i] = at;
        }
        return new Trace("core", millis, celsius);
    }
}
