package org.holdproof.cli.page;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.time.Instant;
import java.time.Year;
import java.util.Arrays;
import java.util.Optional;
import org.holdproof.core.verdict.AssessmentJson;
import org.holdproof.report.seal.SigningKey;
import org.holdproof.report.seal.UnusableKeyException;

/** Seals a report and keeps it with its log, its record and its figures in the kitchen folder. */
final class SealAnswer {
    private final Cooks cooks;
    private final Kitchen kitchen;

    SealAnswer(Cooks cooks, Kitchen kitchen) {
        this.cooks = cooks;
        this.kitchen = kitchen;
    }

    ObjectNode json(Asked asked) throws Fault, IOException {
        Judged judged = cooks.judged(asked);
        Instant now = Instant.now();
        SigningKey key = key(asked.text("passphrase"), now);
        byte[] pdf = Reports.write(judged, Optional.of(key), now);
        var record = judged.said().record();
        String year = Year.from(
                        record.stages().get(0).from().atZone(record.kitchen().zone()))
                .toString();
        ObjectNode json = kitchen.keep(new Kitchen.Batch(
                record.batch(),
                year,
                judged.logs(),
                judged.said().recordBytes(),
                AssessmentJson.write(judged.assessment()),
                pdf));
        json.put("signer", key.signer());
        json.put("fingerprint", key.fingerprint().hex());
        return json;
    }

    private SigningKey key(String passphrase, Instant now) throws Fault {
        if (!Files.exists(kitchen.keyFile())) {
            throw Fault.conflict("This kitchen has no seal yet.");
        }
        char[] typed = passphrase.toCharArray();
        try {
            return SigningKey.open(kitchen.keyFile(), typed, now);
        } catch (UnusableKeyException unusable) {
            throw Fault.passphrase(String.valueOf(unusable.getMessage()));
        } finally {
            Arrays.fill(typed, '\0');
        }
    }
}
