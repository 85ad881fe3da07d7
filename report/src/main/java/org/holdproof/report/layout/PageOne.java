package org.holdproof.report.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.verdict.Assessment;
import org.holdproof.core.verdict.Caution;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;
import org.holdproof.report.chart.TemperatureChart;
import org.holdproof.report.draw.Box;
import org.holdproof.report.draw.Lettering;
import org.holdproof.report.draw.Palette;
import org.holdproof.report.draw.Stroke;
import org.holdproof.report.draw.Structure;
import org.holdproof.report.draw.Typesetter;
import org.holdproof.report.draw.VerdictSign;

/** The page that decides at a glance. No text on it is cut: what finds no room is named with the place it stands in. */
final class PageOne {
    private static final double BANNER_SIGN = 42;
    private static final double LEAST_CHART = 118;
    private static final double MOST_CHART = 320;
    private static final double BOX_PAD = 6;
    private static final double GAP = 10;
    private static final int MOST_NEXT_LINES = 9;
    private static final int MOST_REASON_LINES = 5;
    private static final int MOST_FACT_LINES = 3;
    private static final double SIGN_ROOM = 13;
    private static final Lettering FACT_NAME = PageLettering.NOTE;
    private static final Lettering FACT = PageLettering.CELL;
    private static final Lettering SMALL = PageLettering.CELL;
    private static final Lettering BOX_TITLE = Lettering.bold(9.4);
    private static final Lettering SAFETY = Lettering.bold(8.5);
    private static final double VERDICT_COLUMN = 74;
    private static final double MARGIN_COLUMN = 62;

    private final WordedReport matter;
    private final Flow flow;
    private final Typesetter type;
    private final CheckCells cells;

    PageOne(WordedReport matter, Flow flow) {
        this.matter = matter;
        this.flow = flow;
        this.type = flow.type();
        this.cells = new CheckCells(matter, type);
    }

    void lay() {
        title();
        banner();
        keyFact();
        facts();

        Foot foot = foot();
        flow.reserveFoot(foot.height() + 4);
        double rest = flow.width() - VERDICT_COLUMN - MARGIN_COLUMN - 3 * Table.GUTTER;
        double required = rest * 0.60;
        double measured = rest - required;
        Table table = new Table(List.of(
                Table.Column.of("Verdict", VERDICT_COLUMN),
                Table.Column.ofRowHeads("Required", required),
                Table.Column.of("Measured, against the limit (|)", measured),
                Table.Column.toTheRight("Margin", MARGIN_COLUMN)));
        double headings = 2 * (BOX_TITLE.line() + 3) + table.headHeight(type) + 8;
        Shown shown = shown(required, measured, flow.room() - headings - LEAST_CHART);
        double left =
                flow.room() - headings - height(shown.rows()) - shown.others().size() * SMALL.line();
        timeline(Math.max(LEAST_CHART, Math.min(MOST_CHART, left)));

        subtitle("The checks", shown.others().isEmpty() ? "" : "each in full on the next page");
        shown.rows().forEach(table::row);
        table.lay(flow);
        if (!shown.others().isEmpty()) {
            Structure.Part others = flow.part().add(Structure.Tag.PARAGRAPH);
            shown.others().forEach(line -> flow.put(others, ColumnSlice.line(SMALL, line)));
        }
        foot.draw();
    }

    /** The rows that find room, and the titles of the rest in words. */
    private record Shown(List<List<List<ColumnSlice>>> rows, List<String> others) {}

    private Shown shown(double required, double measured, double room) {
        List<Check> checks = matter.assessment().checks();
        for (CheckCells.Detail detail : CheckCells.Detail.values()) {
            List<List<List<ColumnSlice>>> rows = rows(checks, required, measured, detail);
            if (height(rows) <= room) {
                return new Shown(rows, List.of());
            }
        }
        List<Check> worstFirst = matter.worstFirst();
        List<List<List<ColumnSlice>>> rows = rows(worstFirst, required, measured, CheckCells.Detail.LIMIT);
        for (int fit = rows.size() - 1; fit > 0; fit--) {
            List<String> others = type.wrap(SMALL, titles(worstFirst.subList(fit, rows.size())), flow.width());
            if (height(rows.subList(0, fit)) + others.size() * SMALL.line() <= room) {
                return new Shown(rows.subList(0, fit), others);
            }
        }
        return new Shown(
                rows.subList(0, 1),
                type.wrap(
                        SMALL,
                        "And " + (rows.size() - 1) + " more, the worst first: see Each check in full.",
                        flow.width()));
    }

