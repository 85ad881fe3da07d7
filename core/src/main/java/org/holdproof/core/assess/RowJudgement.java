package org.holdproof.core.assess;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.log.Trace;
import org.holdproof.core.measure.LongestSpell;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.core.verdict.Verdict;

/**
 * One probe's readings put to published rows: a row is met when one uninterrupted spell at or above its temperature
 * lasts its time, and any row will do.
 *
 * @param row the row that speaks best for the cook: the one met with most room, or the one nearest to it
 * @param spell the longest spell at or above that row's temperature
 */
public record RowJudgement(Trace trace, Verdict verdict, LethalityRow row, LongestSpell spell) {
    /** A log's clock shows whole milliseconds: spells are exact to one. */
    private static final double CLOCK_SECONDS = 0.001;

    /** A row of 0 s is met by one reading; for comparing rows it counts as this long. */
    private static final double INSTANT_SECONDS = 1;

    /**
     * Puts a probe's readings to each row and keeps the one that speaks best for the cook.
     *
     * @throws IllegalArgumentException if there are no rows
     */
    public static RowJudgement of(Trace trace, List<LethalityRow> rows, double toleranceCelsius, double gapMinutes) {
        return rows.stream()
                .map(row -> of(trace, row, toleranceCelsius, gapMinutes))
                .max(Comparator.<RowJudgement, Verdict>comparing(judged -> judged.verdict, Comparator.reverseOrder())
                        .thenComparingDouble(RowJudgement::share))
                .orElseThrow(() -> new IllegalArgumentException("a table without rows"));
    }

    private static RowJudgement of(Trace trace, LethalityRow row, double toleranceCelsius, double gapMinutes) {
        LongestSpell spell = LongestSpell.atOrAbove(trace, row.at().celsius(), toleranceCelsius, gapMinutes);
        Verdict verdict = lasts(spell.worst(), row)
                ? Verdict.MET
                : lasts(spell.best(), row) ? Verdict.NOT_PROVEN : Verdict.NOT_MET;
        return new RowJudgement(trace, verdict, row, spell);
    }

    /**
     * Of several probes, the one that speaks worst for the cook: the coldest. Which one it is does not depend on the
     * probes' order.
     *
     * @throws IllegalArgumentException if there are none
     */
    static RowJudgement coldest(List<RowJudgement> probes) {
        return probes.stream()
                .min(Comparator.<RowJudgement, Verdict>comparing(RowJudgement::verdict, Comparator.reverseOrder())
                        .thenComparingDouble(RowJudgement::share)
                        .thenComparingDouble(judged -> judged.minutes().worst())
                        .thenComparingDouble(judged -> judged.minutes().nominal())
                        .thenComparingDouble(judged -> judged.minutes().best()))
                .orElseThrow(() -> new IllegalArgumentException("no probes"));
    }

    /** Whether the straight line between readings meets the row. */
    public boolean nominallyMet() {
        return lasts(spell.nominal(), row);
    }

    /** The spell's minutes; a temperature never reached counts as none. */
    public Bounded minutes() {
        return new Bounded(minutes(spell.worst()), minutes(spell.nominal()), minutes(spell.best()));
    }

    /** The row's time in minutes. */
    public double limitMinutes() {
        return row.seconds() / 60;
    }

    /**
     * The spell that decides, as a share of the row's time: the worst one of a row that is met, the best one of a row
     * that is not.
     */
    double share() {
        Optional<Span> deciding =
                switch (verdict) {
                    case MET -> spell.worst();
                    case NOT_PROVEN -> spell.nominal();
                    case NOT_MET -> spell.best();
                };
        return deciding.map(Span::seconds).orElse(0.0) / Math.max(row.seconds(), INSTANT_SECONDS);
    }

    private static boolean lasts(Optional<Span> spell, LethalityRow row) {
        return spell.isPresent() && spell.get().seconds() >= row.seconds() - CLOCK_SECONDS;
    }

    private static double minutes(Optional<Span> spell) {
        return spell.map(Span::minutes).orElse(0.0);
    }
}
