package org.holdproof.report.layout;

import java.util.List;
import org.holdproof.core.rules.WrittenRule;
import org.holdproof.report.draw.Lettering;

/** What the authority's records must hold, and how long they are kept. */
final class KeptRecords {
    private static final Lettering TEXT = PageLettering.CELL;

    private KeptRecords() {}

    static void lay(WordedReport matter, Flow flow) {
        List<WrittenRule> records = matter.assessment().authority().records();
        if (records.isEmpty()) {
            return;
        }
        flow.section("Records this authority asks for", 60);
        double rest = flow.width() - 2 * Table.GUTTER;
        Table table = new Table(List.of(
                Table.Column.of("What", rest * 0.52),
                Table.Column.of("How long", rest * 0.12),
                Table.Column.of("Where it stands", rest * 0.36)));
        for (WrittenRule rule : records) {
            table.textRow(
                    flow,
                    TEXT,
                    List.of(rule.requirement(), kept(rule), rule.citation().text()));
        }
        table.lay(flow);
    }

    private static String kept(WrittenRule rule) {
        return rule.value().isPresent() && rule.unit().equals("d")
                ? Figures.trimmed(rule.value().getAsDouble(), 0) + " days"
                : "";
    }
}
