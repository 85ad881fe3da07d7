package org.holdproof.core.course;

import java.util.List;
import java.util.OptionalLong;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.LethalityRow;

/**
 * The time one core spent at or above a temperature inside a window.
 *
 * <p>Worst: only where the readings less the tolerance were there, both ends of each interval, nobody's gap. Nominal:
 * where a straight line was. Best: wherever the core can have been, gaps included.
 *
 * @param unbroken the longest stretch without a break, in minutes
 * @param total all of it, in minutes
 * @param longest where the longest stretch at worst lay; of no length where there was none
 */
public record RowTime(Bounded unbroken, Bounded total, Span longest) {
    private static final double SLACK = TemperatureUnit.SLACK_CELSIUS;

    /** Measures one core. */
    public static RowTime atOrAbove(CoreBounds core, double celsius, Span window) {
        Run worst = new Run();
        Run nominal = new Run();
        Run best = new Run();
        double level = celsius - SLACK;
        for (int i = 0; i < core.size(); i++) {
            long from = Math.max(window.fromMillis(), core.fromMillis(i));
            long to = Math.min(window.toMillis(), core.toMillis(i));
            if (to < from || (to == from && core.size() > 1)) {
                continue;
            }
            worst.add(from, to, core.isRead(i) && core.low(i) >= level ? 1 : 0, true);
            double share = core.shareAtOrAbove(i, level);
            nominal.add(from, to, share, core.lineTo(i) >= level);
            best.add(from, to, core.high(i) >= level ? 1 : 0, true);
        }
        return new RowTime(
                new Bounded(
                        worst.longest(),
                        Math.max(worst.longest(), Math.min(nominal.longest(), best.longest())),
                        best.longest()),
                new Bounded(
                        worst.total(), Math.max(worst.total(), Math.min(nominal.total(), best.total())), best.total()),
                worst.span());
    }

    /** When the first of some rows was surely met without a break, or in all where that is sooner; no gap is credited. */
    static OptionalLong firstMet(CoreBounds core, List<LethalityRow> rows, Span window) {
        long first = Long.MAX_VALUE;
        for (LethalityRow row : rows) {
            double level = row.at().celsius() - SLACK;
            long needed = Math.max(1, Math.round(row.seconds() * 1000));
            long spent = 0;
            for (int i = 0; i < core.size() && core.fromMillis(i) < first; i++) {
                long from = Math.max(window.fromMillis(), core.fromMillis(i));
                long to = Math.min(window.toMillis(), core.toMillis(i));
                if (to <= from || !core.isRead(i) || core.low(i) < level) {
                    continue;
                }
                spent += to - from;
                if (spent >= needed) {
                    first = Math.min(first, to - (spent - needed));
                    break;
                }
            }
        }
        return first == Long.MAX_VALUE ? OptionalLong.empty() : OptionalLong.of(first);
    }

    /** Time added up, and the longest stretch of it. */
    private static final class Run {
        private double total;
        private double open;
        private double longest;
        private long openFrom;
        private Span span = new Span(0, 0);

        void add(long from, long to, double share, boolean endsThere) {
            double minutes = (to - from) / 60_000.0 * share;
            total += minutes;
            if (share == 0) {
                open = 0;
                return;
            }
            if (share < 1 && endsThere) {
                open = 0;
            }
            openFrom = open == 0 ? to - Math.round((to - from) * share) : openFrom;
            open += minutes;
            if (open > longest) {
                longest = open;
                span = new Span(Math.min(openFrom, to), to);
            }
            if (share < 1 && !endsThere) {
                open = 0;
            }
        }

        double total() {
            return total;
        }

        double longest() {
            return longest;
        }

        Span span() {
            return span;
        }
    }
}
