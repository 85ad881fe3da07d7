package org.holdproof.report.layout;

import java.util.List;
import java.util.Optional;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.core.rules.ThermalDeath;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Curve;
import org.holdproof.core.verdict.LethalityMargin;
import org.holdproof.report.chart.CurveChart;
import org.holdproof.report.chart.TemperatureChart;
import org.holdproof.report.draw.Lettering;

/** The row the core was held against, and the lethality that built up. */
final class Heating {
    private static final double MEANINGFUL_LOGS = 20;
    private static final double CHART = 166;
    private static final Lettering TEXT = PageLettering.TEXT;

    private Heating() {}

    static void lay(WordedReport matter, Flow flow) {
        Optional<Check> check = matter.rules().lethality();
        Optional<Curve> curve = matter.assessment().lethality();
        if (check.isEmpty() && curve.isEmpty()) {
            return;
        }
        flow.section("Lethality", 50);
        check.ifPresent(held -> flow.paragraph(TEXT, rowWords(matter, held)));
        CookCharts charts = new CookCharts(matter, flow.width());
        charts.probePlace()
                .ifPresent(chart -> chart(matter, flow, "Readings against the fastest possible core", chart));
        Span span = charts.lethalitySpan();
        charts.cook(span).ifPresent(chart -> chart(matter, flow, "Core temperature against the row", chart));
        charts.lethality(span)
                .ifPresent(chart ->
                        lethality(matter, flow, chart, curve.orElseThrow().title()));
    }

    private static String rowWords(WordedReport matter, Check check) {
        String verdict =
                switch (check.verdict()) {
                    case MET -> "The row that was met: ";
                    case NOT_PROVEN -> "The row that came nearest, not proven: ";
                    case NOT_MET -> "The row that came nearest, not met: ";
                };
        String row = matter.rules()
                .row()
                .map((LethalityRow printed) -> matter.degrees().printed(printed.at()) + " for " + printed.printedTime()
                        + " (" + printed.citation().text() + ").")
                .orElse(check.rule()
                        + check.citation()
                                .map(place -> " (" + place.text() + ").")
                                .orElse(""));
        String decided = check.window()
                .map(span -> " Decided by " + check.channel().orElse("the core") + " from "
                        + matter.clock().span(span) + ".")
                .orElse("");
        List<String> figures = matter.figures().measured(check);
        String measured = figures.isEmpty() ? "" : " Measured: " + String.join(", ", figures) + ".";
        return verdict + row + measured + decided;
    }

    private static void chart(WordedReport matter, Flow flow, String title, TemperatureChart chart) {
        flow.subsection(title, CHART);
        flow.figure(CHART, ChartWords.of(matter, chart, title), chart::draw);
    }

    private static void lethality(WordedReport matter, Flow flow, CurveChart chart, String title) {
        flow.subsection("Cumulative lethality: " + title, CHART + 30);
        flow.figure(CHART, ChartWords.of(matter, chart, title), chart::draw);
        for (LethalityMargin integrated : matter.assessment().integrated()) {
            flow.paragraph(TEXT, kinetics(matter, integrated));
        }
    }

    private static String kinetics(WordedReport matter, LethalityMargin integrated) {
        Degrees degrees = matter.degrees();
        ThermalDeath death = integrated.kinetics();
        return death.title() + (death.organism().isBlank() ? "" : ", " + death.organism()) + ": over the cook "
                + logs(integrated.log10().worst()) + " log10 at worst, "
                + logs(integrated.log10().nominal()) + " nominal, "
                + logs(integrated.log10().best()) + " at best at " + integrated.channel() + ". D is "
                + Figures.trimmed(death.dMinutes(), 4) + " min at " + degrees.text(death.referenceCelsius()) + ", z "
                + degrees.difference(death.zCelsius()) + "; nothing is credited below "
                + degrees.text(death.floorCelsius()) + ", no faster rate above " + degrees.text(death.capCelsius())
                + " (" + death.citation().text() + ").";
    }

    /** No food starts with so many cells that a figure beyond this says more. */
    private static String logs(double log10) {
        return log10 > MEANINGFUL_LOGS ? "more than " + Figures.number(MEANINGFUL_LOGS, 0) : Figures.number(log10, 2);
    }
}
