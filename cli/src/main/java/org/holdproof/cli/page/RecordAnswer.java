package org.holdproof.cli.page;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.batch.LogSource;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.log.LogSettings;
import org.holdproof.core.rules.RuleLibrary;

/** A batch record as the page draws it: its times as instants, the rules it is judged by as lines on the curve. */
final class RecordAnswer {
    private final RuleLibrary library;

    RecordAnswer(RuleLibrary library) {
        this.library = library;
    }

    ObjectNode json(Asked asked) throws Fault {
        BatchRecord record = Cooks.record(asked.text("record").getBytes(StandardCharsets.UTF_8));
        ObjectNode json = describe(record);
        library.profile(record.authority())
                .ifPresent(authority -> json.set("limits", RuleLines.of(authority, record.product())));
        return json;
    }

    static ObjectNode describe(BatchRecord record) {
        ObjectNode json = Asked.MAPPER.createObjectNode();
        json.put("zone", record.kitchen().zone().getId());
        ArrayNode stages = json.putArray("stages");
        for (Stage stage : record.stages()) {
            ObjectNode one = stages.addObject();
            one.put("stage", stage.kind().title());
            one.put("from", stage.from().toEpochMilli());
            stage.to().ifPresent(to -> one.put("to", to.toEpochMilli()));
        }
        record.end().ifPresent(end -> json.putObject("end")
                .put("how", end.how().title())
                .put("at", end.at().toEpochMilli()));
        ArrayNode logs = json.putArray("logs");
        for (LogSource log : record.logs()) {
            ObjectNode one = logs.addObject();
            log.file().ifPresent(file -> one.put("file", file));
            settings(one.putObject("settings"), log.settings());
        }
        return json;
    }

    private static void settings(ObjectNode json, LogSettings settings) {
        settings.unit().ifPresent(unit -> json.put("unit", unit.name().substring(0, 1)));
        settings.dateOrder().ifPresent(order -> json.put("dates", ReadAnswer.letters(order)));
        settings.zone().ifPresent(zone -> json.put("zone", zone.getId()));
        settings.start().ifPresent(start -> json.put("start", start.toEpochMilli()));
    }
}
