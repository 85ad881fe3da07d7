package org.holdproof.report.layout;

import com.lowagie.text.Rectangle;
import java.util.List;
import org.holdproof.core.verdict.Verdict;
import org.holdproof.report.draw.Lettering;
import org.holdproof.report.draw.Palette;
import org.holdproof.report.draw.Pen;
import org.holdproof.report.draw.Stroke;
import org.holdproof.report.draw.Typesetter;
import org.holdproof.report.draw.VerdictSign;

/**
 * What stands at the head and the foot of every page: to which batch it belongs, what the verdict is, who wrote it.
 *
 * @param head the batch in as many lines as it takes
 * @param foot the kitchen in as many lines as it takes
 */
record RunningWords(Verdict verdict, String report, List<String> head, List<String> foot) {
    private static final Lettering SOFT = Lettering.soft(8);
    private static final Lettering STRONG = Lettering.bold(8);
    private static final double SIGN = 13;
    private static final double GAP = 10;

    static RunningWords of(WordedReport report, Typesetter type, double width) {
        Verdict verdict = report.assessment().verdict();
        String id = "Report " + report.content().shortId();
        double beside = SIGN + type.width(STRONG, verdict.words()) + type.width(SOFT, id) + 2 * GAP;
        String kitchen = BatchWords.kitchen(report.assessment().batch().kitchen()) + ". Written "
                + report.clock().moment(report.content().writtenAt().toEpochMilli()) + ". Times are the kitchen's own.";
        return new RunningWords(
                verdict,
                id,
                type.wrap(SOFT, "Batch " + report.assessment().batch().batch(), width - beside),
                type.wrap(SOFT, kitchen, width - type.width(SOFT, "Page 100 of 100") - GAP));
    }

    /** Room it takes from the margin down to the page's body, in points. */
    double headHeight() {
        return head.size() * SOFT.line() + 8;
    }

    /** Room it takes from the page's body down to the margin, in points. */
    double footHeight() {
        return ReportLayout.MARGIN + foot.size() * SOFT.line() + 6;
    }

    void draw(Pen pen, Rectangle sheet, String page) {
        double left = ReportLayout.MARGIN;
        double right = sheet.getWidth() - ReportLayout.MARGIN;
        VerdictSign.draw(pen, verdict, left + 5, left + 5, 9, Palette.of(verdict), Palette.PAPER);
        pen.text(STRONG.in(Palette.of(verdict)), verdict.words(), left + SIGN, left);
        double x = left + SIGN + pen.type().width(STRONG, verdict.words()) + GAP;
        for (int i = 0; i < head.size(); i++) {
            pen.text(SOFT, head.get(i), x, left + i * SOFT.line());
        }
        pen.textRight(SOFT, report, right, left);
        double rule = left + head.size() * SOFT.line() + 2.5;
        pen.line(left, rule, right, rule, Stroke.solid(Palette.RULE, 0.6));
        double top = sheet.getHeight() - ReportLayout.MARGIN - foot.size() * SOFT.line();
        for (int i = 0; i < foot.size(); i++) {
            pen.text(SOFT, foot.get(i), left, top + i * SOFT.line());
        }
        pen.textRight(SOFT, page, right, top + (foot.size() - 1) * SOFT.line());
    }
}
