package org.holdproof.core.log;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** All logs here are made up. */
class GapLimitTest {

    @Test
    void exactlyThreeTimesTheRhythmIsNoGapAndAMillisecondMoreIsOne() {
        assertThat(GapLimit.isGap(every(140_000, 140_000, 420_000, 140_000, 140_000), 2))
                .isFalse();
        assertThat(GapLimit.isGap(every(140_000, 140_000, 420_001, 140_000, 140_000), 2))
                .isTrue();
    }

    @Test
    void fiveMinutesAreNeverAGapAndMoreThanThirtyAlwaysAre() {
        assertThat(GapLimit.isGap(minutes(1, 1, 5, 1, 1), 2)).isFalse();
        assertThat(GapLimit.isGap(minutes(1, 1, 6, 1, 1), 2)).isTrue();
        assertThat(GapLimit.isGap(minutes(25, 25, 30, 25, 25), 2)).isFalse();
        assertThat(GapLimit.isGap(minutes(25, 25, 31, 25, 25), 2)).isTrue();
        assertThat(GapLimit.around(minutes(25, 25, 31, 25, 25), 2)).isEqualTo(30);
    }

    @Test
    void aLoggerMayChangeItsRhythm() {
        Trace slower = minutes(1, 1, 1, 1, 1, 10, 10, 10, 10);
        for (int i = 0; i + 1 < slower.size(); i++) {
            assertThat(GapLimit.isGap(slower, i)).as("interval %d", i).isFalse();
        }
    }

    @Test
    void oneOddIntervalIsNoRhythm() {
        Trace twoHoles = minutes(1, 1, 1, 12, 12, 1, 1, 1);
        assertThat(GapLimit.isGap(twoHoles, 3)).isTrue();
        assertThat(GapLimit.isGap(twoHoles, 4)).isTrue();
        Trace holeAtTheStart = minutes(12, 12, 1, 1, 1);
        assertThat(GapLimit.isGap(holeAtTheStart, 0)).isTrue();
        assertThat(GapLimit.isGap(holeAtTheStart, 1)).isTrue();
    }

    @Test
    void aRhythmDoesNotReachAcrossALongGap() {
        assertThat(GapLimit.isGap(minutes(1, 1, 12, 120, 12, 12, 12), 2)).isTrue();
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {11, 12, 13, 14})
    void whatIsLoggedLaterThanThreeIntervalsOnChangesNothing(long seed) {
        Random random = new Random(seed);
        for (int log = 0; log < 500; log++) {
            long[] intervals = random.longs(60, 1, 20).map(m -> m * 60_000).toArray();
            Trace whole = every(intervals);
            int kept = 20 + random.nextInt(30);
            Trace cut = every(Arrays.copyOf(intervals, kept));
            for (int i = 0; i < kept - 3; i++) {
                assertThat(GapLimit.around(cut, i)).isEqualTo(GapLimit.around(whole, i));
            }
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {21, 22, 23, 24})
    void cuttingAPieceOutOfASteadyLogBridgesNoOtherHole(long seed) {
        Random random = new Random(seed);
        for (int log = 0; log < 500; log++) {
            long[] intervals = new long[40];
            Arrays.fill(intervals, 60_000);
            int hole = random.nextInt(intervals.length);
            intervals[hole] = (6 + random.nextInt(24)) * 60_000L;
            int cut = random.nextInt(20);
            int length = 2 + random.nextInt(18);
            if (cut <= hole && hole < cut + length) {
                continue;
            }
            long[] merged = new long[intervals.length - length + 1];
            System.arraycopy(intervals, 0, merged, 0, cut);
            merged[cut] = length * 60_000L;
            System.arraycopy(intervals, cut + length, merged, cut + 1, intervals.length - cut - length);
            int now = hole < cut ? hole : hole - length + 1;
            assertThat(GapLimit.isGap(every(merged), now)).isTrue();
        }
    }

    private static Trace minutes(long... minutes) {
        return every(Arrays.stream(minutes).map(m -> m * 60_000).toArray());
    }

    private static Trace every(long... intervalMillis) {
        long[] millis = new long[intervalMillis.length + 1];
        for (int i = 0; i < intervalMillis.length; i++) {
            millis[i + 1] = millis[i] + intervalMillis[i];
        }
        return new Trace("core", millis, new double[millis.length]);
    }
}
