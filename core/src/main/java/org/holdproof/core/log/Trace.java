package org.holdproof.core.log;

import java.util.Arrays;

/**
 * The readings of one channel in order of time, missing ones left out. What lies between two readings nobody saw; what
 * to make of that is the caller's question.
 */
public final class Trace {
    private final String channel;
    private final long[] epochMillis;
    private final double[] celsius;
    /** One a reading, or one for all. */
    private final double[] toleranceCelsius;

    /**
     * Readings whose tolerance is not known to the trace: it counts as 0.
     *
     * @param channel the channel's name
     * @param epochMillis instants, strictly increasing
     * @param celsius readings in °C, finite, one an instant
     * @throws IllegalArgumentException if the lengths differ, an instant does not follow the one before, or a reading
     *     is not finite
     */
    public Trace(String channel, long[] epochMillis, double[] celsius) {
        this(channel, epochMillis, celsius, 0);
    }

    /**
     * @param channel the channel's name
     * @param epochMillis instants, strictly increasing
     * @param celsius readings in °C, finite, one an instant
     * @param toleranceCelsius how far each may lie from the truth, in °C, not negative
     * @throws IllegalArgumentException as the other constructor
     */
    public Trace(String channel, long[] epochMillis, double[] celsius, double toleranceCelsius) {
        this(channel, epochMillis, celsius, new double[] {toleranceCelsius});
    }

    /**
     * Readings of several instruments.
     *
     * @param toleranceCelsius how far each reading may lie from the truth, in °C, not negative, one an instant
     * @throws IllegalArgumentException as the other constructors
     */
    public static Trace ofInstruments(String channel, long[] epochMillis, double[] celsius, double[] toleranceCelsius) {
        if (toleranceCelsius.length != celsius.length) {
            throw new IllegalArgumentException(
                    celsius.length + " readings but " + toleranceCelsius.length + " tolerances");
        }
        return new Trace(
                channel, epochMillis, celsius, toleranceCelsius.length == 0 ? new double[1] : toleranceCelsius);
    }

    private Trace(String channel, long[] epochMillis, double[] celsius, double[] toleranceCelsius) {
        if (epochMillis.length != celsius.length) {
            throw new IllegalArgumentException(epochMillis.length + " instants but " + celsius.length + " readings");
        }
        for (int i = 0; i < celsius.length; i++) {
            if (!Double.isFinite(celsius[i])) {
                throw new IllegalArgumentException("reading " + i + " is " + celsius[i]);
            }
            if (i > 0 && epochMillis[i] <= epochMillis[i - 1]) {
                throw new IllegalArgumentException("instant " + i + " does not follow the one before");
            }
        }
        this.channel = channel;
        this.epochMillis = epochMillis.clone();
        this.celsius = celsius.clone();
        this.toleranceCelsius = toleranceCelsius.clone();
        for (double tolerance : toleranceCelsius) {
            if (!(tolerance >= 0) || Double.isInfinite(tolerance)) {
                throw new IllegalArgumentException("tolerance " + tolerance);
            }
        }
    }

    public String channel() {
        return channel;
    }

    public int size() {
        return celsius.length;
    }

    public boolean isEmpty() {
        return celsius.length == 0;
    }

    /** The instant of reading {@code i}, in milliseconds since 1970-01-01T00:00Z. */
    public long millis(int i) {
        return epochMillis[i];
    }

    /** Reading {@code i}, in °C. */
    public double celsius(int i) {
        return celsius[i];
    }

    /** How far reading {@code i} may lie from the truth either way, in °C. */
    public double toleranceCelsius(int i) {
        return toleranceCelsius[toleranceCelsius.length == 1 ? 0 : i];
    }

    /** How far any of the readings may lie from the truth either way, in °C. */
    public double toleranceCelsius() {
        double widest = 0;
        for (double tolerance : toleranceCelsius) {
            widest = Math.max(widest, tolerance);
        }
        return widest;
    }

    public long firstMillis() {
        return epochMillis[0];
    }

    public long lastMillis() {
        return epochMillis[epochMillis.length - 1];
    }

    /** Minutes from reading {@code i} to the one after it. */
    public double minutesAfter(int i) {
        return (epochMillis[i + 1] - epochMillis[i]) / 60_000.0;
    }

    /** The first reading at or after an instant; {@link #size()} where there is none. */
    public int indexFrom(long millis) {
        int found = Arrays.binarySearch(epochMillis, millis);
        return found < 0 ? -found - 1 : found;
    }

    /** The readings from one instant to another, both included. */
    public Trace between(long fromMillis, long toMillis) {
        int first = indexFrom(fromMillis);
        int end = toMillis == Long.MAX_VALUE ? size() : indexFrom(toMillis + 1);
        if (end <= first) {
            return new Trace(channel, new long[0], new double[0]);
        }
        return new Trace(
                channel,
                Arrays.copyOfRange(epochMillis, first, end),
                Arrays.copyOfRange(celsius, first, end),
                toleranceCelsius.length == 1 ? toleranceCelsius : Arrays.copyOfRange(toleranceCelsius, first, end));
    }

    /** The same readings with an instrument's known error added, in °C. */
    public Trace corrected(double addCelsius) {
        double[] corrected = new double[celsius.length];
        for (int i = 0; i < celsius.length; i++) {
            corrected[i] = celsius[i] + addCelsius;
        }
        return new Trace(channel, epochMillis, corrected, toleranceCelsius);
    }
}
