package org.holdproof.report.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.verdict.Assessment;
import org.holdproof.core.verdict.Caution;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;
import org.holdproof.report.SealFacts;
import org.holdproof.report.chart.TemperatureChart;
import org.holdproof.report.draw.Box;
import org.holdproof.report.draw.Lettering;
import org.holdproof.report.draw.Palette;
import org.holdproof.report.draw.Pen;
import org.holdproof.report.draw.Stroke;
import org.holdproof.report.draw.Typesetter;
import org.holdproof.report.draw.VerdictSign;

/** The page that decides at a glance. */
final class PageOne {
    private static final double BANNER_SIGN = 42;
    private static final double LEAST_CHART = 134;
    private static final double MOST_CHART = 320;
    private static final double BOX_PAD = 6;
    private static final int MOST_NEXT_LINES = 8;
    private static final double SIGN_ROOM = 13;
    private static final Lettering FACT_NAME = Lettering.soft(6.4);
    private static final Lettering FACT = Lettering.plain(7.8);
    private static final Lettering SMALL = Lettering.plain(7.2);
    private static final Lettering BOX_TITLE = Lettering.bold(8.6);
    private static final Lettering SAFETY = Lettering.bold(7.2);
    private static final double VERDICT_COLUMN = 68;
    private static final double MARGIN_COLUMN = 54;

    private final Matter matter;
    private final Flow flow;
    private final Typesetter type;
    private final CheckCells cells;

    PageOne(Matter matter, Flow flow) {
        this.matter = matter;
        this.flow = flow;
        this.type = flow.type();
        this.cells = new CheckCells(matter, type);
    }

    void lay() {
        title();
        banner();
        facts();
        foot();

        double requiredWidth = (flow.width() - VERDICT_COLUMN - MARGIN_COLUMN - 3 * Table.GUTTER) * 0.57;
        double measuredWidth = flow.width() - VERDICT_COLUMN - MARGIN_COLUMN - 3 * Table.GUTTER - requiredWidth;
        double headings = 2 * (BOX_TITLE.line() + 3) + Table.headHeight() + 6;
        List<Check> checks = matter.assessment().checks();
        List<List<List<Strip>>> rows = rows(checks, requiredWidth, measuredWidth, false);
        double forRows = flow.room() - headings - LEAST_CHART;
        if (height(rows) > forRows) {
            rows = rows(checks, requiredWidth, measuredWidth, true);
        }
        String note = "";
        if (height(rows) > forRows) {
            rows = rows(matter.worstFirst(), requiredWidth, measuredWidth, true);
            long fit = fitting(rows, forRows);
            note = fit + " of " + checks.size() + " on this page, the worst first; the rest on the next";
        }
        double chart = Math.max(LEAST_CHART, Math.min(MOST_CHART, flow.room() - headings - height(rows)));
        timeline(chart);

        subtitle("The checks", note);
        Table table = new Table(List.of(
                Table.Column.of("Verdict", VERDICT_COLUMN),
                Table.Column.of("Required, and where it stands", requiredWidth),
                Table.Column.of("Measured, worst to best, against the limit (|)", measuredWidth),
                Table.Column.toTheRight("Margin at worst", MARGIN_COLUMN)));
        rows.forEach(table::row);
        table.lay(flow);
    }

    private List<List<List<Strip>>> rows(List<Check> checks, double required, double measured, boolean inShort) {
        List<List<List<Strip>>> rows = new ArrayList<>();
        for (Check check : checks) {
            rows.add(List.of(
                    CheckCells.verdict(check.verdict()),
                    inShort ? cells.requiredInShort(check, required) : cells.required(check, required, false),
                    cells.measured(check, measured),
                    cells.margin(check)));
        }
        return rows;
    }

    private static double height(List<List<List<Strip>>> rows) {
        return rows.stream().mapToDouble(Table::height).sum();
    }

    private static long fitting(List<List<List<Strip>>> rows, double room) {
        double used = 0;
        long fit = 0;
        for (List<List<Strip>> row : rows) {
            used += Table.height(row);
            if (used > room) {
                break;
            }
            fit++;
        }
        return fit;
    }

