package org.holdproof.core.log;

import java.util.ArrayList;
import java.util.List;
import org.holdproof.core.quantity.TemperatureUnit;

/** A log made up for a test, without a file. */
public final class InventedLog {
    private InventedLog() {}

    /**
     * Puts a log together.
     *
     * @param celsius a column for each name, NaN where a reading is missing
     */
    public static ProbeLog of(
            String fileName, List<String> names, long[] millis, double[][] celsius, List<LogFault> faults) {
        int chunk = 1 << 14;
        int chunks = millis.length / chunk + 1;
        long[][] clock = new long[chunks][chunk];
        int[][] lines = new int[chunks][chunk];
        double[][][] readings = new double[names.size()][chunks][chunk];
        List<Channel> channels = new ArrayList<>();
        for (int channel = 0; channel < names.size(); channel++) {
            channels.add(new Channel(names.get(channel), channel + 2, TemperatureUnit.CELSIUS));
        }
        for (int row = 0; row < millis.length; row++) {
            clock[row / chunk][row % chunk] = millis[row];
            lines[row / chunk][row % chunk] = row + 2;
            for (int channel = 0; channel < names.size(); channel++) {
                readings[channel][row / chunk][row % chunk] = celsius[channel][row];
            }
        }
        return new ProbeLog(fileName, channels, millis.length, clock, lines, readings, faults);
    }
}
