package org.holdproof.cli.terminal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.LethalityChoice;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.core.verdict.Assessment;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;

/**
 * A verification's answer on one screen of 80 columns: verdict, curve, one line a check, what to do next.
 *
 * @param log the log as read
 * @param files what was written, one sentence a file
 */
public record Answer(Assessment assessment, ProbeLog log, List<String> files) {
    /** What every answer a person may act on says. */
    public static final List<String> SAFETY = List.of(
            "Decision support. Your local authority's code and your approved HACCP plan",
            "govern. Food that is NOT MET or NOT PROVEN is not served on this tool's word.");

    private static final int MOST_CURVE_ROWS = 9;
    private static final int FEWEST_CURVE_ROWS = 4;
    private static final int MOST_NEXT_LINES = 3;
    private static final int CHECKS_HEADING = 1;
    private static final int VERDICT_COLUMNS = 12;
    private static final int TITLE_COLUMNS = 25;
    private static final int MEASURED_COLUMNS = 19;

    public Answer {
        files = List.copyOf(files);
    }

    /** The answer's lines, at most {@value Terminal#HEIGHT} of them as long as no more than two files were written. */
    public List<String> lines(boolean unicode, boolean colour) {
        List<String> head = List.of(cut(headline(), Terminal.WIDTH), verdict(unicode, colour), cut(legend(), 80));
        List<String> foot = foot();
        List<Check> checks = assessment.checks();
        int room = Terminal.HEIGHT - head.size() - foot.size() - CurvePlot.EXTRA_LINES;
        int rows = Math.max(FEWEST_CURVE_ROWS, Math.min(MOST_CURVE_ROWS, room - CHECKS_HEADING - checks.size()));

        List<String> lines = new ArrayList<>(head);
        lines.addAll(plot().lines(rows, unicode));
        lines.add(" ".repeat(VERDICT_COLUMNS + 1) + columns("Check", "Worst…best", "Limit"));
        lines.addAll(checkLines(checks, room - rows - CHECKS_HEADING, unicode, colour));
        lines.addAll(foot);
        return lines;
    }

    /** {@code Beef brisket, batch 31-014, Quillmoor Kitchen}. */
    String headline() {
        var batch = assessment.batch();
        return batch.product().name() + ", batch " + batch.batch() + ", "
                + batch.kitchen().name();
    }

    private String verdict(boolean unicode, boolean colour) {
        String meaning =
                switch (assessment.verdict()) {
                    case MET -> "the record proves every limit below";
                    case NOT_MET -> "even at its best the record misses a limit below";
                    case NOT_PROVEN -> "the record does not settle every limit below";
                };
        return VerdictMark.of(assessment.verdict(), unicode, colour) + ": " + meaning;
    }

    String legend() {
        TemperatureUnit unit = unit();
        String line = limit().map(boundary -> "; line: " + boundary.text() + ", the least its table credits")
                .orElse("");
        return trace().channel() + ", " + unit.symbol() + line + ". Judged by "
                + assessment.authority().id();
    }

    private List<String> checkLines(List<Check> checks, int room, boolean unicode, boolean colour) {
        List<Check> shown = checks;
        if (checks.size() > room) {
            List<Check> worstFirst = Stream.concat(
                            checks.stream().filter(check -> check.verdict() != Verdict.MET),
                            checks.stream().filter(check -> check.verdict() == Verdict.MET))
                    .limit(Math.max(1, room - 1))
                    .toList();
            shown = checks.stream().filter(worstFirst::contains).toList();
        }
        List<String> lines = new ArrayList<>();
        for (Check check : shown) {
            String mark = VerdictMark.of(check.verdict(), unicode, colour);
            String blanks = " "
                    .repeat(VERDICT_COLUMNS
                            - VerdictMark.of(check.verdict(), unicode, false).length());
            lines.add(mark + blanks + " " + columns(check.title(), Figures.measured(check), Figures.limit(check)));
        }
        if (shown.size() < checks.size()) {
            int left = checks.size() - shown.size();
            lines.add(" ".repeat(VERDICT_COLUMNS + 1) + "and " + left + " more, in the report and in --json");
        }
        return lines;
    }

    private List<String> foot() {
        List<String> foot = new ArrayList<>();
        Optional<Check> worst = assessment.checks().stream()
                .filter(check -> check.verdict() == assessment.verdict())
                .filter(check -> check.next().isPresent())
                .findFirst();
        String next = worst.flatMap(check -> check.next())
                .map(words -> "Next: " + words)
                .orElseGet(() -> assessment.cautions().isEmpty()
                        ? "Next: file the report; keep the food as the label and plan say."
                        : "Mind: " + assessment.cautions().get(0).text());
        List<String> wrapped = Wrapped.at(next);
        if (wrapped.size() > MOST_NEXT_LINES) {
            String end = wrapped.get(MOST_NEXT_LINES - 1);
            wrapped = new ArrayList<>(wrapped.subList(0, MOST_NEXT_LINES));
            wrapped.set(MOST_NEXT_LINES - 1, cut(end + " more in the report", Terminal.WIDTH));
        }
        foot.addAll(wrapped);
        foot.addAll(SAFETY);
        foot.addAll(files);
        return foot;
    }

    CurvePlot plot() {
        var batch = assessment.batch();
        return new CurvePlot(
                trace().corrected(assessment.record().offsetCelsius()),
                assessment.span(),
                unit(),
                limit(),
                batch.stages(),
                batch.kitchen().zone(),
                assessment.record().gapLimitMinutes());
    }

    /** The core probe that governed lethality, or the first one where none did. */
    private Trace trace() {
        String governing = assessment.checks().stream()
                .filter(check -> check.id().startsWith("lethality"))
                .flatMap(check -> check.channel().stream())
                .findFirst()
                .orElse(assessment.batch().columns().core().get(0));
        return log.trace(log.channelNamed(governing).orElse(0));
    }

    private TemperatureUnit unit() {
        return assessment.authority().units().stream().findFirst().orElse(TemperatureUnit.CELSIUS);
    }

    /** The lowest temperature the food's table credits. */
    private Optional<Boundary> limit() {
        return assessment.authority().lethalityFor(assessment.batch().product()).flatMap(Answer::lowestRow);
    }

    private static Optional<Boundary> lowestRow(LethalityChoice choice) {
        return choice.tables().stream()
                .flatMap(table -> table.rows().stream())
                .map(LethalityRow::at)
                .min((a, b) -> Double.compare(a.celsius(), b.celsius()));
    }

    private static String columns(String title, String measured, String limit) {
        return cut(
                fill(title, TITLE_COLUMNS) + " " + fill(measured, MEASURED_COLUMNS) + " " + limit,
                Terminal.WIDTH - VERDICT_COLUMNS - 1);
    }

    private static String fill(String text, int width) {
        String kept = cut(text, width);
        return kept + " ".repeat(width - kept.length());
    }

    static String cut(String text, int width) {
        return text.length() <= width ? text : text.substring(0, width - 1) + "…";
    }
}
