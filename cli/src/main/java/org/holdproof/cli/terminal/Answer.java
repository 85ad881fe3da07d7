package org.holdproof.cli.terminal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.LethalityChoice;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.core.verdict.Assessment;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;
import org.holdproof.core.wording.Wording;

/**
 * A verification's answer on one screen: verdict, curve, one line a check, what to do next.
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
    private static final int VERDICT_COLUMNS = 12;

    public Answer {
        files = List.copyOf(files);
    }

    /**
     * The answer's lines, at most {@value Terminal#HEIGHT} of them as far as nothing must be cut for it.
     *
     * @param width columns of the screen
     * @param all whether every check is shown, on as many lines as it takes
     */
    public List<String> lines(int width, boolean all, boolean unicode, boolean colour) {
        List<String> head = new ArrayList<>(Wrapped.at(headline(), width));
        head.add(verdict(unicode, colour));
        head.addAll(Wrapped.at(legend(), width));
        List<String> foot = foot(width);
        List<Check> checks = assessment.checks();
        int room = all ? Integer.MAX_VALUE : Terminal.HEIGHT - head.size() - foot.size() - CurvePlot.EXTRA_LINES;
        List<List<String>> shown = checks.stream()
                .map(check -> checkLines(check, width, unicode, colour))
                .toList();
        int taken = shown.stream().mapToInt(List::size).sum();
        int rows = Math.max(FEWEST_CURVE_ROWS, Math.min(MOST_CURVE_ROWS, room - taken));

        List<String> lines = new ArrayList<>(head);
        lines.addAll(plot().lines(width, rows, unicode));
        lines.addAll(checks(checks, shown, room - rows, width));
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
                    case NOT_MET -> "even at its best the record misses a limit";
                    case NOT_PROVEN -> "the record does not settle every limit";
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

    /** The checks that find room, the worst first where not all do, and how to see the rest. */
    private static List<String> checks(List<Check> checks, List<List<String>> shown, int room, int width) {
        int taken = shown.stream().mapToInt(List::size).sum();
        if (taken <= room) {
            return shown.stream().flatMap(List::stream).toList();
        }
        List<Integer> worstFirst = IntStream.range(0, checks.size())
                .boxed()
                .sorted(Comparator.comparing((Integer at) -> checks.get(at).verdict())
                        .reversed())
                .toList();
        Set<Integer> fit = new TreeSet<>();
        int used = 1;
        for (int at : worstFirst) {
            if (fit.isEmpty() || used + shown.get(at).size() <= room) {
                fit.add(at);
                used += shown.get(at).size();
            }
        }
        List<String> lines = new ArrayList<>();
        fit.forEach(at -> lines.addAll(shown.get(at)));
        int left = checks.size() - fit.size();
        boolean allMet = IntStream.range(0, checks.size())
                .filter(at -> !fit.contains(at))
                .allMatch(at -> checks.get(at).verdict() == Verdict.MET);
        lines.addAll(Wrapped.at("and " + left + " more" + (allMet ? ", MET" : "") + ": add --all to see them", width));
        return lines;
    }

    private List<String> checkLines(Check check, int width, boolean unicode, boolean colour) {
        Wording wording = new Wording(
                assessment.authority().units(), assessment.batch().kitchen().zone());
        String plain = VerdictMark.of(check.verdict(), unicode, false);
        String mark = VerdictMark.of(check.verdict(), unicode, colour);
        List<String> lines = new ArrayList<>();
        for (String line : Wrapped.at(check.headline(wording), width - VERDICT_COLUMNS - 1)) {
            String before =
                    lines.isEmpty() ? mark + " ".repeat(VERDICT_COLUMNS - plain.length()) : " ".repeat(VERDICT_COLUMNS);
            lines.add(before + " " + line);
        }
        return lines;
    }

    private List<String> foot(int width) {
        List<String> foot = new ArrayList<>();
        Optional<String> next = assessment.checks().stream()
                .filter(check -> check.verdict() == assessment.verdict())
                .flatMap(check -> check.next().stream())
                .findFirst();
        foot.addAll(Wrapped.at(
                next.map(todo -> "Next: " + todo)
                        .orElseGet(() -> assessment.cautions().isEmpty()
                                ? "Next: file the report; keep the food as the label and plan say."
                                : "Mind: " + assessment.cautions().get(0).text()),
                width));
        foot.addAll(width >= Terminal.WIDTH ? SAFETY : Wrapped.at(String.join(" ", SAFETY), width));
        // A path is not broken up: it is there to be copied.
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

    static String cut(String text, int width) {
        return text.length() <= width ? text : text.substring(0, width - 1) + "…";
    }
}
