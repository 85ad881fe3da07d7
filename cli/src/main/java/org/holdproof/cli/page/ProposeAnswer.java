package org.holdproof.cli.page;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.Optional;
import org.holdproof.core.course.StageProposal;
import org.holdproof.core.course.StageProposals;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.log.LogSettings;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.log.Trace;

/** The stages a log's curves suggest, for a person to take or leave. */
final class ProposeAnswer {
    private final Logs logs;

    ProposeAnswer(Logs logs) {
        this.logs = logs;
    }

    ObjectNode json(Asked asked) throws Fault, IOException {
        LogSettings settings = ReadAnswer.settings(asked);
        ProbeLog log;
        try {
            log = logs.read(asked.text("file"), asked.text("name"), settings);
        } catch (UnreadableInputException unreadable) {
            throw Unreadable.fault("log", unreadable);
        }
        Optional<Trace> core = trace(log, asked, "core");
        ObjectNode json = Asked.MAPPER.createObjectNode();
        ArrayNode proposals = json.putArray("proposals");
        if (core.isEmpty()) {
            return json;
        }
        for (StageProposal proposal :
                StageProposals.of(core.get(), trace(log, asked, "bath"), trace(log, asked, "air"))) {
            ObjectNode one = proposals.addObject();
            one.put("stage", proposal.kind().title());
            one.put("from", proposal.fromMillis());
            if (!proposal.kind().isMoment()) {
                one.put("to", proposal.toMillis());
            }
            one.put("sureness", proposal.sureness().title());
            one.put("why", proposal.why());
        }
        return json;
    }

    private static Optional<Trace> trace(ProbeLog log, Asked asked, String role) throws Fault {
        if (!asked.has(role)) {
            return Optional.empty();
        }
        int channel = log.channelNamed(asked.text(role))
                .orElseThrow(() -> Fault.badRequest("'" + role + "' names no column of the log."));
        return Optional.of(log.trace(channel));
    }
}