    private void title() {
        Assessment assessment = matter.assessment();
        BatchRecord batch = assessment.batch();
        Lettering large = Lettering.bold(16);
        List<String> lines = type.wrap(
                large, "Batch " + batch.batch() + ": " + batch.product().name(), flow.width());
        int shown = Math.min(2, lines.size());
        for (int i = 0; i < shown; i++) {
            boolean cut = i == shown - 1 && lines.size() > shown;
            String line = cut ? type.shorten(large, lines.get(i) + " " + lines.get(i + 1), flow.width()) : lines.get(i);
            flow.put(Strip.line(large, line));
        }
        Lettering under = Lettering.soft(8.4);
        String by = "Temperature record, judged by " + assessment.authority().title() + ".";
        flow.put(Strip.line(under, type.shorten(under, by, flow.width())));
        flow.skip(5);
    }

    private void banner() {
        Assessment assessment = matter.assessment();
        Verdict verdict = assessment.verdict();
        Lettering word = Lettering.bold(25);
        Lettering summary = Lettering.bold(9.2);
        Lettering reason = Lettering.plain(8.4);
        double wordX = flow.left() + 12 + BANNER_SIGN + 11;
        double textX = wordX + type.width(word, Verdict.NOT_PROVEN.words()) + 16;
        double textWidth = flow.left() + flow.width() - textX - 10;
        List<String> summaryLines = type.wrap(summary, tally(assessment), textWidth);
        List<String> reasonLines = firstLines(type.wrap(reason, reason(), textWidth), reason, 3, textWidth);
        double height = Math.max(
                BANNER_SIGN + 14, summaryLines.size() * summary.line() + reasonLines.size() * reason.line() + 16);
        Box box = new Box(flow.left(), flow.y(), flow.width(), height);
        boolean filled = verdict == Verdict.NOT_MET;
        var colour = Palette.of(verdict);
        var paper = filled ? colour : Palette.PAPER;
        var ink = filled ? Palette.PAPER : Palette.INK;
        flow.mark(pen -> {
            if (filled) {
                pen.fill(box, colour);
            } else {
                Stroke edge = verdict == Verdict.MET ? Stroke.solid(colour, 2.6) : Stroke.dashed(colour, 2.6, 9, 5);
                pen.frame(box.inset(1.3), edge);
            }
            VerdictSign.draw(
                    pen,
                    verdict,
                    box.x() + 12 + BANNER_SIGN / 2,
                    box.centreY(),
                    BANNER_SIGN,
                    filled ? Palette.PAPER : colour,
                    paper);
            pen.text(word.in(filled ? Palette.PAPER : colour), verdict.words(), wordX, box.centreY() - word.line() / 2);
            double block = summaryLines.size() * summary.line() + reasonLines.size() * reason.line();
            double y = box.centreY() - block / 2;
            for (String line : summaryLines) {
                pen.text(summary.in(ink), line, textX, y);
                y += summary.line();
            }
            for (String line : reasonLines) {
                pen.text(reason.in(ink), line, textX, y);
                y += reason.line();
            }
        });
        flow.skip(height + 7);
    }

    private static String tally(Assessment assessment) {
        int all = assessment.checks().size();
        String counts = Stream.of(Verdict.NOT_MET, Verdict.NOT_PROVEN, Verdict.MET)
                .map(verdict -> {
                    long count = assessment.checks().stream()
                            .filter(check -> check.verdict() == verdict)
                            .count();
                    return count == 0 ? "" : count + " " + verdict.words();
                })
                .filter(text -> !text.isEmpty())
                .collect(Collectors.joining(", "));
        return (all == 1 ? "1 check: " : all + " checks: ") + counts + ".";
    }

    private String reason() {
        List<Check> open = matter.open();
        if (!open.isEmpty()) {
            return open.get(0).title() + ": " + open.get(0).why();
        }
        return "Every limit is kept even at the worst case this record allows.";
    }

    private List<String> firstLines(List<String> lines, Lettering lettering, int most, double width) {
        if (lines.size() <= most) {
            return lines;
        }
        List<String> kept = new ArrayList<>(lines.subList(0, most - 1));
        kept.add(type.shorten(lettering, lines.get(most - 1) + " " + lines.get(most), width));
        return kept;
    }

    private record Fact(String name, String value) {}

