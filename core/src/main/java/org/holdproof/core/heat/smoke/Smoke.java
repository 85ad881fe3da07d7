package org.holdproof.core.heat.smoke;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.holdproof.core.heat.Exposure;
import org.holdproof.core.heat.MediumSchedule;
import org.holdproof.core.heat.MediumSchedule.Segment;
import org.holdproof.core.heat.Psychrometrics;
import org.holdproof.core.log.Trace;

/** A stay in a smoker: the air beside the piece by stretches, bare or wrapped, its humidity where a wet bulb was read. */
public final class Smoke {
    private final List<Stretch> stretches;
    private final OptionalDouble humidityRatio;

    private Smoke(List<Stretch> stretches, OptionalDouble humidityRatio) {
        if (stretches.isEmpty()) {
            throw new IllegalArgumentException("a smoke needs at least one stretch");
        }
        this.stretches = List.copyOf(stretches);
        this.humidityRatio = humidityRatio;
    }

    /**
     * One stretch of air.
     *
     * @param minutes how long, more than none and finite
     * @param fromCelsius at its start
     * @param toCelsius at its end, in a straight line
     * @param wrapped whether foil, paper or a bag keeps the piece from drying
     */
    public record Stretch(double minutes, double fromCelsius, double toCelsius, boolean wrapped) {
        /** @throws IllegalArgumentException if a value is out of range */
        public Stretch {
            if (!(minutes > 0) || !Double.isFinite(minutes) || !Double.isFinite(fromCelsius + toCelsius)) {
                throw new IllegalArgumentException(
                        "not a stretch: " + minutes + " min, " + fromCelsius + " to " + toCelsius + " °C");
            }
        }
    }

    public static Smoke of(List<Stretch> stretches) {
        return new Smoke(stretches, OptionalDouble.empty());
    }

    /** A bare piece in air held at one temperature. */
    public static Smoke held(double airCelsius, double minutes) {
        return of(List.of(new Stretch(minutes, airCelsius, airCelsius, false)));
    }

    /**
     * A bare piece in air as logged, straight between readings, before the first as the first and after the last as the
     * last.
     *
     * @param air at least one reading
     * @param fromMillis when the piece went in, in milliseconds since 1970-01-01T00:00Z
     * @param toMillis when it came out; after {@code fromMillis}
     */
    public static Smoke logged(Trace air, long fromMillis, long toMillis) {
        MediumSchedule logged = MediumSchedule.logged(air, fromMillis, 0);
        List<Stretch> stretches = new ArrayList<>();
        double clock = 0;
        double end = (toMillis - fromMillis) / 60_000.0;
        double celsius = logged.celsius(0);
        for (int i = 0; i < air.size() && clock < end; i++) {
            double minute = (air.millis(i) - fromMillis) / 60_000.0;
            if (minute > clock) {
                double until = Math.min(minute, end);
                double reached = minute <= end ? air.celsius(i) : logged.celsius(end);
                stretches.add(new Stretch(until - clock, celsius, reached, false));
                clock = until;
                celsius = reached;
            }
        }
        if (clock < end) {
            stretches.add(new Stretch(end - clock, celsius, celsius, false));
        }
        return of(stretches);
    }

    /** The same, wrapped from a minute on. */
    public Smoke wrappedFrom(double minute) {
        List<Stretch> cut = new ArrayList<>();
        double clock = 0;
        for (Stretch stretch : stretches) {
            double end = clock + stretch.minutes();
            if (minute <= clock || minute >= end) {
                boolean wrapped = stretch.wrapped() || minute <= clock;
                cut.add(new Stretch(stretch.minutes(), stretch.fromCelsius(), stretch.toCelsius(), wrapped));
            } else {
                double share = (minute - clock) / stretch.minutes();
                double between = stretch.fromCelsius() + share * (stretch.toCelsius() - stretch.fromCelsius());
                cut.add(new Stretch(minute - clock, stretch.fromCelsius(), between, stretch.wrapped()));
                cut.add(new Stretch(end - minute, between, stretch.toCelsius(), true));
            }
            clock = end;
        }
        return new Smoke(cut, humidityRatio);
    }

    /**
     * The same in air of a known humidity: what a wet-bulb thermometer showed beside the meat, at the mean air temperature.
     *
     * @throws IllegalArgumentException if no such air has that wet bulb
     */
    public Smoke withWetBulb(double wetBulbCelsius) {
        double ratio =
                Psychrometrics.humidityRatioAt(meanAirCelsius(), wetBulbCelsius, Psychrometrics.SEA_LEVEL_PASCAL);
        return new Smoke(stretches, OptionalDouble.of(ratio));
    }

    /** How much longer the air of the last stretch's end goes on. */
    public Smoke then(double minutes) {
        Stretch last = stretches.get(stretches.size() - 1);
        List<Stretch> longer = new ArrayList<>(stretches);
        longer.add(new Stretch(minutes, last.toCelsius(), last.toCelsius(), last.wrapped()));
        return new Smoke(longer, humidityRatio);
    }

    /** Mean over the whole stay, in °C. */
    public double meanAirCelsius() {
        double sum = 0;
        for (Stretch stretch : stretches) {
            sum += stretch.minutes() * (stretch.fromCelsius() + stretch.toCelsius()) / 2;
        }
        return sum / minutes();
    }

    /** The whole stay, in minutes. */
    public double minutes() {
        return stretches.stream().mapToDouble(Stretch::minutes).sum();
    }

    /** In kg/kg, where a wet bulb was read. */
    public OptionalDouble humidityRatio() {
        return humidityRatio;
    }

    /** What surrounds the piece at a pace of {@link SmokerSurface}. */
    public MediumSchedule at(double pace) {
        Exposure surface = SmokerSurface.at(pace);
        return schedule(
                humidityRatio.isPresent() ? surface.inAirOf(humidityRatio.getAsDouble()) : surface,
                SmokerSurface.wrapped(pace));
    }

    /**
     * The coldest this smoke can be for a piece: wet for ever, wrapped or not, whatever a wet bulb showed, in air so much
     * colder.
     */
    public MediumSchedule alwaysWet(double colderCelsius) {
        Exposure wet = SmokerSurface.alwaysWet();
        List<Segment> segments = new ArrayList<>(stretches.size());
        for (Stretch stretch : stretches) {
            segments.add(Segment.bare(
                    stretch.minutes(),
                    stretch.fromCelsius() - colderCelsius,
                    stretch.toCelsius() - colderCelsius,
                    wet));
        }
        return MediumSchedule.of(segments);
    }

    private MediumSchedule schedule(Exposure bare, double wrapped) {
        List<Segment> segments = new ArrayList<>(stretches.size());
        for (Stretch stretch : stretches) {
            segments.add(
                    stretch.wrapped()
                            ? new Segment(stretch.minutes(), stretch.fromCelsius(), stretch.toCelsius(), wrapped)
                            : Segment.bare(stretch.minutes(), stretch.fromCelsius(), stretch.toCelsius(), bare));
        }
        return MediumSchedule.of(segments);
    }
}
