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
        String approval) {

    /** A record without an approval. */
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
        this(batch, kitchen, authority, product, instrument, columns, log, stages, roles, "");
    }

    public BatchRecord {
        stages = List.copyOf(stages);
    }

    /** The first stage of a kind. */
    public Optional<Stage> first(Stage.Kind kind) {
        return stages.stream().filter(stage -> stage.kind() == kind).findFirst();
    }
}
