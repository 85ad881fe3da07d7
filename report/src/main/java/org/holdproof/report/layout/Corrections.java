package org.holdproof.report.layout;

import java.util.ArrayList;
import java.util.List;
import org.holdproof.core.batch.Roles;
import org.holdproof.core.verdict.Check;
import org.holdproof.report.draw.Lettering;
import org.holdproof.report.draw.Palette;
import org.holdproof.report.draw.Stroke;
import org.holdproof.report.draw.Structure;
import org.holdproof.report.draw.VerdictSign;

/** What to do about each check that is not met, with room to write what was done and to sign. */
final class Corrections {
    private static final Lettering TITLE = PageLettering.STRONG;
    private static final Lettering TEXT = PageLettering.TEXT;
    private static final Lettering LABEL = PageLettering.NOTE;
    private static final double WRITING_LINE = 19;
    private static final double SIGN = 15;

    private Corrections() {}

    static void lay(WordedReport matter, Flow flow) {
        flow.section("Corrective actions", 120);
        List<Check> open = matter.open();
        if (open.isEmpty()) {
            flow.paragraph(TEXT, "Every check is met: none is called for. Remarks:");
            lines(flow, "", 2);
        }
        for (Check check : open) {
            action(matter, flow, check);
        }
        signatures(matter.assessment().batch().roles(), flow);
    }

    private static void action(WordedReport matter, Flow flow, Check check) {
        List<ColumnSlice> words = new ArrayList<>();
        add(flow, words, TEXT, check.why());
        check.next().ifPresent(next -> add(flow, words, TEXT, "To do: " + next));
        String documents = matter.rules().correctiveAction(check);
        if (!documents.isBlank()
                && check.next().filter(next -> next.contains(documents)).isEmpty()) {
            add(flow, words, TEXT, "The document behind the rule: " + documents);
        }
        String title = check.verdict().words() + ": " + check.title();
        List<String> heading = flow.type().wrap(TITLE, title, flow.width() - SIGN);
        double height = words.stream().mapToDouble(ColumnSlice::height).sum()
                + heading.size() * TITLE.line()
                + 4 * WRITING_LINE;
        flow.need(Math.min(height, flow.fullHeight() / 3));
        Structure.Part head = flow.part().add(Structure.Tag.SUBHEADING);
        for (int i = 0; i < heading.size(); i++) {
            boolean first = i == 0;
            String line = heading.get(i);
            flow.put(head, ColumnSlice.of(TITLE.line(), (pen, x, top, width) -> {
                if (first) {
                    VerdictSign.draw(
                            pen, check.verdict(), x + 5, top + 5.5, 10, Palette.of(check.verdict()), Palette.PAPER);
                }
                pen.text(TITLE, line, x + SIGN, top);
            }));
        }
        flow.skip(2);
        Structure.Part paragraph = flow.part().add(Structure.Tag.PARAGRAPH);
        words.forEach(slice -> flow.put(paragraph, slice));
        lines(flow, "What was done", 2);
        signature(flow, "Done by");
        flow.skip(8);
    }

    private static void add(Flow flow, List<ColumnSlice> words, Lettering lettering, String text) {
        flow.type().wrap(lettering, text, flow.width()).forEach(line -> words.add(ColumnSlice.line(lettering, line)));
    }

    /** Lines to write on, the first one after its label. */
    private static void lines(Flow flow, String label, int count) {
        for (int i = 0; i < count; i++) {
            flow.need(WRITING_LINE);
            writingLine(flow, i == 0 ? label : "", flow.left(), flow.width());
            flow.skip(WRITING_LINE);
        }
    }

    private static void writingLine(Flow flow, String label, double x, double width) {
        double y = flow.y() + WRITING_LINE - 2;
        double labelled = label.isEmpty() ? 0 : flow.type().width(LABEL, label) + 5;
        if (!label.isEmpty()) {
            flow.mark(flow.part().add(Structure.Tag.PARAGRAPH), pen -> pen.text(LABEL, label, x, y - LABEL.line()));
        }
        flow.decorate(pen -> pen.line(x + labelled, y, x + width, y, Stroke.solid(Palette.SOFT, 0.5)));
    }

    private static void signature(Flow flow, String who) {
        flow.need(WRITING_LINE);
        String[] labels = {who, "Date and time", "Signature"};
        double[] shares = {0.40, 0.27, 0.33};
        double at = flow.left();
        for (int i = 0; i < labels.length; i++) {
            double width = flow.width() * shares[i];
            writingLine(flow, labels[i], at, i < labels.length - 1 ? width - 8 : width);
            at += width;
        }
        flow.skip(WRITING_LINE);
    }

    private static void signatures(Roles roles, Flow flow) {
        flow.need(4 * WRITING_LINE + 30);
        flow.subsection("Signed by hand", 3 * WRITING_LINE);
        flow.paragraph(TEXT, "Run by " + roles.operator() + ".");
        signature(flow, "Name");
        flow.skip(4);
        flow.paragraph(
                TEXT,
                roles.reviewer().isBlank()
                        ? "Reviewed by: the record names nobody."
                        : "Reviewed by " + roles.reviewer() + ".");
        signature(flow, "Name");
        flow.skip(6);
    }
}
