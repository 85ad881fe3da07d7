package org.holdproof.report.layout;

import java.util.ArrayList;
import java.util.List;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.batch.ColumnRoles;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.log.Channel;
import org.holdproof.core.log.LogContents;
import org.holdproof.core.log.LogFault;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.verdict.Assessment;
import org.holdproof.core.verdict.RecordFacts;
import org.holdproof.report.draw.Lettering;

/** The batch, its stages, the readings, and what is wrong with them. */
final class Readings {
    private static final Lettering TEXT = PageLettering.CELL;
    private static final Lettering PARAGRAPH = PageLettering.TEXT;

    private Readings() {}

    static void lay(WordedReport matter, Flow flow) {
        batch(matter, flow);
        flow.section("Readings", 90);
        readings(matter, flow);
        gaps(matter, flow);
        faults(matter, flow);
    }

    private static void batch(WordedReport matter, Flow flow) {
        flow.section("Batch and stages", 90);
        BatchRecord batch = matter.assessment().batch();
        Table facts = new Table(List.of(
                Table.Column.of("", 110),
                Table.Column.of("As the batch record says", flow.width() - 110 - Table.GUTTER)));
        facts.textRow(flow, TEXT, List.of("Batch", batch.batch()));
        facts.textRow(flow, TEXT, List.of("Product", BatchWords.product(batch.product())));
        facts.textRow(flow, TEXT, List.of("Piece", BatchWords.piece(batch.product())));
        facts.textRow(flow, TEXT, List.of("Kitchen", BatchWords.kitchen(batch.kitchen())));
        facts.textRow(flow, TEXT, List.of("Run by; reviewed by", BatchWords.roles(batch.roles())));
        facts.textRow(
                flow,
                TEXT,
                List.of(
                        "Judged by",
                        matter.assessment().authority().title() + "; reference tables, edition "
                                + matter.assessment().tablesEdition()));
        facts.lay(flow);
        if (batch.stages().isEmpty()) {
            flow.paragraph(PARAGRAPH, "The batch record names no stages.");
            return;
        }
        double moment = 105;
        double rest = flow.width() - 2 * moment - 60 - 4 * Table.GUTTER;
        Table stages = new Table(List.of(
                Table.Column.of("Stage", 60),
                Table.Column.of("From", moment),
                Table.Column.of("To", moment),
                Table.Column.of("Length", rest * 0.4),
                Table.Column.of("Set to", rest * 0.6)));
        for (Stage stage : batch.stages()) {
            long from = stage.from().toEpochMilli();
            stages.textRow(
                    flow,
                    TEXT,
                    List.of(
                            stage.kind().title(),
                            matter.clock().moment(from),
                            stage.to()
                                    .map(to -> matter.clock().moment(to.toEpochMilli()))
                                    .orElse("—"),
                            stage.to()
                                    .map(to -> KitchenClock.length(new Span(from, to.toEpochMilli()).minutes()))
                                    .orElse("—"),
                            stage.setPointCelsius().isPresent()
                                    ? matter.degrees()
                                            .text(stage.setPointCelsius().getAsDouble())
                                    : "—"));
        }
        stages.lay(flow);
    }

