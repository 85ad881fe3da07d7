package org.holdproof.core.course;

import java.util.Arrays;
import java.util.OptionalDouble;
import org.holdproof.core.log.GapLimit;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Span;

/**
 * What one core can have been at every moment of a span, piece by piece. A piece lies between two readings, or between a
 * reading and an edge of the span; over it the core was nowhere colder than {@code low} and nowhere hotter than {@code
 * high}. A piece nobody saw has no bounds, unless the medium's log gives some.
 */
public final class CoreBounds {
    private final Trace trace;
    private final double toleranceCelsius;
    private long[] at = new long[64];
    private double[] low = new double[64];
    private double[] high = new double[64];
    private double[] lineFrom = new double[64];
    private double[] lineTo = new double[64];
    private boolean[] read = new boolean[64];
    private int size;

    private CoreBounds(Trace trace, double toleranceCelsius) {
        this.trace = trace;
        this.toleranceCelsius = toleranceCelsius;
    }

    /**
     * Bounds a core over a span. Readings after it say nothing about it.
     *
     * @param trace a core probe's readings, corrected
     * @param toleranceCelsius how far a reading may lie from the truth, in °C
     * @param cuts instants at which a piece must end, in rising order
     * @param surroundings what the medium's log says where the core was not read
     */
    public static CoreBounds of(
            Trace trace, double toleranceCelsius, Span span, long[] cuts, Surroundings surroundings) {
        CoreBounds bounds = new CoreBounds(trace, toleranceCelsius);
        bounds.build(span, cuts, surroundings);
        return bounds;
    }

    private void build(Span span, long[] cuts, Surroundings surroundings) {
        int first = firstAtOrAfter(span.fromMillis());
        int before = first - 1;
        long present = span.fromMillis();
        int i = first;
        if (before < 0 && i < trace.size() && trace.millis(i) <= span.toMillis() && trace.millis(i) > present) {
            boolean near = trace.millis(i) - present <= Math.round(GapLimit.FLOOR_MINUTES * 60_000);
            double reading = trace.celsius(i);
            cut(present, trace.millis(i), near, reading, reading, cuts, OptionalDouble.empty(), surroundings);
            present = trace.millis(i);
        }
        for (; i < trace.size() && trace.millis(i) <= span.toMillis(); i++) {
            if (i > 0 && trace.millis(i) > present) {
                boolean seen = !GapLimit.isGap(trace, i - 1);
                double share = (present - trace.millis(i - 1)) / (double) (trace.millis(i) - trace.millis(i - 1));
                double reading = trace.celsius(i);
                double start = trace.celsius(i - 1);
                boundsLow = Math.min(start, reading);
                boundsHigh = Math.max(start, reading);
                cut(
                        present,
                        trace.millis(i),
                        seen,
                        start + Math.max(0, share) * (reading - start),
                        reading,
                        cuts,
                        OptionalDouble.of(start),
                        surroundings);
                present = trace.millis(i);
            }
        }
        int last = i - 1;
        if (present < span.toMillis() || size == 0) {
            if (last < 0) {
                cut(present, span.toMillis(), false, 0, 0, cuts, OptionalDouble.empty(), surroundings);
            } else {
                double reading = trace.celsius(last);
                boolean near = span.toMillis() - trace.millis(last) <= edgeMillis(last);
                boundsLow = reading;
                boundsHigh = reading;
                cut(present, span.toMillis(), near, reading, reading, cuts, OptionalDouble.of(reading), surroundings);
            }
        }
    }

    private double boundsLow = Double.NaN;
    private double boundsHigh = Double.NaN;

    /** How long after a reading nobody need have looked again, by the rhythm before it. */
    private long edgeMillis(int last) {
        long rhythm = 0;
        if (last >= 2) {
            long[] before = new long[Math.min(3, last)];
            for (int k = 0; k < before.length; k++) {
                before[k] = trace.millis(last - k) - trace.millis(last - k - 1);
            }
            Arrays.sort(before);
            rhythm = before[(before.length - 1) / 2];
        }
        return Math.min(
                Math.round(GapLimit.CEILING_MINUTES * 60_000),
                Math.max(Math.round(GapLimit.FLOOR_MINUTES * 60_000), 3 * rhythm));
    }

