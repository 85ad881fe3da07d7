package org.holdproof.core.kinetics;

import java.util.random.RandomGenerator;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.TemperatureUnit;

/** Small traces for tests; invented data. */
public final class Traces {
    private Traces() {}

    /** A trace from pairs of minutes and temperatures. */
    public static Trace of(TemperatureUnit unit, double... minutesAndTemperatures) {
        int size = minutesAndTemperatures.length / 2;
        long[] millis = new long[size];
        double[] celsius = new double[size];
        for (int i = 0; i < size; i++) {
            millis[i] = Math.round(minutesAndTemperatures[2 * i] * 60_000);
            celsius[i] = unit.toCelsius(minutesAndTemperatures[2 * i + 1]);
        }
        return new Trace("core", millis, celsius);
    }

    public static Trace celsius(double... minutesAndTemperatures) {
        return of(TemperatureUnit.CELSIUS, minutesAndTemperatures);
    }

    public static Trace fahrenheit(double... minutesAndTemperatures) {
        return of(TemperatureUnit.FAHRENHEIT, minutesAndTemperatures);
    }

    /** One temperature held, read every minute and at the end. */
    public static Trace held(double celsius, double minutes) {
        int whole = (int) Math.ceil(minutes);
        long[] millis = new long[whole + 1];
        double[] readings = new double[whole + 1];
        for (int i = 0; i <= whole; i++) {
            millis[i] = Math.round(Math.min(i, minutes) * 60_000);
            readings[i] = celsius;
        }
        return new Trace("core", millis, readings);
    }

    /** A wandering trace of 2 to 400 readings, some intervals long enough to be gaps. */
    public static Trace random(RandomGenerator random, double lowCelsius, double highCelsius) {
        int size = 2 + random.nextInt(399);
        long[] millis = new long[size];
        double[] celsius = new double[size];
        double at = lowCelsius + random.nextDouble() * (highCelsius - lowCelsius);
        for (int i = 0; i < size; i++) {
            long step = random.nextInt(20) == 0 ? 1 + random.nextInt(7_200_000) : 1 + random.nextInt(180_000);
            millis[i] = i == 0 ? 0 : millis[i - 1] + step;
            at = Math.min(highCelsius, Math.max(lowCelsius, at + random.nextGaussian() * 2));
            celsius[i] = Math.round(at * 10) / 10.0;
        }
        return new Trace("core", millis, celsius);
    }
}
