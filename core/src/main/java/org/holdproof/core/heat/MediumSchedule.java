package org.holdproof.core.heat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.log.Trace;

/**
 * What surrounds a piece, from minute 0 on: one segment after another (smoker air, bath, ice slush, walk-in air), each
 * with its temperature held or running straight from one value to another, and its surface coefficient. Where one
 * segment ends and the next begins, temperature and coefficient may step.
 */
public final class MediumSchedule {
    private final double[] endMinute;
    private final double[] fromCelsius;
    private final double[] toCelsius;
    private final double[] coefficient;
    private final List<Optional<Exposure>> exposure;

    private MediumSchedule(List<Segment> segments) {
        if (segments.isEmpty()) {
            throw new IllegalArgumentException("a schedule needs at least one segment");
        }
        int count = segments.size();
        endMinute = new double[count];
        fromCelsius = new double[count];
        toCelsius = new double[count];
        coefficient = new double[count];
        exposure = segments.stream().map(Segment::exposure).toList();
        double clock = 0;
        for (int i = 0; i < count; i++) {
            Segment segment = segments.get(i);
            clock += segment.minutes();
            endMinute[i] = clock;
            fromCelsius[i] = segment.fromCelsius();
            toCelsius[i] = segment.toCelsius();
            coefficient[i] = segment.surfaceCoefficient();
        }
    }

    private MediumSchedule(double[] endMinute, double[] fromCelsius, double[] toCelsius, double[] coefficient) {
        this.endMinute = endMinute;
        this.fromCelsius = fromCelsius;
        this.toCelsius = toCelsius;
        this.coefficient = coefficient;
        exposure = Collections.nCopies(coefficient.length, Optional.empty());
    }

    /**
     * One stretch of time in one medium.
     *
     * @param minutes how long; infinite only for a held temperature
     * @param fromCelsius at its start
     * @param toCelsius at its end, in a straight line
     * @param surfaceCoefficient in W/(m² K); infinite: the surface takes the medium's temperature
     * @param exposure bare meat that radiates and dries; the coefficient is then its convection
     */
    public record Segment(
            double minutes,
            double fromCelsius,
            double toCelsius,
            double surfaceCoefficient,
            Optional<Exposure> exposure) {
        /** @throws IllegalArgumentException if a value is out of range */
        public Segment {
            if (!(minutes > 0)
                    || !Double.isFinite(fromCelsius)
                    || !Double.isFinite(toCelsius)
                    || !(surfaceCoefficient >= 0)
                    || (Double.isInfinite(minutes) && fromCelsius != toCelsius)) {
                throw new IllegalArgumentException("not a segment: " + minutes + " min, " + fromCelsius + " to "
                        + toCelsius + " °C, " + surfaceCoefficient + " W/(m² K)");
            }
        }

        /** A medium that only conducts: a bath, ice, or air about a wrapped piece. */
        public Segment(double minutes, double fromCelsius, double toCelsius, double surfaceCoefficient) {
            this(minutes, fromCelsius, toCelsius, surfaceCoefficient, Optional.empty());
        }

        /** Air about bare meat. */
        public static Segment bare(double minutes, double fromCelsius, double toCelsius, Exposure exposure) {
            return new Segment(minutes, fromCelsius, toCelsius, exposure.convection(), Optional.of(exposure));
        }

        /** A medium held at one temperature. */
        public static Segment hold(double minutes, double celsius, double surfaceCoefficient) {
            return new Segment(minutes, celsius, celsius, surfaceCoefficient);
        }
    }

    public static MediumSchedule of(Segment... segments) {
        return new MediumSchedule(List.of(segments));
    }

    public static MediumSchedule of(List<Segment> segments) {
        return new MediumSchedule(segments);
    }

    /** One medium, held for ever. */
    public static MediumSchedule held(double celsius, double surfaceCoefficient) {
        return of(Segment.hold(Double.POSITIVE_INFINITY, celsius, surfaceCoefficient));
    }

    /**
     * A medium as logged, straight between readings; before the first reading as the first, after the last as the last,
     * for ever.
     *
     * @param medium at least one reading
     * @param zeroMillis the instant of minute 0, in milliseconds since 1970-01-01T00:00Z
     * @param surfaceCoefficient in W/(m² K)
     */
    public static MediumSchedule logged(Trace medium, long zeroMillis, double surfaceCoefficient) {
        if (medium.isEmpty()) {
            throw new IllegalArgumentException("the medium's log has no reading");
        }
        List<Segment> segments = new ArrayList<>(medium.size() + 1);
        int next = 0;
        while (next < medium.size() && medium.millis(next) <= zeroMillis) {
            next++;
        }
        long clock = zeroMillis;
        double celsius = next == 0 ? medium.celsius(0) : readingAt(medium, next - 1, zeroMillis);
        for (; next < medium.size(); next++) {
            double minutes = (medium.millis(next) - clock) / 60_000.0;
            segments.add(new Segment(minutes, celsius, medium.celsius(next), surfaceCoefficient));
            clock = medium.millis(next);
            celsius = medium.celsius(next);
        }
        segments.add(Segment.hold(Double.POSITIVE_INFINITY, celsius, surfaceCoefficient));
        return new MediumSchedule(segments);
    }

    private static double readingAt(Trace trace, int before, long millis) {
        if (before + 1 >= trace.size()) {
            return trace.celsius(before);
        }
        double share = (millis - trace.millis(before)) / (double) (trace.millis(before + 1) - trace.millis(before));
        return trace.celsius(before) + share * (trace.celsius(before + 1) - trace.celsius(before));
    }

    /** The same temperatures with one surface coefficient throughout, in W/(m² K), nothing bare. */
    public MediumSchedule withSurfaceCoefficient(double surfaceCoefficient) {
        if (!(surfaceCoefficient >= 0)) {
            throw new IllegalArgumentException("not a surface coefficient: " + surfaceCoefficient + " W/(m² K)");
        }
        double[] everywhere = new double[coefficient.length];
        Arrays.fill(everywhere, surfaceCoefficient);
        return new MediumSchedule(endMinute, fromCelsius, toCelsius, everywhere);
    }

    /** When the last segment ends, in minutes; infinite if never. */
    public double endMinutes() {
        return endMinute[endMinute.length - 1];
    }

    /** The medium's temperature at a minute from 0 to {@link #endMinutes()}, in °C; at a step, the later one. */
    public double celsius(double minute) {
        int found = Arrays.binarySearch(endMinute, minute);
        int segment = Math.min(found < 0 ? -found - 1 : found + 1, segments() - 1);
        return celsius(segment, minute);
    }

    int segments() {
        return endMinute.length;
    }

    double startMinute(int segment) {
        return segment == 0 ? 0 : endMinute[segment - 1];
    }

    double endMinute(int segment) {
        return endMinute[segment];
    }

    double coefficient(int segment) {
        return coefficient[segment];
    }

    Optional<Exposure> exposure(int segment) {
        return exposure.get(segment);
    }

    double fromCelsius(int segment) {
        return fromCelsius[segment];
    }

    double toCelsius(int segment) {
        return toCelsius[segment];
    }

    /** The temperature within a segment or on its ends, in °C. */
    double celsius(int segment, double minute) {
        return fromCelsius[segment] + slope(segment) * (minute - startMinute(segment));
    }

    /** In °C a minute. */
    double slope(int segment) {
        return fromCelsius[segment] == toCelsius[segment]
                ? 0
                : (toCelsius[segment] - fromCelsius[segment]) / (endMinute[segment] - startMinute(segment));
    }
}
