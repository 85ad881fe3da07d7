package org.holdproof.cli;

import java.util.List;
import java.util.Optional;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quality.WeighedCook;
import org.holdproof.core.rules.TrimmedCut;

/** What an earlier cook's log and record say of its weight and its bite. */
final class WeighedLog {
    private WeighedLog() {}

    /**
     * The cook, weighed or eaten; none where the record says neither or it was another animal.
     *
     * @param cut what the next one is planned as: the same cut
     */
    static List<WeighedCook> cooks(ProbeLog log, BatchRecord record, Optional<TrimmedCut> cut) {
        boolean sameAnimal = cut.isEmpty()
                || cut.get().species().equals(record.product().species().title());
        if (!sameAnimal) {
            return List.of();
        }
        List<Trace> cores = record.columns().core().stream()
                .flatMap(channel -> log.channelNamed(channel).stream())
                .map(log::trace)
                .toList();
        return WeighedCook.of(record, cores, cut).stream().toList();
    }
}