    /** {@code Also MET: this; that.} */
    private static String titles(List<Check> checks) {
        return Stream.of(Verdict.NOT_MET, Verdict.NOT_PROVEN, Verdict.MET)
                .map(verdict -> {
                    String names = checks.stream()
                            .filter(check -> check.verdict() == verdict)
                            .map(Check::title)
                            .collect(Collectors.joining("; "));
                    return names.isEmpty() ? "" : "Also " + verdict.words() + ": " + names + ".";
                })
                .filter(text -> !text.isEmpty())
                .collect(Collectors.joining(" "));
    }

    private List<List<List<ColumnSlice>>> rows(
            List<Check> checks, double required, double measured, CheckCells.Detail detail) {
        List<List<List<ColumnSlice>>> rows = new ArrayList<>();
        for (Check check : checks) {
            rows.add(List.of(
                    CheckCells.verdict(check.verdict()),
                    cells.required(check, required, detail),
                    cells.ends(check, measured),
                    cells.margin(check)));
        }
        return rows;
    }

    private static double height(List<List<List<ColumnSlice>>> rows) {
        return rows.stream().mapToDouble(Table::height).sum();
    }

    private void title() {
        Assessment assessment = matter.assessment();
        BatchRecord batch = assessment.batch();
        String title = "Batch " + batch.batch() + ": " + batch.product().name();
        Lettering large = Lettering.bold(16);
        if (type.wrap(large, title, flow.width()).size() > 2) {
            large = Lettering.bold(11);
        }
        Structure.Part heading = flow.part().add(Structure.Tag.TITLE);
        for (String line : type.wrap(large, title, flow.width())) {
            flow.put(heading, ColumnSlice.line(large, line));
        }
        Structure.Part under = flow.part().add(Structure.Tag.PARAGRAPH);
        for (String line : type.wrap(
                PageLettering.NOTE,
                "Temperature record, judged by " + assessment.authority().title() + ".",
                flow.width())) {
            flow.put(under, ColumnSlice.line(PageLettering.NOTE, line));
        }
        matter.content().siteLimits().ifPresent(site -> {
            Structure.Part warning = flow.part().add(Structure.Tag.PARAGRAPH);
            type.wrap(PageLettering.STRONG, site.words() + " See Site's own limits.", flow.width())
                    .forEach(line -> flow.put(warning, ColumnSlice.line(PageLettering.STRONG, line)));
        });
        flow.skip(4);
    }

