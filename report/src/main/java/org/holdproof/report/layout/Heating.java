package org.holdproof.report.layout;

import java.util.Optional;
import org.holdproof.core.assess.Check;
import org.holdproof.core.assess.Curve;
import org.holdproof.core.assess.Span;
import org.holdproof.core.standard.LethalityRow;
import org.holdproof.core.standard.ThermalDeath;
import org.holdproof.report.chart.CurveChart;
import org.holdproof.report.chart.TemperatureChart;
import org.holdproof.report.draw.Box;
import org.holdproof.report.draw.Lettering;

/** The row the core was held against, and the lethality that built up. */
final class Heating {
    private static final double CHART = 178;
    private static final Lettering TEXT = Lettering.plain(8.2);

    private Heating() {}

    static void lay(Matter matter, Flow flow) {
        Optional<Check> check = matter.rules().lethality();
        Optional<Curve> curve = matter.assessment().lethality();
        if (check.isEmpty() && curve.isEmpty()) {
            return;
        }
        flow.section("Lethality", 120);
        check.ifPresent(held -> flow.paragraph(TEXT, rowWords(matter, held)));
        CookCharts charts = new CookCharts(matter, flow.width());
        Span span = charts.lethalitySpan();
        charts.cook(span).ifPresent(chart -> cook(flow, chart));
        charts.lethality(span).ifPresent(chart -> lethality(matter, flow, chart, curve.orElseThrow()));
    }

    private static String rowWords(Matter matter, Check check) {
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
        String decided = check.span()
                .map(span -> " Decided by " + (check.channel().isBlank() ? "the core" : check.channel()) + " from "
                        + matter.clock().span(span) + ".")
                .orElse("");
        return verdict + row + decided;
    }

    private static void cook(Flow flow, TemperatureChart chart) {
        flow.subsection("Core temperature against the row", CHART);
        Box box = new Box(flow.left(), flow.y(), flow.width(), CHART - 6);
        flow.mark(pen -> chart.draw(pen, box));
        flow.skip(CHART);
    }

    private static void lethality(Matter matter, Flow flow, CurveChart chart, Curve curve) {
        flow.subsection(curve.title() + ", " + curve.unit(), CHART + 30);
        Box box = new Box(flow.left(), flow.y(), flow.width(), CHART - 6);
        flow.mark(pen -> chart.draw(pen, box));
        flow.skip(CHART);
        Curve.Point last = curve.points().get(curve.points().size() - 1);
        flow.paragraph(
                TEXT,
                "At the end of the record: worst " + Figures.number(last.worst(), 2) + ", nominal "
                        + Figures.number(last.nominal(), 2) + ", best " + Figures.number(last.best(), 2) + " "
                        + curve.unit() + "."
                        + matter.assessment()
                                .authority()
                                .margin()
                                .map(death -> " " + kinetics(matter, death))
                                .orElse(""));
    }

    private static String kinetics(Matter matter, ThermalDeath death) {
        Degrees degrees = matter.degrees();
        return "Kinetics: " + death.title() + (death.organism().isBlank() ? "" : ", " + death.organism()) + ": D "
                + Figures.trimmed(death.dMinutes(), 4) + " min at " + degrees.text(death.referenceCelsius(), 1) + ", z "
                + degrees.difference(death.zCelsius()) + "; nothing credited below "
                + degrees.text(death.floorCelsius(), 1) + ", no faster above " + degrees.text(death.capCelsius(), 1)
                + " (" + death.citation().text() + ").";
    }
}