    private void cut(
            long from,
            long to,
            boolean seen,
            double lineFromCelsius,
            double lineToCelsius,
            long[] cuts,
            OptionalDouble entered,
            Surroundings surroundings) {
        double least = Double.isNaN(boundsLow) ? lineToCelsius : boundsLow;
        double most = Double.isNaN(boundsHigh) ? lineToCelsius : boundsHigh;
        boundsLow = Double.NaN;
        boundsHigh = Double.NaN;
        long start = from;
        int next = Arrays.binarySearch(cuts, from);
        next = next < 0 ? -next - 1 : next + 1;
        while (start < to || (start == to && size == 0)) {
            long end = next < cuts.length && cuts[next] < to ? cuts[next++] : to;
            double length = Math.max(1, to - from);
            double a = lineFromCelsius + (start - from) / length * (lineToCelsius - lineFromCelsius);
            double b = lineFromCelsius + (end - from) / length * (lineToCelsius - lineFromCelsius);
            if (seen) {
                put(start, end, least - toleranceCelsius, most + toleranceCelsius, a, b, true);
            } else {
                Surroundings.Range range = entered.isPresent()
                        ? surroundings.range(entered.getAsDouble(), from, end, toleranceCelsius)
                        : Surroundings.Range.UNKNOWN;
                put(start, end, range.low(), range.high(), a, b, false);
            }
            if (end == start) {
                break;
            }
            start = end;
        }
    }

    private void put(long from, long to, double lowest, double highest, double a, double b, boolean seen) {
        if (size + 2 > at.length) {
            int room = at.length * 2;
            at = Arrays.copyOf(at, room);
            low = Arrays.copyOf(low, room);
            high = Arrays.copyOf(high, room);
            lineFrom = Arrays.copyOf(lineFrom, room);
            lineTo = Arrays.copyOf(lineTo, room);
            read = Arrays.copyOf(read, room);
        }
        at[size] = from;
        at[size + 1] = to;
        low[size] = lowest;
        high[size] = highest;
        lineFrom[size] = a;
        lineTo[size] = b;
        read[size] = seen;
        size++;
    }

    private int firstAtOrAfter(long millis) {
        int lowest = 0;
        int highest = trace.size();
        while (lowest < highest) {
            int middle = (lowest + highest) >>> 1;
            if (trace.millis(middle) < millis) {
                lowest = middle + 1;
            } else {
                highest = middle;
            }
        }
        return lowest;
    }

    /** The readings it was made from, those outside the span too. */
    public Trace trace() {
        return trace;
    }

    /** How far a reading may lie from the truth, in °C. */
    public double toleranceCelsius() {
        return toleranceCelsius;
    }

    /** The number of pieces. */
    public int size() {
        return size;
    }

    /** Where piece {@code i} begins. */
    public long fromMillis(int i) {
        return at[i];
    }

    /** Where piece {@code i} ends. */
    public long toMillis(int i) {
        return at[i + 1];
    }

    /** The length of piece {@code i}. */
    public double minutes(int i) {
        return (at[i + 1] - at[i]) / 60_000.0;
    }

    /** The coldest the core can have been in piece {@code i}, in °C; minus infinity where nothing says. */
    public double low(int i) {
        return low[i];
    }

    /** The hottest the core can have been in piece {@code i}, in °C; infinite where nothing says. */
    public double high(int i) {
        return high[i];
    }

    /** The straight line's temperature where piece {@code i} begins, in °C. */
    public double lineFrom(int i) {
        return lineFrom[i];
    }

    /** The straight line's temperature where piece {@code i} ends, in °C. */
    public double lineTo(int i) {
        return lineTo[i];
    }

    /** Whether piece {@code i} lies between readings that are no gap apart. */
    public boolean isRead(int i) {
        return read[i];
    }

    /** Whether anything bounds the core in piece {@code i}: readings, or the medium's log from at least one side. */
    public boolean isBounded(int i) {
        return read[i] || !Double.isInfinite(low[i]) || !Double.isInfinite(high[i]);
    }

    /** The share of piece {@code i} for which the straight line lies at or above a level. */
    public double shareAtOrAbove(int i, double level) {
        double cold = Math.min(lineFrom[i], lineTo[i]);
        double hot = Math.max(lineFrom[i], lineTo[i]);
        if (cold >= level) {
            return 1;
        }
        return hot < level ? 0 : (hot - level) / (hot - cold);
    }
}