    private void facts() {
        Assessment assessment = matter.assessment();
        List<Fact> facts = List.of(
                new Fact("Product", BatchWords.product(assessment.batch().product())),
                new Fact("Kitchen", BatchWords.kitchen(assessment.batch().kitchen())),
                new Fact(
                        "Record",
                        matter.clock().span(assessment.span()) + " ("
                                + KitchenClock.length(assessment.span().minutes()) + ")"),
                new Fact("Piece", BatchWords.piece(assessment.batch().product())),
                new Fact(
                        "Run by; reviewed by",
                        BatchWords.roles(assessment.batch().roles())),
                new Fact(
                        "Thermometer",
                        assessment.batch().instrument().id() + ", ± "
                                + matter.degrees()
                                        .difference(assessment.record().toleranceCelsius())));
        int columns = 3;
        double width = (flow.width() - (columns - 1) * 10) / columns;
        for (int row = 0; row < facts.size(); row += columns) {
            double tallest = 0;
            for (int column = 0; column < columns; column++) {
                Fact fact = facts.get(row + column);
                List<String> lines = firstLines(type.wrap(FACT, fact.value(), width), FACT, 2, width);
                double x = flow.left() + column * (width + 10);
                double y = flow.y();
                flow.mark(pen -> {
                    pen.text(FACT_NAME, fact.name(), x, y);
                    for (int i = 0; i < lines.size(); i++) {
                        pen.text(FACT, lines.get(i), x, y + FACT_NAME.line() + i * FACT.line());
                    }
                });
                tallest = Math.max(tallest, FACT_NAME.line() + lines.size() * FACT.line());
            }
            flow.skip(tallest + 3);
        }
        flow.skip(2);
    }

    private void timeline(double height) {
        String where =
                "Clock: " + matter.clock().zoneAt(matter.assessment().span().fromMillis());
        subtitle("The whole cook", where);
        TemperatureChart chart = new CookCharts(matter, flow.width()).timeline();
        Box box = new Box(flow.left(), flow.y(), flow.width(), height - 6);
        flow.mark(pen -> chart.draw(pen, box));
        flow.skip(height);
    }

    private void subtitle(String title, String note) {
        double top = flow.y();
        flow.mark(pen -> {
            pen.text(BOX_TITLE, title, flow.left(), top);
            pen.textRight(Lettering.soft(6.8), note, flow.left() + flow.width(), top + 1.5);
        });
        flow.skip(BOX_TITLE.line() + 3);
    }

    /** What to do next beside the seal, and the safety words under both. */
    private void foot() {
        double gap = 10;
        double nextWidth = (flow.width() - gap) * 0.60;
        double sealWidth = flow.width() - gap - nextWidth;
        List<Strip> next = next(nextWidth - 2 * BOX_PAD);
        List<Strip> seal = seal(sealWidth - 2 * BOX_PAD);
        List<String> safety = type.wrap(SAFETY, SafetyWords.TEXT, flow.width());
        double boxes = Math.max(sum(next), sum(seal)) + 2 * BOX_PAD;
        double words = safety.size() * SAFETY.line();
        double top = flow.reserveFoot(boxes + 5 + words);
        flow.mark(pen -> {
            box(pen, new Box(flow.left(), top, nextWidth, boxes), next, false);
            boolean unsealed = matter.content().seal().isEmpty();
            box(pen, new Box(flow.left() + nextWidth + gap, top, sealWidth, boxes), seal, unsealed);
            double y = top + boxes + 5;
            for (String line : safety) {
                pen.text(SAFETY, line, flow.left(), y);
                y += SAFETY.line();
            }
        });
        flow.reserveFoot(boxes + 5 + words + 6);
    }

    private static double sum(List<Strip> strips) {
        return strips.stream().mapToDouble(Strip::height).sum();
    }

    private static void box(Pen pen, Box box, List<Strip> strips, boolean dashed) {
        pen.frame(box.inset(0.4), dashed ? Stroke.dashed(Palette.INK, 0.8, 4, 3) : Stroke.solid(Palette.INK, 0.8));
        double y = box.y() + BOX_PAD;
        for (Strip strip : strips) {
            strip.draw(pen, box.x() + BOX_PAD, y, box.width() - 2 * BOX_PAD);
            y += strip.height();
        }
    }

