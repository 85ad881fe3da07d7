package org.holdproof.core.log;

import java.util.List;
import java.util.Optional;

/**
 * A log as read: one row an instant, strictly increasing, one column a channel. A missing reading is not a number,
 * never zero.
 */
public final class ProbeLog {
    private static final int CHUNK_BITS = 14;
    private static final int CHUNK = 1 << CHUNK_BITS;
    private static final int MASK = CHUNK - 1;

    private final String fileName;
    private final List<Channel> channels;
    private final int rows;
    private final long[][] epochMillis;
    private final int[][] lines;
    private final double[][][] celsius;
    private final List<LogFault> faults;

    public ProbeLog(
            String fileName,
            List<Channel> channels,
            int rows,
            long[][] epochMillis,
            int[][] lines,
            double[][][] celsius,
            List<LogFault> faults) {
        this.fileName = fileName;
        this.channels = List.copyOf(channels);
        this.rows = rows;
        this.epochMillis = epochMillis;
        this.lines = lines;
        this.celsius = celsius;
        this.faults = List.copyOf(faults);
    }

    /** The file's own name, without its folder. */
    public String fileName() {
        return fileName;
    }

    public List<Channel> channels() {
        return channels;
    }

    /** The place of the channel of this name among {@link #channels()}, letter case and outer blanks ignored. */
    public Optional<Integer> channelNamed(String name) {
        for (int i = 0; i < channels.size(); i++) {
            if (channels.get(i).name().strip().equalsIgnoreCase(name.strip())) {
                return Optional.of(i);
            }
        }
        return Optional.empty();
    }

    public int rows() {
        return rows;
    }

    /** The instant of a row, in milliseconds since 1970-01-01T00:00Z. */
    public long millis(int row) {
        return epochMillis[row >> CHUNK_BITS][row & MASK];
    }

    /** The reading of a channel in a row, in °C, or NaN where it is missing. */
    public double celsius(int channel, int row) {
        return celsius[channel][row >> CHUNK_BITS][row & MASK];
    }

    /** The line of the file a row was read from, counted from 1. */
    public int line(int row) {
        return lines[row >> CHUNK_BITS][row & MASK];
    }

    /** What is wrong with the log, in the order of its lines; at most a fixed number of each kind is listed. */
    public List<LogFault> faults() {
        return faults;
    }

    /** One channel's readings, missing ones left out. */
    public Trace trace(int channel) {
        int count = 0;
        for (int row = 0; row < rows; row++) {
            if (!Double.isNaN(celsius(channel, row))) {
                count++;
            }
        }
        long[] millis = new long[count];
        double[] readings = new double[count];
        int next = 0;
        for (int row = 0; row < rows; row++) {
            double reading = celsius(channel, row);
            if (!Double.isNaN(reading)) {
                millis[next] = millis(row);
                readings[next++] = reading;
            }
        }
        return new Trace(channels.get(channel).name(), millis, readings);
    }
}
