package org.holdproof.report.chart;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.verdict.Curve;

/**
 * Thins a channel to what a chart can show without losing a peak: of every column of the plot the first, the lowest, the
 * highest and the last reading, in order of time. A spell without readings breaks the line.
 */
public final class Thinning {
    private static final double MILLIS_PER_MINUTE = 60_000;

    private final long from;
    private final double millisPerColumn;
    private final double gapMillis;
    private final List<Run> runs = new ArrayList<>();

    private long[] millis = new long[64];
    private double[] celsius = new double[64];
    private int size;

    private long column = Long.MIN_VALUE;
    private int inColumn;
    private final long[] columnMillis = new long[4];
    private final double[] columnCelsius = new double[4];

    private Thinning(long from, double millisPerColumn, double gapMinutes) {
        this.from = from;
        this.millisPerColumn = millisPerColumn;
        this.gapMillis = gapMinutes * MILLIS_PER_MINUTE;
    }

    /** An unbroken line of readings. */
    public static final class Run {
        private final long[] epochMillis;
        private final double[] celsius;

        Run(long[] epochMillis, double[] celsius) {
            this.epochMillis = epochMillis;
            this.celsius = celsius;
        }

        public int size() {
            return celsius.length;
        }

        /** The instant of a point, in milliseconds since 1970-01-01T00:00Z. */
        public long millis(int point) {
            return epochMillis[point];
        }

        /** A point's temperature, in °C. */
        public double celsius(int point) {
            return celsius[point];
        }
    }

    /** A computed line, already thin enough: its nominal values, in °C. */
    public static Run line(List<Curve.Point> points) {
        return new Run(
                points.stream().mapToLong(Curve.Point::epochMillis).toArray(),
                points.stream().mapToDouble(Curve.Point::nominal).toArray());
    }

    /**
     * Thins the readings between two instants, and one beyond each end so that a line reaches the edge.
     *
     * @param columns how many columns the plot has between the two instants, at least 1
     * @param addCelsius the instrument's known error, added to every reading
     * @param gapMinutes an interval longer than this breaks the line
     */
    public static List<Run> of(
            ProbeLog log, int channel, long from, long to, int columns, double addCelsius, double gapMinutes) {
        Thinning thinning = new Thinning(from, Math.max(1, (to - from) / (double) columns), gapMinutes);
        int first = firstRowFrom(log, from) - 1;
        while (first > 0 && Double.isNaN(log.celsius(channel, first))) {
            first--;
        }
        for (int row = Math.max(0, first); row < log.rows(); row++) {
            double reading = log.celsius(channel, row);
            if (!Double.isNaN(reading)) {
                thinning.take(log.millis(row), reading + addCelsius);
                if (log.millis(row) > to) {
                    break;
                }
            }
        }
        thinning.closeRun();
        return thinning.runs;
    }

    private static int firstRowFrom(ProbeLog log, long instant) {
        int low = 0;
        int high = log.rows();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (log.millis(middle) < instant) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private void take(long instant, double reading) {
        if (inColumn > 0 && instant - columnMillis[3] > gapMillis) {
            closeRun();
        }
        long itsColumn = (long) Math.floor((instant - from) / millisPerColumn);
        if (inColumn > 0 && itsColumn != column) {
            closeColumn();
        }
        if (inColumn == 0) {
            column = itsColumn;
            Arrays.fill(columnMillis, instant);
            Arrays.fill(columnCelsius, reading);
        }
        inColumn++;
        if (reading < columnCelsius[1]) {
            columnMillis[1] = instant;
            columnCelsius[1] = reading;
        }
        if (reading > columnCelsius[2]) {
            columnMillis[2] = instant;
            columnCelsius[2] = reading;
        }
        columnMillis[3] = instant;
        columnCelsius[3] = reading;
    }

    private void closeColumn() {
        boolean lowestFirst = columnMillis[1] <= columnMillis[2];
        put(0);
        put(lowestFirst ? 1 : 2);
        put(lowestFirst ? 2 : 1);
        put(3);
        inColumn = 0;
    }

    private void put(int which) {
        if (size > 0 && columnMillis[which] <= millis[size - 1]) {
            return;
        }
        if (size == millis.length) {
            millis = Arrays.copyOf(millis, 2 * size);
            celsius = Arrays.copyOf(celsius, 2 * size);
        }
        millis[size] = columnMillis[which];
        celsius[size++] = columnCelsius[which];
    }

    private void closeRun() {
        if (inColumn > 0) {
            closeColumn();
        }
        if (size > 0) {
            runs.add(new Run(Arrays.copyOf(millis, size), Arrays.copyOf(celsius, size)));
        }
        size = 0;
    }
}
