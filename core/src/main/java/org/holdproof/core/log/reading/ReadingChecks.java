package org.holdproof.core.log.reading;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.holdproof.core.log.GapLimit;
import org.holdproof.core.log.LogFault;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.log.Trace;

/**
 * Looks for readings that are suspect but kept, and for spells without readings. The thresholds are common practice, no
 * source.
 */
final class ReadingChecks {
    /** A rise or fall between two readings beyond this, in °C, is a jump, */
    static final double JUMP_CELSIUS = 20;

    /** if they are at most this far apart. */
    static final long JUMP_MILLIS = 60_000;

    /** A figure repeated for at least this long, */
    static final long STUCK_MILLIS = 3_600_000;

    /** in at least this many readings, is stuck, */
    static final int STUCK_READINGS = 20;

    /** if another channel moved by more than this meanwhile, in °C. */
    static final double STUCK_WHILE_OTHER_MOVED = 5;

    /** What a common digital sensor says before its first measurement, in °C; common practice, no source. */
    static final double POWER_ON_CELSIUS = 85;

    private static final double POWER_ON_DISTANCE = 10;
    private static final double SAME = 1e-9;
    private static final long NEVER_A_GAP_MILLIS = Math.round(GapLimit.FLOOR_MINUTES * 60_000);

    private final ProbeLog log;
    private final FaultLedger ledger;

    ReadingChecks(ProbeLog log, FaultLedger ledger) {
        this.log = log;
        this.ledger = ledger;
    }

    /** Enters what it finds in every channel. */
    void run() {
        for (int channel = 0; channel < log.channels().size(); channel++) {
            run(channel);
        }
    }

    private void run(int channel) {
        Gaps gaps = new Gaps(channel);
        int before = -1;
        int runStart = -1;
        int runCount = 0;
        for (int row = 0; row < log.rows(); row++) {
            double reading = log.celsius(channel, row);
            if (Double.isNaN(reading)) {
                continue;
            }
            if (before >= 0) {
                long interval = log.millis(row) - log.millis(before);
                gaps.look(before, row, interval);
                double step = reading - log.celsius(channel, before);
                if (step != 0) {
                    changes(channel, before, row, step, interval);
                    stuck(channel, runStart, before, runCount);
                    runStart = row;
                    runCount = 0;
                }
            } else {
                runStart = row;
            }
            runCount++;
            before = row;
        }
        if (before >= 0) {
            stuck(channel, runStart, before, runCount);
        }
    }

    private String name(int channel) {
        return log.channels().get(channel).name();
    }

    private void changes(int channel, int before, int row, double step, long interval) {
        boolean powerOn = Math.abs(log.celsius(channel, row) - POWER_ON_CELSIUS) < SAME
                && Math.abs(step) > POWER_ON_DISTANCE
                && leavesAgain(channel, row);
        if (powerOn) {
            ledger.add(
                    LogFault.Kind.JUMP,
                    name(channel),
                    log.line(before),
                    log.line(row),
                    "exactly 85.0 °C between readings far from it: many digital sensors say so when they lose power;"
                            + " kept");
        } else if (Math.abs(step) > JUMP_CELSIUS && interval <= JUMP_MILLIS) {
            ledger.add(
                    LogFault.Kind.JUMP,
                    name(channel),
                    log.line(before),
                    log.line(row),
                    String.format(Locale.ROOT, "%+.1f °C in %.0f s; kept", step, interval / 1000.0));
        }
    }

    private boolean leavesAgain(int channel, int row) {
        for (int next = row + 1; next < log.rows(); next++) {
            double reading = log.celsius(channel, next);
            if (!Double.isNaN(reading) && reading != log.celsius(channel, row)) {
                return Math.abs(reading - POWER_ON_CELSIUS) > POWER_ON_DISTANCE;
            }
        }
        return false;
    }

    private void stuck(int channel, int first, int last, int count) {
        if (count < STUCK_READINGS || log.millis(last) - log.millis(first) < STUCK_MILLIS) {
            return;
        }
        for (int other = 0; other < log.channels().size(); other++) {
            if (other == channel) {
                continue;
            }
            double low = Double.POSITIVE_INFINITY;
            double high = Double.NEGATIVE_INFINITY;
            for (int row = first; row <= last; row++) {
                double reading = log.celsius(other, row);
                if (!Double.isNaN(reading)) {
                    low = Math.min(low, reading);
                    high = Math.max(high, reading);
                }
            }
            if (high - low > STUCK_WHILE_OTHER_MOVED) {
                ledger.add(
                        LogFault.Kind.STUCK,
                        name(channel),
                        log.line(first),
                        log.line(last),
                        String.format(
                                Locale.ROOT,
                                "the same figure %d times in %.0f min while %s moved by %.1f °C; kept",
                                count,
                                (log.millis(last) - log.millis(first)) / 60_000.0,
                                name(other),
                                high - low));
                return;
            }
        }
    }

    /** The gaps of one channel. Its trace is made only where an interval is long enough to be one. */
    private final class Gaps {
        private final int channel;
        private final List<Trace> readings = new ArrayList<>(1);
        private int reading;

        Gaps(int channel) {
            this.channel = channel;
        }

        /** Looks at the channel's next interval, between two rows. */
        void look(int before, int row, long millis) {
            if (millis > NEVER_A_GAP_MILLIS) {
                if (readings.isEmpty()) {
                    readings.add(log.trace(channel));
                }
                if (GapLimit.isGap(readings.get(0), reading)) {
                    enter(before, row, millis / 60_000.0, GapLimit.around(readings.get(0), reading));
                }
            }
            reading++;
        }

        private void enter(int before, int row, double minutes, double limit) {
            ledger.add(
                    LogFault.Kind.GAP,
                    name(channel),
                    log.line(before),
                    log.line(row),
                    String.format(
                            Locale.ROOT, "no reading for %.1f min; longer than %.1f min is a gap", minutes, limit));
        }
    }
}
