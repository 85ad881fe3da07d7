package org.holdproof.report.layout;

import java.util.List;
import org.holdproof.core.verdict.Caution;
import org.holdproof.report.draw.Lettering;

/** What to know besides. */
final class Cautions {
    private static final int MOST_LINES_TOGETHER = 12;
    private static final Lettering TEXT = Lettering.plain(8.2);

    private Cautions() {}

    static void lay(Matter matter, Flow flow) {
        flow.section("Cautions", 60);
        flow.paragraph(Lettering.bold(8.4), SafetyWords.TEXT);
        for (Caution caution : matter.assessment().cautions()) {
            item(flow, caution.text());
        }
        for (String left : matter.assessment().authority().left()) {
            item(flow, "Left to the local authority: " + left);
        }
        item(
                flow,
                "A probe speaks for the place it sits in. The figures hold for the food only if it sat in the part that "
                        + "heats and cools slowest.");
        item(
                flow,
                "A record cannot show what it did not measure: hygiene, the state of the raw food, allergens, the seal of "
                        + "a bag.");
    }

    private static void item(Flow flow, String text) {
        double indent = 10;
        boolean first = true;
        List<String> lines = flow.type().wrap(TEXT, text, flow.width() - indent);
        flow.need(Math.min(lines.size(), MOST_LINES_TOGETHER) * TEXT.line());
        for (String line : lines) {
            boolean bullet = first;
            flow.put(Strip.of(TEXT.line(), (pen, x, top, width) -> {
                if (bullet) {
                    pen.text(TEXT, "•", x, top);
                }
                pen.text(TEXT, line, x + indent, top);
            }));
            first = false;
        }
        flow.skip(3);
    }
}
