package org.holdproof.report.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;
import org.holdproof.report.chart.IntervalGauge;
import org.holdproof.report.draw.Box;
import org.holdproof.report.draw.Lettering;
import org.holdproof.report.draw.Palette;
import org.holdproof.report.draw.Typesetter;
import org.holdproof.report.draw.VerdictSign;

/** The cells a check is shown in. */
final class CheckCells {
    private static final Lettering TITLE = PageLettering.CELL_STRONG;
    private static final Lettering RULE = PageLettering.CELL;
    private static final Lettering PLACE = PageLettering.NOTE;
    private static final Lettering FIGURE = PageLettering.CELL;
    private static final double SIGN = 10;
    private static final double GAUGE = 9;
    private static final String SEPARATOR = " · ";

    private final WordedReport matter;
    private final Typesetter type;

    CheckCells(WordedReport matter, Typesetter type) {
        this.matter = matter;
        this.type = type;
    }

    /** Sign and word. */
    static List<ColumnSlice> verdict(Verdict verdict) {
        Lettering word = TITLE.in(Palette.of(verdict));
        return List.of(ColumnSlice.of(Math.max(SIGN, word.line()) + 1, (pen, x, top, width) -> {
            VerdictSign.draw(
                    pen, verdict, x + SIGN / 2, top + SIGN / 2 + 0.6, SIGN, Palette.of(verdict), Palette.PAPER);
            pen.text(word, verdict.words(), x + SIGN + 4, top + (SIGN - word.line()) / 2 + 0.8);
        }));
    }

    /** How much of what was required a cell holds. */
    enum Detail {
        /** Title, rule and the place it stands in. */
        PLACE,
        /** Title and rule. */
        RULE,
        /** Title and rule where the check is not met, title and limit where it is. */
        OPEN_RULE,
        /** Title and limit. */
        LIMIT
    }

    /** The question, what was required, the limit alone, and where that stands. */
    List<ColumnSlice> required(Check check, double width) {
        List<ColumnSlice> slices = new ArrayList<>();
        add(slices, TITLE, check.title(), width);
        add(slices, RULE, check.rule(), width);
        String limit = matter.figures().limit(check);
        if (!limit.isEmpty()) {
            add(slices, RULE, "Limit: " + limit, width);
        }
        matter.place(check).ifPresent(place -> add(slices, PLACE, place, width));
        return slices;
    }

    /** The question and as much of the rest as asked for. */
    List<ColumnSlice> required(Check check, double width, Detail detail) {
        List<ColumnSlice> slices = new ArrayList<>();
        add(slices, TITLE, check.title(), width);
        boolean limitOnly = detail == Detail.LIMIT || (detail == Detail.OPEN_RULE && check.verdict() == Verdict.MET);
        String limit = matter.figures().limit(check);
        add(slices, RULE, limitOnly && !limit.isEmpty() ? limit : check.rule(), width);
        if (detail == Detail.PLACE) {
            matter.place(check).ifPresent(place -> add(slices, PLACE, place, width));
        }
        return slices;
    }

    /** The gauge and the figures from worst to best. */
    List<ColumnSlice> measured(Check check, double width) {
        return measured(check, width, matter.figures().measured(check));
    }

    /** The gauge and the figures at worst and at best. */
    List<ColumnSlice> ends(Check check, double width) {
        return measured(check, width, matter.figures().ends(check));
    }

    private List<ColumnSlice> measured(Check check, double width, List<String> figures) {
        List<ColumnSlice> slices = new ArrayList<>();
        gauge(check).ifPresent(slices::add);
        if (figures.isEmpty()) {
            slices.add(ColumnSlice.line(FIGURE.in(Palette.SOFT), "no figure to measure"));
            return slices;
        }
        String line = "";
        for (String part : figures) {
            String longer = line.isEmpty() ? part : line + SEPARATOR + part;
            if (!line.isEmpty() && type.width(FIGURE, longer) > width) {
                add(slices, FIGURE, line, width);
                line = part;
            } else {
                line = longer;
            }
        }
        add(slices, FIGURE, line, width);
        return slices;
    }

    /** The worst case's distance from its limit. */
    List<ColumnSlice> margin(Check check) {
        return List.of(ColumnSlice.lineRight(TITLE, matter.figures().margin(check)));
    }

    private static Optional<ColumnSlice> gauge(Check check) {
        if (check.measured().isEmpty() || check.limit().isEmpty()) {
            return Optional.empty();
        }
        IntervalGauge gauge = new IntervalGauge(
                check.measured().get(),
                check.limit().getAsDouble(),
                check.comparison().isFloor(),
                Palette.of(check.verdict()));
        return Optional.of(ColumnSlice.of(
                GAUGE + 1.5, (pen, x, top, width) -> gauge.draw(pen, new Box(x, top + 0.5, width, GAUGE - 1))));
    }

    private void add(List<ColumnSlice> slices, Lettering lettering, String text, double width) {
        type.wrap(lettering, text, width).forEach(line -> slices.add(ColumnSlice.line(lettering, line)));
    }
}
