package org.holdproof.report.layout;

import java.util.List;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;
import org.holdproof.report.chart.TemperatureChart;
import org.holdproof.report.draw.Lettering;

/** The cooling curve against its stages. */
final class Cooling {
    private static final double CHART = 196;
    private static final double LEAST_CHART = 140;
    private static final Lettering TEXT = PageLettering.TEXT;

    private Cooling() {}

    static void lay(WordedReport matter, Flow flow) {
        new CookCharts(matter, flow.width()).cooling().ifPresent(chart -> lay(matter, flow, chart));
    }

    private static void lay(WordedReport matter, Flow flow, TemperatureChart chart) {
        flow.section("Cooling", LEAST_CHART + 50);
        matter.rules()
                .cooling()
                .ifPresent(
                        rule -> flow.paragraph(
                                TEXT,
                                rule.title() + " (" + rule.citation().text()
                                        + "). The curve must stay out of the shaded field: below each corner before its time."));
        List<Check> checks = matter.rules().checks(RulesApplied.COOLING);
        double height = Math.max(LEAST_CHART, Math.min(CHART, flow.room() - checks.size() * TEXT.line() * 1.5));
        flow.figure(height, ChartWords.of(matter, chart, "Cooling"), chart::draw);
        for (Check check : checks) {
            String figures = String.join(", ", matter.figures().measured(check));
            flow.paragraph(
                    check.verdict() == Verdict.MET ? TEXT : PageLettering.STRONG,
                    check.verdict().words() + ": " + check.title() + ", "
                            + matter.figures().limit(check) + (figures.isEmpty() ? "" : "; measured " + figures) + ".");
        }
    }
}
