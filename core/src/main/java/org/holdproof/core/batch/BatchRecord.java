package org.holdproof.core.batch;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.holdproof.core.log.LogSettings;

/**
 * What the kitchen says about one batch.
 *
 * @param batch the batch's id
 * @param authority the id of the authority profile it is judged by
 * @param logs the logs of the cook, at least one, with their instruments and what their columns measured
 * @param stages in order of their start
 * @param approval the authority's reference for a cook in two heatings with cooling between; empty: none
 * @param end what became of the food, where the record says so apart from its stages
 * @param outcome what it weighed on its way and how it ate; nothing is judged by it
 */
public record BatchRecord(
        String batch,
        Kitchen kitchen,
        String authority,
        Product product,
        List<LogSource> logs,
        List<Stage> stages,
        Roles roles,
        String approval,
        Optional<Ending> end,
        Outcome outcome) {

    /** A record whose outcome nobody noted. */
    public BatchRecord(
            String batch,
            Kitchen kitchen,
            String authority,
            Product product,
            List<LogSource> logs,
            List<Stage> stages,
            Roles roles,
            String approval,
            Optional<Ending> end) {
        this(batch, kitchen, authority, product, logs, stages, roles, approval, end, Outcome.UNSAID);
    }

    /** A record of one log, whose columns measured one thing throughout, without an approval and without an end apart from its stages. */
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

    /** A record of one log, whose columns measured one thing throughout. */
    public BatchRecord(
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
        this(
                batch,
                kitchen,
                authority,
                product,
                List.of(new LogSource(Optional.empty(), instrument, log, ClockError.NONE, uses(columns))),
                stages,
                roles,
                approval,
                end);
    }

    /** @throws IllegalArgumentException if there is no log */
    public BatchRecord {
        logs = List.copyOf(logs);
        stages = List.copyOf(stages);
        if (logs.isEmpty()) {
            throw new IllegalArgumentException("a batch record without a log");
        }
    }

    private static List<ColumnUse> uses(ColumnRoles columns) {
        return Stream.of(ColumnRole.values())
                .flatMap(role -> columns.of(role).stream()
                        .map(heading -> new ColumnUse(heading, role, heading, Optional.empty(), Optional.empty())))
                .toList();
    }

    /** The instrument of the first log. */
    public Instrument instrument() {
        return logs.get(0).instrument();
    }

    /** Every instrument once, in the order of the logs. */
    public List<Instrument> instruments() {
        return logs.stream().map(LogSource::instrument).distinct().toList();
    }

    /** The probes of all logs by what they measured. */
    public ColumnRoles columns() {
        return ColumnRoles.of(logs);
    }

    /** What the first log's file may leave open. */
    public LogSettings log() {
        return logs.get(0).settings();
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
        return new BatchRecord(batch, kitchen, authority, product, logs, others, roles, approval, end, outcome);
    }

    /** The same record with another outcome. */
    public BatchRecord withOutcome(Outcome other) {
        return new BatchRecord(batch, kitchen, authority, product, logs, stages, roles, approval, end, other);
    }

    /** The same record with another end. */
    public BatchRecord withEnd(Optional<Ending> other) {
        return new BatchRecord(batch, kitchen, authority, product, logs, stages, roles, approval, other, outcome);
    }

    /** The first stage of a kind. */
    public Optional<Stage> first(Stage.Kind kind) {
        return stages.stream().filter(stage -> stage.kind() == kind).findFirst();
    }
}
