package org.holdproof.cli.page;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import org.holdproof.core.verdict.AssessmentJson;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.wording.Wording;

/** A verdict, as the figures file has it to the byte, and beside it what the page draws. */
record JudgeAnswer(Judged judged) {
    Reply reply() {
        ObjectNode beside = RecordAnswer.describe(judged.said().record());
        beside.set(
                "limits",
                RuleLines.of(judged.said().authority(), judged.said().record().product()));
        Wording wording = new Wording(
                judged.said().authority().units(),
                judged.said().record().kitchen().zone());
        ArrayNode windows = beside.putArray("windows");
        for (Check check : judged.assessment().checks()) {
            ObjectNode window = windows.addObject();
            window.put("headline", check.headline(wording));
            check.window()
                    .ifPresent(span -> window.put("from", span.fromMillis()).put("to", span.toMillis()));
        }
        ArrayNode left = beside.putArray("left");
        judged.said().authority().left().forEach(left::add);
        return joined(beside, AssessmentJson.write(judged.assessment()));
    }

    /** The assessment goes in as it stands. */
    private static Reply joined(ObjectNode beside, byte[] assessment) {
        ByteArrayOutputStream body = new ByteArrayOutputStream(assessment.length + 8192);
        body.writeBytes("{\"beside\":".getBytes(StandardCharsets.UTF_8));
        body.writeBytes(beside.toString().getBytes(StandardCharsets.UTF_8));
        body.writeBytes(",\"assessment\":".getBytes(StandardCharsets.UTF_8));
        body.writeBytes(assessment);
        body.write('}');
        return Reply.bytes(Reply.JSON, body.toByteArray());
    }
}
