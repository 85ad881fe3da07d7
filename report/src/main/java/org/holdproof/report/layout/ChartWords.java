package org.holdproof.report.layout;

import java.util.List;
import java.util.stream.Collectors;
import org.holdproof.report.chart.Blank;
import org.holdproof.report.chart.CurveChart;
import org.holdproof.report.chart.TemperatureChart;
import org.holdproof.report.chart.TemperatureTrace;
import org.holdproof.report.chart.Thinning;

/** What a chart shows, said to a reader who does not see it. */
final class ChartWords {
    private static final int MOST_NAMED = 6;

    private ChartWords() {}

    static String of(WordedReport report, TemperatureChart chart, String title) {
        KitchenClock clock = report.clock();
        StringBuilder words = new StringBuilder("Chart, " + title + ": temperatures from ")
                .append(clock.moment(chart.fromMillis()))
                .append(" to ")
                .append(clock.moment(chart.toMillis()))
                .append('.');
        for (TemperatureTrace trace : chart.traces()) {
            if (!trace.name().isEmpty()) {
                words.append(' ').append(range(report, trace)).append('.');
            }
        }
        list(
                words,
                "Stages",
                chart.stages().stream()
                        .map(stage -> stage.label()
                                + (stage.isMoment()
                                        ? " at " + clock.dayAndTime(stage.fromMillis())
                                        : " from " + clock.dayAndTime(stage.fromMillis()) + " to "
                                                + clock.dayAndTime(stage.toMillis())))
                        .toList());
        list(
                words,
                "Limits drawn",
                chart.limits().stream().map(limit -> limit.label()).distinct().toList());
        list(
                words,
                "Deadlines",
                chart.deadlines().stream().map(deadline -> deadline.label()).toList());
        list(
                words,
                "Parts that decided",
                chart.marks().stream().map(mark -> mark.label()).toList());
        list(
                words,
                "No readings",
                chart.blanks().stream()
                        .map((Blank blank) ->
                                clock.dayAndTime(blank.fromMillis()) + " to " + clock.dayAndTime(blank.toMillis()))
                        .toList());
        return words.toString();
    }

    static String of(WordedReport report, CurveChart chart, String title) {
        var last = chart.points().get(chart.points().size() - 1);
        return "Chart, " + title + ": it rises from 0 to " + Figures.number(last.worst(), 1) + " at worst and "
                + Figures.number(last.best(), 1) + " at best, in " + chart.unit() + ", by "
                + report.clock().moment(last.epochMillis()) + "."
                + (chart.targetLabel().isEmpty() ? "" : " A line is drawn at " + chart.targetLabel() + ".");
    }

    private static String range(WordedReport report, TemperatureTrace trace) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (Thinning.Run run : trace.runs()) {
            for (int i = 0; i < run.size(); i++) {
                low = Math.min(low, run.celsius(i));
                high = Math.max(high, run.celsius(i));
            }
        }
        return low > high
                ? trace.name() + " has no readings"
                : trace.name() + " between " + report.degrees().text(low) + " and "
                        + report.degrees().text(high);
    }

    private static void list(StringBuilder words, String what, List<String> items) {
        if (!items.isEmpty()) {
            words.append(' ')
                    .append(what)
                    .append(": ")
                    .append(items.stream().limit(MOST_NAMED).collect(Collectors.joining("; ")))
                    .append(items.size() > MOST_NAMED ? "; and " + (items.size() - MOST_NAMED) + " more" : "")
                    .append('.');
        }
    }
}
