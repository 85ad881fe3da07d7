package org.holdproof.core.log.reading;

import java.util.BitSet;
import org.holdproof.core.log.LogFault;

/** Puts the rows in order of time: newest-first logs turned round, repeats and older rows left out. */
final class Chronology {
    private static final long HOUR = 3_600_000;

    private final Columns columns;
    private final FaultLedger ledger;
    private final int column;

    /** @param column the clock's column, counted from 1 */
    Chronology(Columns columns, FaultLedger ledger, int column) {
        this.columns = columns;
        this.ledger = ledger;
        this.column = column;
    }

    /**
     * Turns a log round that runs from its newest row to its oldest.
     *
     * @param local whether the clock is a local one, which may step once the other way, by an hour at most
     */
    void turnRound(boolean local) {
        int up = 0;
        int down = 0;
        long largestUp = 0;
        for (int row = 1; row < columns.rows(); row++) {
            long step = columns.clock(row) - columns.clock(row - 1);
            up += step > 0 ? 1 : 0;
            down += step < 0 ? 1 : 0;
            largestUp = Math.max(largestUp, step);
        }
        boolean clockChange = local && up == 1 && largestUp < HOUR && down > 1;
        if (down == 0 || (up > 0 && !clockChange)) {
            return;
        }
        columns.reverse();
        ledger.add(
                LogFault.Kind.NEWEST_FIRST,
                "",
                columns.line(columns.rows() - 1),
                columns.line(0),
                "the rows run from the newest to the oldest: read from the end");
    }

    /**
     * Leaves one row an instant, in order.
     *
     * @throws Refusal if more than half of the instants have two readings, or more than half of the rows are older than
     *     those before them
     */
    void order() {
        int rows = columns.rows();
        int last = 0;
        int backward = 0;
        BitSet[] conflicts = new BitSet[columns.channels()];
        BitSet instants = new BitSet();
        int firstConflictLine = 0;
        for (int row = 1; row < rows; row++) {
            long clock = columns.clock(row);
            long latest = columns.clock(last);
            if (clock > latest) {
                ledger.end(LogFault.Kind.BACKWARD_CLOCK, "");
                ledger.end(LogFault.Kind.REPEATED_CLOCK, "");
                last++;
                if (last != row) {
                    columns.copy(row, last);
                }
                continue;
            }
            int same = clock == latest ? last : find(clock, last);
            if (same < 0) {
                backward++;
                ledger.leaveOut("older than a row before");
                ledger.extend(LogFault.Kind.BACKWARD_CLOCK, "", columns.line(row), "older than a row before: left out");
            } else if (merge(row, same, conflicts)) {
                ledger.leaveOut("at a time already read");
                instants.set(same);
                firstConflictLine = firstConflictLine == 0 ? columns.line(row) : firstConflictLine;
            } else {
                ledger.leaveOut("at a time already read");
                ledger.extend(
                        LogFault.Kind.REPEATED_CLOCK,
                        "",
                        columns.line(row),
                        "the same time again, nothing against the readings before: left out");
            }
        }
        ledger.end(LogFault.Kind.BACKWARD_CLOCK, "");
        ledger.end(LogFault.Kind.REPEATED_CLOCK, "");
        if (backward * 2L > rows) {
            throw new Refusal(
                    0,
                    column,
                    backward + " of " + rows + " rows older than one before them",
                    "rows in order of time",
                    "Sort the file by time, or export the log again.");
        }
        columns.keep(last + 1);
        if (instants.cardinality() * 2L > columns.rows()) {
            throw new Refusal(
                    firstConflictLine,
                    column,
                    "different readings at the same time, for " + instants.cardinality() + " of " + columns.rows()
                            + " times",
                    "one row a time",
                    "Export the times with seconds; if the file lists several probes one below the other, export them"
                            + " side by side.");
        }
        if (columns.rows() < 2) {
            throw new Refusal(
                    0, column, "a single time in all rows", "at least two", "Export the whole log, with its times.");
        }
    }

    private int find(long clock, int last) {
        int low = 0;
        int high = last;
        while (low <= high) {
            int middle = (low + high) >>> 1;
            long there = columns.clock(middle);
            if (there == clock) {
                return middle;
            }
            if (there < clock) {
                low = middle + 1;
            } else {
                high = middle - 1;
            }
        }
        return -1;
    }

    /** Joins a row with one of the same instant; true if a channel has two readings, which then is missing. */
    private boolean merge(int row, int into, BitSet[] conflicts) {
        boolean conflict = false;
        for (int channel = 0; channel < conflicts.length; channel++) {
            double reading = columns.celsius(channel, row);
            double before = columns.celsius(channel, into);
            if (Double.isNaN(reading)) {
                continue;
            }
            if (conflicts[channel] == null) {
                conflicts[channel] = new BitSet();
            }
            if (conflicts[channel].get(into)) {
                conflict = true;
            } else if (Double.isNaN(before)) {
                columns.setCelsius(channel, into, reading);
            } else if (Double.compare(reading, before) != 0 && reading != before) {
                conflict = true;
                conflicts[channel].set(into);
                columns.setCelsius(channel, into, Double.NaN);
            }
        }
        if (conflict) {
            ledger.add(
                    LogFault.Kind.CONFLICTING_DUPLICATE,
                    "",
                    columns.line(into),
                    columns.line(row),
                    "different readings at the same time: taken as missing");
        }
        return conflict;
    }
}
