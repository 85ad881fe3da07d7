package org.holdproof.report.layout;

import java.util.ArrayList;
import java.util.List;
import org.holdproof.core.verdict.Check;
import org.holdproof.report.draw.Lettering;

/** Every check with its limit, its reason and the part of the record that decided it. */
final class ChecksInFull {
    private static final double VERDICT_COLUMN = 68;
    private static final Lettering TEXT = PageLettering.CELL;
    private static final Lettering NOTE = PageLettering.NOTE;

    private ChecksInFull() {}

    static void lay(WordedReport matter, Flow flow) {
        List<Check> checks = matter.assessment().checks();
        if (checks.isEmpty()) {
            return;
        }
        flow.section("Each check in full", 80);
        double rest = flow.width() - VERDICT_COLUMN - 3 * Table.GUTTER;
        double required = rest * 0.34;
        double measured = rest * 0.31;
        double reason = rest - required - measured;
        Table table = new Table(List.of(
                Table.Column.of("Verdict", VERDICT_COLUMN),
                Table.Column.of("Required", required),
                Table.Column.of("Measured", measured),
                Table.Column.of("Why, and which part of the record decided", reason)));
        CheckCells cells = new CheckCells(matter, flow.type());
        for (Check check : checks) {
            List<ColumnSlice> verdict = new ArrayList<>(CheckCells.verdict(check.verdict()));
            wrap(flow, NOTE, check.id(), VERDICT_COLUMN, verdict);
            List<ColumnSlice> figures = new ArrayList<>(cells.measured(check, measured));
            if (check.margin().isPresent()) {
                wrap(flow, TEXT, "margin at worst " + matter.figures().margin(check), measured, figures);
            }
            List<ColumnSlice> why = new ArrayList<>();
            wrap(flow, TEXT, check.why(), reason, why);
            check.channel().ifPresent(channel -> wrap(flow, NOTE, "Probe: " + channel, reason, why));
            check.window()
                    .ifPresent(span -> wrap(
                            flow,
                            NOTE,
                            matter.clock().span(span) + " (" + KitchenClock.length(span.minutes()) + ")",
                            reason,
                            why));
            table.row(List.of(verdict, cells.required(check, required), figures, why));
        }
        table.lay(flow);
    }

    private static void wrap(Flow flow, Lettering lettering, String text, double width, List<ColumnSlice> into) {
        flow.type().wrap(lettering, text, width).forEach(line -> into.add(ColumnSlice.line(lettering, line)));
    }
}
