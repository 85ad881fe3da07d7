package org.holdproof.report.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.rules.Citation;
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
    private static final Lettering TITLE = Lettering.bold(8.2);
    private static final Lettering RULE = Lettering.plain(7.4);
    private static final Lettering PLACE = Lettering.soft(6.6);
    private static final Lettering FIGURE = Lettering.plain(7.4);
    private static final double SIGN = 10;
    private static final double GAUGE = 9;
    private static final double LEAST_PLACE = 90;
    private static final String SEPARATOR = " · ";

    private final Matter matter;
    private final Typesetter type;

    CheckCells(Matter matter, Typesetter type) {
        this.matter = matter;
        this.type = type;
    }

    /** Sign and word. */
    static List<Strip> verdict(Verdict verdict) {
        Lettering word = Lettering.bold(7.6).in(Palette.of(verdict));
        return List.of(Strip.of(Math.max(SIGN, word.line()) + 1, (pen, x, top, width) -> {
            VerdictSign.draw(
                    pen, verdict, x + SIGN / 2, top + SIGN / 2 + 0.6, SIGN, Palette.of(verdict), Palette.PAPER);
            pen.text(word, verdict.words(), x + SIGN + 4, top + (SIGN - word.line()) / 2 + 0.8);
        }));
    }

    /** The question, what was required, and where that stands. */
    List<Strip> required(Check check, double width, boolean withLimit) {
        List<Strip> strips = new ArrayList<>();
        add(strips, TITLE, check.title(), width);
        add(strips, RULE, check.rule(), width);
        String limit = matter.figures().limit(check);
        if (withLimit && !limit.isEmpty()) {
            add(strips, RULE, "Limit: " + limit, width);
        }
        check.citation().map(Citation::text).ifPresent(place -> add(strips, PLACE, place, width));
        return strips;
    }

    /** The same in two lines: question and place, rule. */
    List<Strip> requiredInShort(Check check, double width) {
        List<Strip> strips = new ArrayList<>();
        String title = type.shorten(TITLE, check.title(), width);
        double used = type.width(TITLE, title) + 6;
        boolean beside = check.citation().isPresent() && width - used >= LEAST_PLACE;
        String place = beside ? shortPlace(check.citation().get(), width - used) : "";
        strips.add(Strip.of(TITLE.line(), (pen, x, top, room) -> {
            pen.text(TITLE, title, x, top);
            pen.text(PLACE, place, x + used, top + TITLE.baseline() - PLACE.baseline());
        }));
        if (!check.rule().isBlank()) {
            strips.add(Strip.line(RULE, type.shorten(RULE, check.rule(), width)));
        }
        if (check.citation().isPresent() && !beside) {
            strips.add(Strip.line(PLACE, shortPlace(check.citation().get(), width)));
        }
        return strips;
    }

    /** A place cut short keeps its section and the word that it is unconfirmed. */
    private String shortPlace(Citation citation, double width) {
        String tail = citation.text().substring(citation.document().length());
        double room = width - type.width(PLACE, tail);
        return room > width / 4
                ? type.shorten(PLACE, citation.document(), room) + tail
                : type.shorten(PLACE, citation.text(), width);
    }

    /** The gauge and the figures from worst to best. */
    List<Strip> measured(Check check, double width) {
        List<Strip> strips = new ArrayList<>();
        gauge(check).ifPresent(strips::add);
        List<String> lines = matter.figures().measured(check);
        if (lines.isEmpty()) {
            strips.add(Strip.line(FIGURE.in(Palette.SOFT), "no figure to measure"));
            return strips;
        }
        String whole = String.join(SEPARATOR, lines);
        if (type.width(FIGURE, whole) > width) {
            // The figure between the worst and the best is the nominal one.
            whole = whole.replace("nominal ", "");
        }
        if (type.width(FIGURE, whole) <= width) {
            strips.add(Strip.line(FIGURE, whole));
            return strips;
        }
        String line = "";
        for (String part : lines) {
            String longer = line.isEmpty() ? part : line + SEPARATOR + part;
            if (!line.isEmpty() && type.width(FIGURE, longer) > width) {
                add(strips, FIGURE, line, width);
                line = part;
            } else {
                line = longer;
            }
        }
        add(strips, FIGURE, line, width);
        return strips;
    }

    /** The worst case's distance from its limit. */
    List<Strip> margin(Check check) {
        return List.of(Strip.lineRight(Lettering.bold(7.8), matter.figures().margin(check)));
    }

    private static Optional<Strip> gauge(Check check) {
        if (check.measured().isEmpty() || check.limit().isEmpty()) {
            return Optional.empty();
        }
        IntervalGauge gauge = new IntervalGauge(
                check.measured().get(),
                check.limit().getAsDouble(),
                check.comparison().isFloor(),
                Palette.of(check.verdict()));
        return Optional.of(Strip.of(
                GAUGE + 1.5, (pen, x, top, width) -> gauge.draw(pen, new Box(x, top + 0.5, width, GAUGE - 1))));
    }

    private void add(List<Strip> strips, Lettering lettering, String text, double width) {
        type.wrap(lettering, text, width).forEach(line -> strips.add(Strip.line(lettering, line)));
    }
}
