package org.holdproof.report.layout;

import java.util.List;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;
import org.holdproof.report.chart.TemperatureChart;
import org.holdproof.report.draw.Box;
import org.holdproof.report.draw.Lettering;

/** The cooling curve against its stages. */
final class Cooling {
    private static final double CHART = 196;
    private static final Lettering TEXT = Lettering.plain(8.2);

    private Cooling() {}

    static void lay(Matter matter, Flow flow) {
        new CookCharts(matter, flow.width()).cooling().ifPresent(chart -> lay(matter, flow, chart));
    }

    private static void lay(Matter matter, Flow flow, TemperatureChart chart) {
        flow.section("Cooling", CHART + 30);
        matter.rules()
                .cooling()
                .ifPresent(
                        rule -> flow.paragraph(
                                TEXT,
                                rule.title() + " (" + rule.citation().text()
                                        + "). The curve must stay out of the shaded field: below each corner before its time."));
        Box box = new Box(flow.left(), flow.y(), flow.width(), CHART - 6);
        flow.need(CHART);
        Box placed = new Box(flow.left(), flow.y(), box.width(), box.height());
        flow.mark(pen -> chart.draw(pen, placed));
        flow.skip(CHART);
        List<Check> checks = matter.rules().checks(RulesApplied.COOLING);
        for (Check check : checks) {
            String figures = String.join(", ", matter.figures().measured(check));
            flow.paragraph(
                    check.verdict() == Verdict.MET ? TEXT : Lettering.bold(8.2),
                    check.verdict().words() + ": " + check.title() + ", "
                            + matter.figures().limit(check) + (figures.isEmpty() ? "" : "; measured " + figures) + ".");
        }
    }
}
