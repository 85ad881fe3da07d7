package org.holdproof.core.assess;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import org.holdproof.core.course.Account;
import org.holdproof.core.course.RowTime;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.core.rules.LethalityTable;
import org.holdproof.core.rules.LethalityTable.Counting;
import org.holdproof.core.verdict.Verdict;

/**
 * One core held against published rows as their document counts: the longest unbroken spell, or the total time. Any row
 * will do. A total that is enough, but broken, is never a miss: where the document asks for one spell it leaves open
 * whether the broken one did the same.
 *
 * @param row the row that speaks best for the cook
 * @param minutes the time that counts; best is the total
 * @param longest where the longest spell at worst lay
 */
record RowsMet(Account account, Verdict verdict, LethalityRow row, Counting counting, Bounded minutes, Span longest) {
    /** A log's clock shows whole milliseconds: times are exact to one. */
    private static final double CLOCK_MINUTES = 1 / 60_000.0;

    /** A row of 0 s is met by two readings; for comparing rows it counts as this long. */
    private static final double INSTANT_MINUTES = 1 / 60.0;

    /** Rows with the way their document counts. */
    record Counted(LethalityRow row, Counting counting) {}

    static List<Counted> rows(List<LethalityTable> tables, OptionalDouble fatPercent) {
        List<Counted> rows = new ArrayList<>();
        for (LethalityTable table : tables) {
            for (LethalityRow row : table.rowsFor(fatPercent)) {
                rows.add(new Counted(row, table.counting()));
            }
        }
        return rows;
    }

    /** The row that speaks best for one core inside a window. */
    static RowsMet of(Account account, List<Counted> rows, Span window) {
        return rows.stream()
                .map(counted -> of(account, counted, window))
                .max(Comparator.<RowsMet, Verdict>comparing(RowsMet::verdict, Comparator.reverseOrder())
                        .thenComparingDouble(RowsMet::share))
                .orElseThrow(() -> new IllegalArgumentException("a table without rows"));
    }

    /** Of several probes, the one that speaks worst for the cook, whatever their order. */
    static RowsMet governing(List<RowsMet> probes) {
        return probes.stream()
                .min(Comparator.<RowsMet, Verdict>comparing(RowsMet::verdict, Comparator.reverseOrder())
                        .thenComparingDouble(RowsMet::share)
                        .thenComparingDouble(met -> met.minutes.worst())
                        .thenComparingDouble(met -> met.minutes.nominal())
                        .thenComparingDouble(met -> met.minutes.best()))
                .orElseThrow(() -> new IllegalArgumentException("no probes"));
    }

    private static RowsMet of(Account account, Counted counted, Span window) {
        RowTime time = RowTime.atOrAbove(account.bounds(), counted.row().at().celsius(), window);
        boolean total = counted.counting() == Counting.TOTAL;
        Bounded counts = total ? time.total() : time.unbroken();
        double best = time.total().best();
        Bounded minutes = new Bounded(counts.worst(), Math.min(best, counts.nominal()), best);
        double needed = counted.row().seconds() / 60;
        Verdict verdict = lasts(minutes.worst(), needed)
                ? Verdict.MET
                : lasts(minutes.best(), needed) ? Verdict.NOT_PROVEN : Verdict.NOT_MET;
        return new RowsMet(account, verdict, counted.row(), counted.counting(), minutes, time.longest());
    }

    private static boolean lasts(double minutes, double needed) {
        return minutes > 0 && minutes >= needed - CLOCK_MINUTES;
    }

    double limitMinutes() {
        return row.seconds() / 60;
    }

    private double share() {
        double deciding =
                switch (verdict) {
                    case MET -> minutes.worst();
                    case NOT_PROVEN -> minutes.nominal();
                    case NOT_MET -> minutes.best();
                };
        return deciding / Math.max(limitMinutes(), INSTANT_MINUTES);
    }
}
