package org.holdproof.report.layout;

import java.util.List;
import org.holdproof.core.verdict.Caution;
import org.holdproof.report.draw.Lettering;
import org.holdproof.report.draw.Structure;

/** What to know besides. */
final class Cautions {
    private static final int MOST_LINES_TOGETHER = 12;
    private static final Lettering TEXT = PageLettering.TEXT;

    private Cautions() {}

    static void lay(WordedReport matter, Flow flow) {
        flow.section("Cautions", 60);
        flow.paragraph(PageLettering.STRONG, SafetyWords.TEXT);
        Structure.Part list = flow.part().add(Structure.Tag.LIST);
        for (Caution caution : matter.assessment().cautions()) {
            item(flow, list, caution.text());
        }
        for (String left : matter.assessment().authority().left()) {
            item(flow, list, "Left to the local authority: " + left);
        }
        item(
                flow,
                list,
                "A probe speaks for the place it sits in. The figures hold for the food only if it sat in the part that "
                        + "heats and cools slowest.");
        item(
                flow,
                list,
                "A record cannot show what it did not measure: hygiene, the state of the raw food, allergens, the seal of "
                        + "a bag.");
    }

    private static void item(Flow flow, Structure.Part list, String text) {
        Structure.Part body = list.add(Structure.Tag.ITEM).add(Structure.Tag.ITEM_BODY);
        double indent = 10;
        boolean first = true;
        List<String> lines = flow.type().wrap(TEXT, text, flow.width() - indent);
        flow.need(Math.min(lines.size(), MOST_LINES_TOGETHER) * TEXT.line());
        for (String line : lines) {
            boolean bullet = first;
            flow.put(body, ColumnSlice.of(TEXT.line(), (pen, x, top, width) -> {
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
