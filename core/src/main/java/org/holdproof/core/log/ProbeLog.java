package org.holdproof.core.log;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.quantity.TemperatureUnit;

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
    private final List<LogContents> contents;

    public ProbeLog(
            String fileName,
            List<Channel> channels,
            int rows,
            long[][] epochMillis,
            int[][] lines,
            double[][][] celsius,
            List<LogFault> faults) {
        this(fileName, channels, rows, epochMillis, lines, celsius, faults, List.of());
    }

    /** @param contents what became of the rows of each file the log was read from */
    public ProbeLog(
            String fileName,
            List<Channel> channels,
            int rows,
            long[][] epochMillis,
            int[][] lines,
            double[][][] celsius,
            List<LogFault> faults,
            List<LogContents> contents) {
        this.fileName = fileName;
        this.channels = List.copyOf(channels);
        this.rows = rows;
        this.epochMillis = epochMillis;
        this.lines = lines;
        this.celsius = celsius;
        this.faults = List.copyOf(faults);
        this.contents = List.copyOf(contents);
    }

    /** What became of the rows of each file it was read from; none where it was made in memory. */
    public List<LogContents> contents() {
        return contents;
    }

    /** The file's own name, without its folder. */
    public String fileName() {
        return fileName;
    }

    public List<Channel> channels() {
        return channels;
    }

    /**
     * The place among {@link #channels()} of the channel of this name, or else of the only one with this heading as
     * printed; letter case and outer blanks ignored.
     */
    public Optional<Integer> channelNamed(String name) {
        String wanted = name.strip();
        for (int i = 0; i < channels.size(); i++) {
            if (channels.get(i).name().strip().equalsIgnoreCase(wanted)) {
                return Optional.of(i);
            }
        }
        int found = -1;
        for (int i = 0; i < channels.size(); i++) {
            if (channels.get(i).heading().strip().equalsIgnoreCase(wanted)) {
                if (found >= 0) {
                    return Optional.empty();
                }
                found = i;
            }
        }
        return found < 0 ? Optional.empty() : Optional.of(found);
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

    /**
     * Begins a log made in memory: by a device, a page, a test.
     *
     * @param fileName the name messages and reports print
     */
    public static Builder named(String fileName) {
        return new Builder(fileName);
    }

    /** Puts a log together from readings in memory. Not for use by several threads. */
    public static final class Builder {
        private final String fileName;
        private final List<Channel> channels = new ArrayList<>();
        private final List<LogFault> faults = new ArrayList<>();
        private final List<LogContents> contents = new ArrayList<>();
        private long[][] epochMillis = new long[0][];
        private int[][] lines = new int[0][];
        private double[][][] celsius = new double[0][][];
        private int rows;

        private Builder(String fileName) {
            this.fileName = fileName;
        }

        /**
         * Adds a channel; all of them before the first row.
         *
         * @throws IllegalStateException after the first row
         */
        public Builder channel(String name, TemperatureUnit unit) {
            if (rows > 0) {
                throw new IllegalStateException("a channel after the first row");
            }
            channels.add(new Channel(name, channels.size() + 2, unit));
            celsius = new double[channels.size()][0][];
            return this;
        }

        /** Adds a row numbered as in a file whose first line is a heading; as {@link #row(long, int, double...)}. */
        public Builder row(long millis, double... readings) {
            return row(millis, rows + 2, readings);
        }

        /**
         * Adds a row.
         *
         * @param millis its instant, in milliseconds since 1970-01-01T00:00Z, after the row before
         * @param line the line to name in messages
         * @param readings one a channel, in °C, NaN where it is missing
         * @throws IllegalArgumentException if the instant does not follow, the readings are not one a channel, or one is
         *     infinite
         */
        public Builder row(long millis, int line, double... readings) {
            if (readings.length != channels.size()) {
                throw new IllegalArgumentException(readings.length + " readings for " + channels.size() + " channels");
            }
            if (rows > 0 && millis <= epochMillis[(rows - 1) >> CHUNK_BITS][(rows - 1) & MASK]) {
                throw new IllegalArgumentException("row " + rows + " does not follow the one before");
            }
            int chunk = rows >> CHUNK_BITS;
            if ((rows & MASK) == 0) {
                epochMillis = Arrays.copyOf(epochMillis, chunk + 1);
                epochMillis[chunk] = new long[CHUNK];
                lines = Arrays.copyOf(lines, chunk + 1);
                lines[chunk] = new int[CHUNK];
                for (int channel = 0; channel < celsius.length; channel++) {
                    celsius[channel] = Arrays.copyOf(celsius[channel], chunk + 1);
                    celsius[channel][chunk] = new double[CHUNK];
                }
            }
            epochMillis[chunk][rows & MASK] = millis;
            lines[chunk][rows & MASK] = line;
            for (int channel = 0; channel < readings.length; channel++) {
                if (Double.isInfinite(readings[channel])) {
                    throw new IllegalArgumentException("reading " + readings[channel]);
                }
                celsius[channel][chunk][rows & MASK] = readings[channel];
            }
            rows++;
            return this;
        }

        /** Adds what is known to be wrong with it. */
        public Builder faults(List<LogFault> known) {
            faults.addAll(known);
            return this;
        }

        /** Adds what became of the rows of the files it comes from. */
        public Builder contents(List<LogContents> files) {
            contents.addAll(files);
            return this;
        }

        /**
         * The log.
         *
         * @throws IllegalStateException if there is no channel or no row
         */
        public ProbeLog build() {
            if (channels.isEmpty() || rows == 0) {
                throw new IllegalStateException("a log without a channel or a row");
            }
            return new ProbeLog(fileName, channels, rows, epochMillis, lines, celsius, faults, contents);
        }
    }
}
