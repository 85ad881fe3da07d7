package org.holdproof.core.plan;

import java.util.Arrays;
import java.util.OptionalDouble;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.TemperatureUnit;

/**
 * A reckoned core temperature over time, straight between its points; after the last it stays where the medium leads it.
 */
public final class CoreCurve {
    private final double[] minutes;
    private final double[] celsius;
    private final double settlesAtCelsius;

    /**
     * A curve through points.
     *
     * @param minutes strictly rising, from 0, at least one
     * @param settlesAtCelsius the last medium's temperature
     */
    CoreCurve(double[] minutes, double[] celsius, double settlesAtCelsius) {
        if (minutes.length == 0 || minutes.length != celsius.length) {
            throw new IllegalArgumentException(minutes.length + " minutes, " + celsius.length + " temperatures");
        }
        this.minutes = minutes.clone();
        this.celsius = celsius.clone();
        this.settlesAtCelsius = settlesAtCelsius;
    }

    public int size() {
        return minutes.length;
    }

    /** The minute of point {@code i}. */
    public double minute(int i) {
        return minutes[i];
    }

    /** The temperature of point {@code i}, in °C. */
    public double celsius(int i) {
        return celsius[i];
    }

    /** The temperature at a minute, in °C. */
    public double celsiusAt(double minute) {
        int last = minutes.length - 1;
        if (minute >= minutes[last]) {
            return celsius[last];
        }
        int i = 1;
        while (minutes[i] < minute) {
            i++;
        }
        double share = (minute - minutes[i - 1]) / (minutes[i] - minutes[i - 1]);
        return celsius[i - 1] + share * (celsius[i] - celsius[i - 1]);
    }

    /** When the first unbroken spell at or above a temperature that lasts so long is complete; empty if none ever is. */
    public OptionalDouble heldAtOrAbove(double levelCelsius, double forMinutes) {
        double level = levelCelsius - TemperatureUnit.SLACK_CELSIUS;
        double since = celsius[0] >= level ? minutes[0] : Double.NaN;
        for (int i = 1; i < minutes.length; i++) {
            boolean above = celsius[i] >= level;
            if (above && Double.isNaN(since)) {
                since = crossing(i, level);
            }
            double until = above ? minutes[i] : Double.isNaN(since) ? minutes[i] : crossing(i, level);
            if (until - since >= forMinutes) {
                return OptionalDouble.of(since + forMinutes);
            }
            if (!above) {
                since = Double.NaN;
            }
        }
        boolean stays = !Double.isNaN(since) && settlesAtCelsius >= level;
        return stays ? OptionalDouble.of(since + forMinutes) : OptionalDouble.empty();
    }

    /** When it first comes to a temperature from below; empty if it never does. */
    public OptionalDouble reaches(double levelCelsius) {
        return heldAtOrAbove(levelCelsius, 0);
    }

    /** When it first comes down to a temperature and is there; empty if it never is. */
    public OptionalDouble fallsTo(double levelCelsius) {
        double level = levelCelsius + TemperatureUnit.SLACK_CELSIUS;
        for (int i = 0; i < minutes.length; i++) {
            if (celsius[i] <= level) {
                return OptionalDouble.of(i == 0 ? 0 : crossing(i, level));
            }
        }
        return OptionalDouble.empty();
    }

    private double crossing(int i, double level) {
        double share = (level - celsius[i - 1]) / (celsius[i] - celsius[i - 1]);
        return minutes[i - 1] + Math.min(1, Math.max(0, share)) * (minutes[i] - minutes[i - 1]);
    }

    /** Minutes spent between two temperatures up to a minute. */
    public double minutesBetween(double lowerCelsius, double upperCelsius, double untilMinute) {
        double inside = 0;
        for (int i = 1; i < minutes.length && minutes[i - 1] < untilMinute; i++) {
            double to = Math.min(minutes[i], untilMinute);
            double first = celsius[i - 1];
            double last = celsiusAt(to);
            double cold = Math.min(first, last);
            double hot = Math.max(first, last);
            double share = hot - cold < TemperatureUnit.SLACK_CELSIUS
                    ? (hot > lowerCelsius && cold < upperCelsius ? 1 : 0)
                    : Math.max(0, Math.min(hot, upperCelsius) - Math.max(cold, lowerCelsius)) / (hot - cold);
            inside += share * (to - minutes[i - 1]);
        }
        double end = minutes[minutes.length - 1];
        if (untilMinute > end && settlesAtCelsius > lowerCelsius && settlesAtCelsius < upperCelsius) {
            inside += untilMinute - end;
        }
        return inside;
    }

    /** The curve up to a minute, as readings. */
    public Trace trace(String channel, long zeroMillis, double untilMinute) {
        int count = 0;
        while (count < minutes.length && minutes[count] < untilMinute) {
            count++;
        }
        long[] at = new long[count + 1];
        double[] readings = new double[count + 1];
        int kept = 0;
        for (int i = 0; i <= count; i++) {
            double minute = i < count ? minutes[i] : untilMinute;
            long millis = zeroMillis + Math.round(minute * 60_000);
            if (kept > 0 && millis <= at[kept - 1]) {
                continue;
            }
            at[kept] = millis;
            readings[kept++] = celsiusAt(minute);
        }
        return new Trace(channel, Arrays.copyOf(at, kept), Arrays.copyOf(readings, kept));
    }
}