    private List<Strip> next(double width) {
        List<Strip> strips = new ArrayList<>();
        strips.add(Strip.line(BOX_TITLE, "What to do next"));
        strips.add(Strip.space(2));
        List<Check> open = matter.open();
        if (open.isEmpty()) {
            add(strips, "No corrective action is called for. Keep this report with the batch's papers.", width);
        }
        List<String> said = new ArrayList<>();
        int lines = 0;
        boolean left = false;
        for (Check check : open) {
            String next = check.next().orElse("");
            if (next.isEmpty() || said.contains(next)) {
                continue;
            }
            said.add(next);
            if (lines >= MOST_NEXT_LINES) {
                left = true;
                break;
            }
            List<String> wrapped = type.wrap(SMALL, next, width - SIGN_ROOM);
            left |= wrapped.size() > MOST_NEXT_LINES - lines;
            wrapped = firstLines(wrapped, SMALL, MOST_NEXT_LINES - lines, width - SIGN_ROOM);
            lines += wrapped.size();
            signed(strips, check.verdict(), wrapped);
        }
        if (!open.isEmpty()) {
            add(strips, (left ? "More, and space" : "Space") + " to write and sign: see Corrective actions.", width);
        }
        cautions(strips, width);
        return strips;
    }

    /** A verdict's sign before the first of some lines. */
    private static void signed(List<Strip> strips, Verdict verdict, List<String> lines) {
        for (int i = 0; i < lines.size(); i++) {
            boolean first = i == 0;
            String line = lines.get(i);
            strips.add(Strip.of(SMALL.line(), (pen, x, top, room) -> {
                if (first) {
                    VerdictSign.draw(
                            pen, verdict, x + 4, top + SMALL.line() / 2, 8, Palette.of(verdict), Palette.PAPER);
                }
                pen.text(SMALL, line, x + SIGN_ROOM, top);
            }));
        }
    }

    /** Cautions have no verdict, so page one says at least that there are some, and what the first one is. */
    private void cautions(List<Strip> strips, double width) {
        List<Caution> cautions = matter.assessment().cautions();
        if (cautions.isEmpty()) {
            return;
        }
        strips.add(Strip.space(3));
        String lead = cautions.size() == 1 ? "Caution: " : cautions.size() + " cautions (see Cautions), the first: ";
        firstLines(type.wrap(SMALL, lead + cautions.get(0).text(), width), SMALL, 2, width)
                .forEach(line -> strips.add(Strip.line(SMALL, line)));
    }

    private List<Strip> seal(double width) {
        List<Strip> strips = new ArrayList<>();
        String written =
                "Written " + matter.clock().moment(matter.content().writtenAt().toEpochMilli()) + ".";
        if (matter.content().seal().isEmpty()) {
            strips.add(Strip.line(BOX_TITLE, "Not sealed"));
            strips.add(Strip.space(2));
            add(strips, "Nobody signed this file, so nothing in it shows whether it was changed.", width);
            add(strips, written, width);
            return strips;
        }
        SealFacts seal = matter.content().seal().get();
        strips.add(Strip.line(BOX_TITLE, "Seal"));
        strips.add(Strip.space(2));
        Lettering bold = Lettering.bold(7.2);
        firstLines(type.wrap(bold, seal.signer(), width), bold, 2, width)
                .forEach(line -> strips.add(Strip.line(bold, line)));
        add(
                strips,
                written
                        + seal.timestampAuthority()
                                .map(authority -> " Time stamped by " + authority + ".")
                                .orElse(" The time is the signer's own clock."),
                width);
        add(strips, "Certificate SHA-256, to compare with the kitchen's:", width);
        Lettering mono = Lettering.mono(6.2);
        type.wrap(mono, seal.certificateSha256().toUpperCase(Locale.ROOT), width)
                .forEach(line -> strips.add(Strip.line(mono, line)));
        add(strips, "To check file and figures: holdproof recheck", width);
        return strips;
    }

    private void add(List<Strip> strips, String text, double width) {
        type.wrap(SMALL, text, width).forEach(line -> strips.add(Strip.line(SMALL, line)));
    }
}
