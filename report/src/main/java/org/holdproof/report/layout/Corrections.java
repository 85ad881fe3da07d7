package org.holdproof.report.layout;

import java.util.ArrayList;
import java.util.List;
import org.holdproof.core.batch.Roles;
import org.holdproof.core.verdict.Check;
import org.holdproof.report.draw.Lettering;
import org.holdproof.report.draw.Palette;
import org.holdproof.report.draw.Stroke;
import org.holdproof.report.draw.VerdictSign;

/** What to do about each check that is not met, with room to write what was done and to sign. */
final class Corrections {
    private static final Lettering TITLE = Lettering.bold(8.6);
    private static final Lettering TEXT = Lettering.plain(8.2);
    private static final Lettering LABEL = Lettering.soft(7);
    private static final double WRITING_LINE = 19;

    private Corrections() {}

    static void lay(Matter matter, Flow flow) {
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

    private static void action(Matter matter, Flow flow, Check check) {
        List<Strip> words = new ArrayList<>();
        add(flow, words, TEXT, check.why());
        check.next().ifPresent(next -> add(flow, words, TEXT, "To do: " + next));
        String documents = matter.rules().correctiveAction(check);
        if (!documents.isBlank()
                && check.next().filter(next -> next.contains(documents)).isEmpty()) {
            add(flow, words, TEXT, "The document behind the rule: " + documents);
        }
        double height = words.stream().mapToDouble(Strip::height).sum() + TITLE.line() + 3 * WRITING_LINE + 10;
        flow.need(Math.min(height, flow.fullHeight() / 2));
        flow.put(Strip.of(TITLE.line() + 2, (pen, x, top, width) -> {
            VerdictSign.draw(pen, check.verdict(), x + 5, top + 5.5, 10, Palette.of(check.verdict()), Palette.PAPER);
            String title = check.verdict().words() + ": " + check.title();
            pen.text(TITLE, pen.type().shorten(TITLE, title, width - 15), x + 15, top);
        }));
        words.forEach(flow::put);
        lines(flow, "What was done", 2);
        signature(flow, "Done by");
        flow.skip(10);
    }

    private static void add(Flow flow, List<Strip> words, Lettering lettering, String text) {
        flow.type().wrap(lettering, text, flow.width()).forEach(line -> words.add(Strip.line(lettering, line)));
    }

    private static void lines(Flow flow, String label, int count) {
        for (int i = 0; i < count; i++) {
            boolean first = i == 0;
            flow.put(Strip.of(WRITING_LINE, (pen, x, top, width) -> {
                double y = top + WRITING_LINE - 2;
                double from = first && !label.isEmpty() ? x + pen.type().width(LABEL, label) + 5 : x;
                if (first) {
                    pen.text(LABEL, label, x, y - LABEL.line());
                }
                pen.line(from, y, x + width, y, Stroke.solid(Palette.SOFT, 0.5));
            }));
        }
    }

    private static void signature(Flow flow, String who) {
        flow.put(Strip.of(WRITING_LINE, (pen, x, top, width) -> {
            double y = top + WRITING_LINE - 2;
            String[] labels = {who, "Date and time", "Signature"};
            double[] shares = {0.42, 0.25, 0.33};
            double at = x;
            for (int i = 0; i < labels.length; i++) {
                double end = at + width * shares[i];
                String label = pen.type().shorten(LABEL, labels[i], width * shares[i] * 0.6);
                pen.text(LABEL, label, at, y - LABEL.line());
                pen.line(
                        at + pen.type().width(LABEL, label) + 5,
                        y,
                        i < labels.length - 1 ? end - 8 : end,
                        y,
                        Stroke.solid(Palette.SOFT, 0.5));
                at = end;
            }
        }));
    }

    private static void signatures(Roles roles, Flow flow) {
        flow.need(2 * WRITING_LINE + 22);
        flow.subsection("Signed by hand", 2 * WRITING_LINE);
        signature(flow, "Run by " + roles.operator());
        signature(flow, roles.reviewer().isBlank() ? "Reviewed by" : "Reviewed by " + roles.reviewer());
        flow.skip(6);
    }
}
