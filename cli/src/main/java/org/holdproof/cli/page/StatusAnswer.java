package org.holdproof.cli.page;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.Locale;
import org.holdproof.core.course.ColumnMissingException;
import org.holdproof.core.rules.Citation;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.standing.Remedies;
import org.holdproof.core.standing.Remedy;
import org.holdproof.core.standing.RunningClock;
import org.holdproof.core.standing.Standing;
import org.holdproof.core.standing.StandingQuestion;

/** Where a cook under way stands: what is proven, what is needed, and what is running out. */
final class StatusAnswer {
    private final Cooks cooks;
    private final RuleLibrary library;

    StatusAnswer(Cooks cooks, RuleLibrary library) {
        this.cooks = cooks;
        this.library = library;
    }

    ObjectNode json(Asked asked) throws Fault, IOException {
        Cooks.Said said = cooks.said(asked);
        try {
            return json(Standing.of(said.logs(), said.authority(), library));
        } catch (ColumnMissingException missing) {
            throw Fault.unreadable(String.valueOf(missing.getMessage()));
        }
    }

    private ObjectNode json(Standing standing) {
        ObjectNode json = Asked.MAPPER.createObjectNode();
        json.put("verdict", standing.verdict().words());
        json.put("present", standing.presentMillis());
        json.put("over", standing.isOver());
        json.put("gapMinutes", standing.assessment().record().gapLimitMinutes());
        standing.underWay().ifPresent(stage -> json.put("underWay", stage.kind().title()));
        ArrayNode questions = json.putArray("questions");
        for (StandingQuestion question : standing.questions()) {
            questions
                    .addObject()
                    .put("key", question.key())
                    .put("title", question.title())
                    .put("state", question.state().name().toLowerCase(Locale.ROOT))
                    .put("words", question.words());
        }
        ArrayNode clocks = json.putArray("clocks");
        standing.clocks().forEach(clock -> clocks.add(clock(clock)));
        standing.outlook().ifPresent(outlook -> {
            ObjectNode one = json.putObject("outlook").put("words", outlook.words());
            outlook.minutesLeft().ifPresent(minutes -> one.put("minutesLeft", minutes));
            outlook.row().ifPresent(row -> one.put("text", row.at().text())
                    .put("celsius", row.at().celsius()));
        });
        ArrayNode remedies = json.putArray("remedies");
        for (Remedy remedy : Remedies.of(standing, library)) {
            remedies.addObject()
                    .put("text", remedy.text())
                    .put("source", remedy.citation().map(Citation::text).orElse(""));
        }
        return json;
    }

    private static ObjectNode clock(RunningClock clock) {
        return Asked.MAPPER
                .createObjectNode()
                .put("check", clock.check())
                .put("usedWorst", clock.usedMinutes().worst())
                .put("limitMinutes", clock.limitMinutes())
                .put("minutesLeft", clock.minutesLeft())
                .put("provableUntil", clock.provableUntilMillis())
                .put("lostFrom", clock.lostFromMillis())
                .put("words", clock.words());
    }
}
