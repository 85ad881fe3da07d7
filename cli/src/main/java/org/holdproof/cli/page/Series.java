package org.holdproof.cli.page;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Set;
import java.util.TreeSet;
import org.holdproof.core.log.ProbeLog;

/**
 * Readings as they are drawn: every row where there are few, otherwise each channel's lowest and highest reading of
 * every slice of time, so that no peak is lost. Only ever drawn; figures come from the whole log.
 */
final class Series {
    /** More than a wide screen has dots for. */
    private static final int MOST_ROWS = 12_000;

    private static final int SLICES = 1500;
    private static final double HUNDREDTHS = 100;

    private Series() {}

    static ObjectNode of(ProbeLog log) {
        return of(log, 0, log.rows());
    }

    /** The rows from one instant to another, both included. */
    static ObjectNode between(ProbeLog log, long fromMillis, long toMillis) {
        return of(log, firstAtOrAfter(log, fromMillis), firstAtOrAfter(log, toMillis + 1));
    }

    private static ObjectNode of(ProbeLog log, int first, int end) {
        boolean thinned = end - first > MOST_ROWS;
        ObjectNode series = Asked.MAPPER.createObjectNode();
        series.put("thinned", thinned);
        ArrayNode times = series.putArray("times");
        ArrayNode readings = series.putArray("readings");
        ArrayNode[] columns = new ArrayNode[log.channels().size()];
        for (int channel = 0; channel < columns.length; channel++) {
            columns[channel] = readings.addArray();
        }
        if (!thinned) {
            for (int row = first; row < end; row++) {
                add(log, row, times, columns);
            }
            return series;
        }
        for (int row : extremes(log, first, end)) {
            add(log, row, times, columns);
        }
        return series;
    }

    private static void add(ProbeLog log, int row, ArrayNode times, ArrayNode[] columns) {
        times.add(log.millis(row));
        for (int channel = 0; channel < columns.length; channel++) {
            double celsius = log.celsius(channel, row);
            if (Double.isNaN(celsius)) {
                columns[channel].addNull();
            } else {
                columns[channel].add(Math.rint(celsius * HUNDREDTHS) / HUNDREDTHS);
            }
        }
    }

    private static Set<Integer> extremes(ProbeLog log, int first, int end) {
        TreeSet<Integer> kept = new TreeSet<>();
        for (int slice = 0; slice < SLICES; slice++) {
            int from = first + (int) ((long) (end - first) * slice / SLICES);
            int to = first + (int) ((long) (end - first) * (slice + 1) / SLICES);
            kept.add(from);
            kept.add(to - 1);
            for (int channel = 0; channel < log.channels().size(); channel++) {
                int low = -1;
                int high = -1;
                int missing = -1;
                for (int row = from; row < to; row++) {
                    double celsius = log.celsius(channel, row);
                    if (Double.isNaN(celsius)) {
                        missing = row;
                    } else {
                        low = low < 0 || celsius < log.celsius(channel, low) ? row : low;
                        high = high < 0 || celsius > log.celsius(channel, high) ? row : high;
                    }
                }
                for (int row : new int[] {low, high, missing}) {
                    if (row >= 0) {
                        kept.add(row);
                    }
                }
            }
        }
        return kept;
    }

    private static int firstAtOrAfter(ProbeLog log, long millis) {
        int low = 0;
        int high = log.rows();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (log.millis(middle) < millis) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