    private void banner() {
        Assessment assessment = matter.assessment();
        Verdict verdict = assessment.verdict();
        Lettering word = Lettering.bold(24);
        Lettering summary = Lettering.bold(9.4);
        Lettering reason = PageLettering.TEXT;
        double wordX = flow.left() + 12 + BANNER_SIGN + 11;
        double textX = wordX + type.width(word, Verdict.NOT_PROVEN.words()) + 14;
        double textWidth = flow.left() + flow.width() - textX - 10;
        List<String> summaryLines = type.wrap(summary, tally(assessment), textWidth);
        List<String> reasonLines = reason(reason, textWidth);
        double block = summaryLines.size() * summary.line() + reasonLines.size() * reason.line();
        double height = Math.max(BANNER_SIGN + 12, block + 12);
        Box box = new Box(flow.left(), flow.y(), flow.width(), height);
        boolean filled = verdict == Verdict.NOT_MET;
        var colour = Palette.of(verdict);
        var paper = filled ? colour : Palette.PAPER;
        var ink = filled ? Palette.PAPER : Palette.INK;
        flow.decorate(pen -> {
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
        });
        flow.mark(
                flow.part().add(Structure.Tag.PARAGRAPH),
                pen -> pen.text(
                        word.in(filled ? Palette.PAPER : colour),
                        verdict.words(),
                        wordX,
                        box.centreY() - word.line() / 2));
        flow.mark(flow.part().add(Structure.Tag.PARAGRAPH), pen -> {
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
        flow.skip(height + 6);
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

    /** Why the verdict is what it is, whole; else its check's title, and where the reason stands. */
    private List<String> reason(Lettering lettering, double width) {
        List<Check> open = matter.open();
        if (open.isEmpty()) {
            return type.wrap(lettering, "Every limit is kept even at the worst case this record allows.", width);
        }
        String title = open.get(0).title();
        return whole(lettering, title + ": " + open.get(0).why(), width, MOST_REASON_LINES)
                .or(() -> whole(
                        lettering,
                        title + ". The reason stands in full under Each check in full.",
                        width,
                        MOST_REASON_LINES))
                .orElseGet(() -> type.wrap(lettering, "The reason stands under Each check in full.", width));
    }

    /** The text's lines; empty where they are more than these. */
    private Optional<List<String>> whole(Lettering lettering, String text, double width, int most) {
        List<String> lines = type.wrap(lettering, text, width);
        return lines.size() <= most ? Optional.of(lines) : Optional.empty();
    }

    /** What the cook hangs on, where it was met: which row was kept, for how long, and when one was first proven. */
    private void keyFact() {
        Optional<String> fact = matter.rules()
                .lethality()
                .filter(check -> check.verdict() == Verdict.MET)
                .map(check -> check.title() + ": " + check.why());
        Optional<List<String>> lines =
                fact.flatMap(text -> whole(PageLettering.STRONG, text, flow.width(), MOST_REASON_LINES));
        if (lines.isPresent()) {
            Structure.Part part = flow.part().add(Structure.Tag.PARAGRAPH);
            lines.get().forEach(line -> flow.put(part, ColumnSlice.line(PageLettering.STRONG, line)));
            flow.skip(4);
        }
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
        double width = (flow.width() - (columns - 1) * GAP) / columns;
        for (int row = 0; row < facts.size(); row += columns) {
            double tallest = 0;
            for (int column = 0; column < columns; column++) {
                Fact fact = facts.get(row + column);
                List<String> lines = whole(FACT, fact.value(), width, MOST_FACT_LINES)
                        .orElseGet(() -> type.wrap(FACT, "In full under Batch and stages.", width));
                double x = flow.left() + column * (width + GAP);
                double y = flow.y();
                flow.mark(flow.part().add(Structure.Tag.PARAGRAPH), pen -> {
                    pen.text(FACT_NAME, fact.name(), x, y);
                    for (int i = 0; i < lines.size(); i++) {
                        pen.text(FACT, lines.get(i), x, y + FACT_NAME.line() + i * FACT.line());
                    }
                });
                tallest = Math.max(tallest, FACT_NAME.line() + lines.size() * FACT.line());
            }
            flow.skip(tallest + 2);
        }
        flow.skip(2);
    }

    private void timeline(double height) {
        String where =
                "Clock: " + matter.clock().zoneAt(matter.assessment().span().fromMillis());
        subtitle("The whole cook", where);
        TemperatureChart chart = new CookCharts(matter, flow.width()).timeline();
        flow.figure(height, ChartWords.of(matter, chart, "the whole cook"), chart::draw);
    }

    private void subtitle(String title, String note) {
        double top = flow.y();
        flow.mark(flow.part().add(Structure.Tag.HEADING), pen -> pen.text(BOX_TITLE, title, flow.left(), top));
        if (!note.isEmpty()) {
            flow.mark(
                    flow.part().add(Structure.Tag.PARAGRAPH),
                    pen -> pen.textRight(PageLettering.NOTE, note, flow.left() + flow.width(), top + 0.8));
        }
        flow.skip(BOX_TITLE.line() + 3);
    }

    /** What to do next beside the seal, and the safety words under both. */
    private Foot foot() {
        double nextWidth = (flow.width() - GAP) * 0.56;
        double sealWidth = flow.width() - GAP - nextWidth;
        return new Foot(
                next(nextWidth - 2 * BOX_PAD),
                seal(sealWidth - 2 * BOX_PAD),
                type.wrap(SAFETY, SafetyWords.TEXT, flow.width()),
                nextWidth,
                sealWidth);
    }

    private final class Foot {
        private final List<ColumnSlice> next;
        private final List<ColumnSlice> seal;
        private final List<String> safety;
        private final double nextWidth;
        private final double sealWidth;

        Foot(List<ColumnSlice> next, List<ColumnSlice> seal, List<String> safety, double nextWidth, double sealWidth) {
            this.next = next;
            this.seal = seal;
            this.safety = safety;
            this.nextWidth = nextWidth;
            this.sealWidth = sealWidth;
        }

        private double boxes() {
            return Math.max(sum(next), sum(seal)) + 2 * BOX_PAD;
        }

        double height() {
            return boxes() + 5 + safety.size() * SAFETY.line();
        }

        void draw() {
            double top = flow.footTop(height());
            double boxes = boxes();
            box(new Box(flow.left(), top, nextWidth, boxes), next, false);
            boolean unsealed = matter.content().seal().isEmpty();
            box(new Box(flow.left() + nextWidth + GAP, top, sealWidth, boxes), seal, unsealed);
            Structure.Part words = flow.part().add(Structure.Tag.PARAGRAPH);
            flow.markFirst(words, pen -> {
                double y = top + boxes + 5;
                for (String line : safety) {
                    pen.text(SAFETY, line, flow.left(), y);
                    y += SAFETY.line();
                }
            });
        }

        private void box(Box box, List<ColumnSlice> slices, boolean dashed) {
            flow.decorateFirst(pen -> pen.frame(
                    box.inset(0.4), dashed ? Stroke.dashed(Palette.INK, 0.8, 4, 3) : Stroke.solid(Palette.INK, 0.8)));
            Structure.Part heading = flow.part().add(Structure.Tag.HEADING);
            Structure.Part words = flow.part().add(Structure.Tag.PARAGRAPH);
            double y = box.y() + BOX_PAD;
            boolean first = true;
            for (ColumnSlice slice : slices) {
                double top = y;
                flow.markFirst(
                        first ? heading : words,
                        pen -> slice.draw(pen, box.x() + BOX_PAD, top, box.width() - 2 * BOX_PAD));
                y += slice.height();
                first = false;
            }
        }
    }

    private static double sum(List<ColumnSlice> slices) {
        return slices.stream().mapToDouble(ColumnSlice::height).sum();
    }

    private List<ColumnSlice> next(double width) {
        List<ColumnSlice> slices = new ArrayList<>();
        slices.add(ColumnSlice.line(BOX_TITLE, "What to do next"));
        List<Check> open = matter.open();
        if (open.isEmpty()) {
            add(slices, "No corrective action is called for. Keep this report with the batch's papers.", width);
        }
        List<String> said = new ArrayList<>();
        int lines = 0;
        boolean left = false;
        for (Check check : open) {
            String todo = check.next().orElse("");
            if (todo.isEmpty() || said.contains(todo)) {
                continue;
            }
            said.add(todo);
            List<String> wrapped = type.wrap(SMALL, todo, width - SIGN_ROOM);
            if (lines + wrapped.size() > MOST_NEXT_LINES) {
                left = true;
                continue;
            }
            lines += wrapped.size();
            signed(slices, check.verdict(), wrapped);
        }
        if (!open.isEmpty()) {
            String before = lines == 0 ? "All that is to do" : left ? "More to do" : "Space";
            add(slices, before + (left ? ", and space" : "") + " to write and sign: see Corrective actions.", width);
        }
        cautions(slices, width);
        return slices;
    }

    /** A verdict's sign before the first of some lines. */
    private static void signed(List<ColumnSlice> slices, Verdict verdict, List<String> lines) {
        for (int i = 0; i < lines.size(); i++) {
            boolean first = i == 0;
            String line = lines.get(i);
            slices.add(ColumnSlice.of(SMALL.line(), (pen, x, top, room) -> {
                if (first) {
                    VerdictSign.draw(
                            pen, verdict, x + 4, top + SMALL.line() / 2, 8, Palette.of(verdict), Palette.PAPER);
                }
                pen.text(SMALL, line, x + SIGN_ROOM, top);
            }));
        }
    }

    /** Cautions have no verdict, so page one says at least that there are some, and the first one where it is short. */
    private void cautions(List<ColumnSlice> slices, double width) {
        List<Caution> cautions = matter.assessment().cautions();
        if (cautions.isEmpty()) {
            return;
        }
        slices.add(ColumnSlice.space(2));
        String count = cautions.size() == 1 ? "1 caution" : cautions.size() + " cautions";
        whole(SMALL, count + " (see Cautions): " + cautions.get(0).text(), width, 3)
                .orElseGet(() -> type.wrap(SMALL, count + ": see Cautions.", width))
                .forEach(line -> slices.add(ColumnSlice.line(SMALL, line)));
    }

    private List<ColumnSlice> seal(double width) {
        List<ColumnSlice> slices = new ArrayList<>();
        String written =
                "Written " + matter.clock().moment(matter.content().writtenAt().toEpochMilli()) + ".";
        if (matter.content().seal().isEmpty()) {
            slices.add(ColumnSlice.line(BOX_TITLE, "Not sealed"));
            add(slices, "Nobody signed this file, so nothing in it shows whether it was changed.", width);
            add(slices, written, width);
            return slices;
        }
        SealFacts seal = matter.content().seal().get();
        slices.add(ColumnSlice.line(BOX_TITLE, "Seal"));
        type.wrap(PageLettering.CELL_STRONG, seal.signer(), width)
                .forEach(line -> slices.add(ColumnSlice.line(PageLettering.CELL_STRONG, line)));
        add(
                slices,
                written
                        + seal.timestampAuthority()
                                .map(authority -> " Time stamped by " + authority + ".")
                                .orElse(" The time is the signer's own clock."),
                width);
        add(slices, "Fingerprint, to compare with the kitchen's own word:", width);
        type.wrap(PageLettering.CODE, FingerprintWords.grouped(seal.certificateSha256()), width)
                .forEach(line -> slices.add(ColumnSlice.line(PageLettering.CODE, line)));
        add(slices, "To check: holdproof recheck. What a viewer says: see Files inside.", width);
        return slices;
    }

    private void add(List<ColumnSlice> slices, String text, double width) {
        type.wrap(SMALL, text, width).forEach(line -> slices.add(ColumnSlice.line(SMALL, line)));
    }
}
