package org.holdproof.core.log.reading;

import java.util.Arrays;

/**
 * The rows of a log while it is being read: a clock, a line number and one reading a channel, in chunks, so that growing
 * never copies what is there. A row takes 12 bytes and 8 for each channel.
 */
final class Columns {
    static final int CHUNK_BITS = 14;
    static final int CHUNK = 1 << CHUNK_BITS;
    private static final int MASK = CHUNK - 1;
    private static final int MOST_ROWS = 1 << 30;

    private final int channels;
    private long[][] clocks = new long[0][];
    private int[][] lines = new int[0][];
    private final double[][][] celsius;
    private int rows;

    Columns(int channels) {
        this.channels = channels;
        this.celsius = new double[channels][0][];
    }

    int channels() {
        return channels;
    }

    int rows() {
        return rows;
    }

    /** Bytes held in chunks. */
    long bytes() {
        return (long) chunks() * CHUNK * (Long.BYTES + Integer.BYTES + (long) Double.BYTES * channels);
    }

    private int chunks() {
        int used = 0;
        while (used < clocks.length && clocks[used].length > 0) {
            used++;
        }
        return used;
    }

    /** Adds a row; the readings are copied. */
    void add(long clock, long line, double[] readings) {
        int chunk = rows >> CHUNK_BITS;
        int place = rows & MASK;
        if (place == 0) {
            open(chunk, line);
        }
        clocks[chunk][place] = clock;
        lines[chunk][place] = (int) line;
        for (int channel = 0; channel < channels; channel++) {
            celsius[channel][chunk][place] = readings[channel];
        }
        rows++;
    }

    private void open(int chunk, long line) {
        if (rows >= MOST_ROWS || line > Integer.MAX_VALUE - CHUNK) {
            throw new Refusal(
                    line,
                    0,
                    "more than " + rows + " rows",
                    "at most " + MOST_ROWS + " rows",
                    "Split the file by days.");
        }
        if (chunk == clocks.length) {
            int room = Math.max(4, chunk * 2);
            int had = clocks.length;
            clocks = Arrays.copyOf(clocks, room);
            lines = Arrays.copyOf(lines, room);
            Arrays.fill(clocks, had, room, new long[0]);
            Arrays.fill(lines, had, room, new int[0]);
            for (int channel = 0; channel < channels; channel++) {
                celsius[channel] = Arrays.copyOf(celsius[channel], room);
                Arrays.fill(celsius[channel], had, room, new double[0]);
            }
        }
        clocks[chunk] = new long[CHUNK];
        lines[chunk] = new int[CHUNK];
        for (int channel = 0; channel < channels; channel++) {
            celsius[channel][chunk] = new double[CHUNK];
        }
    }

    long clock(int row) {
        return clocks[row >> CHUNK_BITS][row & MASK];
    }

    void setClock(int row, long clock) {
        clocks[row >> CHUNK_BITS][row & MASK] = clock;
    }

    int line(int row) {
        return lines[row >> CHUNK_BITS][row & MASK];
    }

    /** The reading in °C, or NaN where it is missing. */
    double celsius(int channel, int row) {
        return celsius[channel][row >> CHUNK_BITS][row & MASK];
    }

    void setCelsius(int channel, int row, double reading) {
        celsius[channel][row >> CHUNK_BITS][row & MASK] = reading;
    }

    /** Copies a row over another. */
    void copy(int from, int to) {
        setClock(to, clock(from));
        lines[to >> CHUNK_BITS][to & MASK] = line(from);
        for (int channel = 0; channel < channels; channel++) {
            setCelsius(channel, to, celsius(channel, from));
        }
    }

    /** Turns the order of the rows round. */
    void reverse() {
        for (int low = 0, high = rows - 1; low < high; low++, high--) {
            long clock = clock(low);
            int line = line(low);
            setClock(low, clock(high));
            lines[low >> CHUNK_BITS][low & MASK] = line(high);
            setClock(high, clock);
            lines[high >> CHUNK_BITS][high & MASK] = line;
            for (int channel = 0; channel < channels; channel++) {
                double reading = celsius(channel, low);
                setCelsius(channel, low, celsius(channel, high));
                setCelsius(channel, high, reading);
            }
        }
    }

    /** Keeps the first rows only and lets go of the chunks behind them. */
    void keep(int count) {
        rows = count;
        int chunks = (count + CHUNK - 1) >> CHUNK_BITS;
        clocks = Arrays.copyOf(clocks, chunks);
        lines = Arrays.copyOf(lines, chunks);
        for (int channel = 0; channel < channels; channel++) {
            celsius[channel] = Arrays.copyOf(celsius[channel], chunks);
        }
    }

    /** The chunks of the clock, in milliseconds since 1970-01-01T00:00Z; not copied. */
    long[][] clockChunks() {
        return clocks;
    }

    /** The chunks of the line numbers; not copied. */
    int[][] lineChunks() {
        return lines;
    }

    /** The chunks of each channel; not copied. */
    double[][][] celsiusChunks() {
        return celsius;
    }
}
