package org.holdproof.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.holdproof.core.batch.BatchReader;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.report.archive.Attachment;
import org.holdproof.report.recheck.Recheck;
import org.holdproof.report.recheck.RecheckReport;

/** A sealed report that stands where another file is about to be written: it is not lost by mistake. */
final class StandingReport {
    private static final int LARGEST = 64 << 20;

    private StandingReport() {}

    /**
     * Whether a file may take the place of what is there.
     *
     * @param batch the batch the new file is of; empty where it is no sealed report
     * @throws Refusal if a sealed report is there, and the new file is not a sealed one of the same batch
     */
    static void checkReplaced(Path place, Optional<String> batch) throws Refusal, IOException {
        if (!Files.isRegularFile(place) || Files.size(place) > LARGEST) {
            return;
        }
        byte[] there = Files.readAllBytes(place);
        if (there.length < 5 || there[0] != '%' || there[1] != 'P' || there[2] != 'D' || there[3] != 'F') {
            return;
        }
        RecheckReport report = Recheck.of(there);
        if (report.signer().isEmpty()) {
            return;
        }
        Optional<String> sealed = batch(report);
        if (batch.isPresent() && batch.equals(sealed)) {
            return;
        }
        String of = sealed.map(id -> " of batch " + id).orElse("");
        throw Refusal.usage(place + " is a sealed report" + of + ", and what is to be written there is "
                + (batch.isPresent() ? "one of batch " + batch.get() : "not sealed")
                + "; name another file, or say --replace");
    }

    private static Optional<String> batch(RecheckReport report) {
        Optional<Attachment> record = report.attachment(Attachment.Role.BATCH_RECORD);
        try {
            return record.isPresent()
                    ? Optional.of(
                            BatchReader.parse(record.get().name(), record.get().content())
                                    .batch())
                    : Optional.empty();
        } catch (UnreadableInputException unreadable) {
            return Optional.empty();
        }
    }
}
