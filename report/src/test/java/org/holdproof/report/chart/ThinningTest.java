package org.holdproof.report.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.holdproof.core.log.InventedLog;
import org.holdproof.core.log.ProbeLog;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Invented readings. */
class ThinningTest {
    private static final long SECOND = 1000;

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {11, 12, 13, 14, 15, 16})
    void everyColumnKeepsItsLowestAndHighestReading(long seed) {
        Random random = new Random(seed);
        int rows = 20_000 + random.nextInt(20_000);
        long[] millis = new long[rows];
        double[] celsius = new double[rows];
        for (int row = 0; row < rows; row++) {
            millis[row] = row * SECOND;
            celsius[row] = random.nextInt(50) == 0 ? Double.NaN : 50 + 40 * random.nextGaussian();
        }
        int columns = 50 + random.nextInt(400);
        long to = (rows - 1) * SECOND;
        List<Thinning.Run> runs = Thinning.of(log(millis, celsius), 0, 0, to, columns, 0, 10);

        assertThat(runs).hasSize(1);
        Thinning.Run run = runs.get(0);
        assertThat(run.size()).isLessThanOrEqualTo(4 * (columns + 1));
        double[] low = new double[columns + 1];
        double[] high = new double[columns + 1];
        java.util.Arrays.fill(low, Double.POSITIVE_INFINITY);
        java.util.Arrays.fill(high, Double.NEGATIVE_INFINITY);
        double width = to / (double) columns;
        for (int i = 0; i < run.size(); i++) {
            int column = (int) (run.millis(i) / width);
            low[column] = Math.min(low[column], run.celsius(i));
            high[column] = Math.max(high[column], run.celsius(i));
            if (i > 0) {
                assertThat(run.millis(i)).isGreaterThan(run.millis(i - 1));
            }
        }
        for (int row = 0; row < rows; row++) {
            if (!Double.isNaN(celsius[row])) {
                int column = (int) (millis[row] / width);
                assertThat(celsius[row]).isBetween(low[column], high[column]);
            }
        }
    }

    @Test
    void aGapBreaksTheLine() {
        long minute = 60 * SECOND;
        long[] millis = {0, minute, 2 * minute, 9 * minute, 10 * minute};
        double[] celsius = {50, 51, 52, 59, 60};
        assertThat(Thinning.of(log(millis, celsius), 0, 0, 10 * minute, 1000, 0, 5))
                .extracting(Thinning.Run::size)
                .containsExactly(3, 2);
        assertThat(Thinning.of(log(millis, celsius), 0, 0, 10 * minute, 1000, 0, 7))
                .extracting(Thinning.Run::size)
                .containsExactly(5);
    }

    @Test
    void oneReadingOnEitherSideReachesTheEdge() {
        long minute = 60 * SECOND;
        long[] millis = {0, minute, 2 * minute, 3 * minute, 4 * minute, 5 * minute};
        double[] celsius = {10, 11, 12, 13, 14, 15};
        Thinning.Run run = Thinning.of(log(millis, celsius), 0, 90 * SECOND, 200 * SECOND, 100, 0.5, 5)
                .get(0);
        assertThat(run.millis(0)).isEqualTo(minute);
        assertThat(run.celsius(0)).isEqualTo(11.5);
        assertThat(run.millis(run.size() - 1)).isEqualTo(4 * minute);
    }

    @Test
    void aLogWithoutReadingsHasNoLine() {
        assertThat(Thinning.of(log(new long[] {0}, new double[] {Double.NaN}), 0, 0, 1000, 10, 0, 5))
                .isEmpty();
    }

    private static ProbeLog log(long[] millis, double[] celsius) {
        return InventedLog.of("log.csv", List.of("core"), millis, new double[][] {celsius}, List.of());
    }
}
