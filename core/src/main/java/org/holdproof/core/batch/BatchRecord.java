package org.holdproof.core.batch;

import java.util.List;
import java.util.Optional;
import org.holdproof.core.log.LogSettings;

/**
 * What the kitchen says about one batch.
 *
 * @param batch the batch's id
 * @param authority the id of the authority profile it is judged by
 * @param log what the log's file may leave open
 * @param stages in order of their start
 * @param approval the authority's reference for a cook in two heatings with cooling between; empty: none
 * @param end what became of the food, where the record says so apart from its stages
 */
public record BatchRecord(
        String batch,
        Kitchen kitchen,
        String authority,
        Product product,
        Instrument instrument,
        ColumnRoles columns,
        LogSettings log,
        List<Stage> stages,
        Roles roles,
        String approval,
        Optional<Ending> end) {

    /** A record without an approval and without an end apart from its stages. */
    public BatchRecord(
            String batch,
            Kitchen kitchen,
            String authority,
            Product product,
            Instrument instrument,
            ColumnRoles columns,
            LogSettings log,
            List<Stage> stages,
            Roles roles) {
        this(batch, kitchen, authority, product, instrument, columns, log, stages, roles, "", Optional.empty());
    }

    public BatchRecord {
        stages = List.copyOf(stages);
    }

    /**
     * How the batch ended: the end the record gives, or else serving, where nothing follows it. Empty: the record does not
     * say what became of the food.
     */
    public Optional<Ending> ending() {
        if (end.isPresent() || stages.isEmpty()) {
            return end;
        }
        Stage last = stages.get(stages.size() - 1);
        return last.kind() == Stage.Kind.SERVE
                ? Optional.of(new Ending(Ending.How.SERVED, last.from()))
                : Optional.empty();
    }

    /** The same record with other stages. */
    public BatchRecord withStages(List<Stage> others) {
        return new BatchRecord(
                batch, kitchen, authority, product, instrument, columns, log, others, roles, approval, end);
    }

    /** The same record with another end. */
    public BatchRecord withEnd(Optional<Ending> other) {
        return new BatchRecord(
                batch, kitchen, authority, product, instrument, columns, log, stages, roles, approval, other);
    }

    /** The first stage of a kind. */
    public Optional<Stage> first(Stage.Kind kind) {
        return stages.stream().filter(stage -> stage.kind() == kind).findFirst();
    }
}