    private static void readings(WordedReport matter, Flow flow) {
        Assessment assessment = matter.assessment();
        ProbeLog log = matter.content().log();
        RecordFacts record = assessment.record();
        for (LogContents contents : log.contents()) {
            flow.paragraph(PARAGRAPH, contents.words() + ".");
        }
        flow.paragraph(
                PARAGRAPH,
                log.fileName() + ": " + count(record.rows(), "row") + " from "
                        + matter.clock().span(assessment.span()) + "; usual interval "
                        + KitchenClock.length(record.medianMinutes()) + "; longer than "
                        + KitchenClock.length(record.gapLimitMinutes()) + " is a gap. "
                        + (record.offsetCelsius() == 0
                                ? "No correction was added to the readings. "
                                : "To every reading " + matter.degrees().difference(record.offsetCelsius())
                                        + " was added for the thermometer's known error. ")
                        + "Every figure is widened by ± "
                        + matter.degrees().difference(record.toleranceCelsius()) + ".");
        double narrow = 62;
        double rest = flow.width() - 2 * narrow - 5 * Table.GUTTER;
        Table channels = new Table(List.of(
                Table.Column.of("Channel", rest * 0.28),
                Table.Column.of("Column", rest * 0.10),
                Table.Column.of("Measured", narrow),
                Table.Column.toTheRight("Readings", narrow),
                Table.Column.toTheRight("Lowest", rest * 0.31),
                Table.Column.toTheRight("Highest", rest * 0.31)));
        for (int i = 0; i < log.channels().size(); i++) {
            Channel channel = log.channels().get(i);
            double low = Double.POSITIVE_INFINITY;
            double high = Double.NEGATIVE_INFINITY;
            int read = 0;
            for (int row = 0; row < log.rows(); row++) {
                double celsius = log.celsius(i, row);
                if (!Double.isNaN(celsius)) {
                    read++;
                    low = Math.min(low, celsius);
                    high = Math.max(high, celsius);
                }
            }
            channels.textRow(
                    flow,
                    TEXT,
                    List.of(
                            channel.name(),
                            Integer.toString(channel.column()) + ", "
                                    + channel.unit().symbol(),
                            role(assessment.batch().columns(), channel.name()),
                            Integer.toString(read),
                            read == 0 ? "—" : matter.degrees().text(low),
                            read == 0 ? "—" : matter.degrees().text(high)));
        }
        channels.lay(flow);
        if (record.offsetCelsius() != 0) {
            flow.paragraph(PageLettering.NOTE, "Lowest and highest are as logged, before the correction.");
        }
    }

    private static String role(ColumnRoles roles, String channel) {
        if (roles.core().stream().anyMatch(name -> same(name, channel))) {
            return "core";
        }
        if (roles.bath().stream().anyMatch(name -> same(name, channel))) {
            return "bath";
        }
        return roles.air().stream().anyMatch(name -> same(name, channel)) ? "air" : "not used";
    }

    private static boolean same(String one, String other) {
        return one.strip().equalsIgnoreCase(other.strip());
    }

    private static void gaps(WordedReport matter, Flow flow) {
        List<RecordFacts.Gap> gaps = matter.assessment().record().gaps();
        flow.subsection("Gaps in the core readings", 24);
        if (gaps.isEmpty()) {
            flow.paragraph(PARAGRAPH, "None.");
            return;
        }
        Table table = new Table(List.of(
                Table.Column.of("Probe", flow.width() * 0.3),
                Table.Column.of("No readings", flow.width() * 0.45),
                Table.Column.toTheRight("Length", flow.width() * 0.25 - 2 * Table.GUTTER)));
        for (RecordFacts.Gap gap : gaps) {
            table.textRow(
                    flow,
                    TEXT,
                    List.of(
                            gap.channel(),
                            matter.clock().span(gap.span()),
                            KitchenClock.length(gap.span().minutes())));
        }
        table.lay(flow);
    }

    private static void faults(WordedReport matter, Flow flow) {
        List<LogFault> faults = matter.content().log().faults();
        flow.subsection("Faults in the log", 24);
        if (faults.isEmpty()) {
            flow.paragraph(PARAGRAPH, "None found.");
            return;
        }
        double kind = 92;
        double channel = 80;
        double lines = 70;
        List<Table.Column> columns = new ArrayList<>(List.of(
                Table.Column.of("Fault", kind), Table.Column.of("Channel", channel), Table.Column.of("Lines", lines)));
        columns.add(Table.Column.of(
                "What was found, and what was made of it", flow.width() - kind - channel - lines - 3 * Table.GUTTER));
        Table table = new Table(columns);
        for (LogFault fault : faults) {
            table.textRow(
                    flow,
                    TEXT,
                    List.of(
                            fault.kind().title(),
                            fault.channel().isBlank() ? "whole row" : fault.channel(),
                            fault.firstLine() == fault.lastLine()
                                    ? Long.toString(fault.firstLine())
                                    : fault.firstLine() + "–" + fault.lastLine(),
                            fault.detail()));
        }
        table.lay(flow);
    }

    private static String count(int number, String noun) {
        return number + " " + noun + (number == 1 ? "" : "s");
    }
}
