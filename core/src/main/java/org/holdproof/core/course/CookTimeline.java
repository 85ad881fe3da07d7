package org.holdproof.core.course;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Span;

/** Which part of the record belongs to which question, from the batch's stages. */
public final class CookTimeline {
    private final List<Stage> stages;
    private final Span log;

    public CookTimeline(BatchRecord batch, Span log) {
        this.stages = batch.stages();
        this.log = log;
    }

    /** The stages in the order of their start. */
    List<Stage> stages() {
        return stages;
    }

    /** When the batch ended: as the record says, else with its last stage or, where that is open, its readings. */
    long end(BatchRecord batch, Trace trace) {
        return batch.ending().map(ending -> ending.at().toEpochMilli()).orElseGet(() -> stages.stream()
                .mapToLong(stage -> stage.kind().isMoment()
                        ? stage.from().toEpochMilli()
                        : stage.to()
                                .map(Instant::toEpochMilli)
                                .orElse(trace.isEmpty() ? log.toMillis() : trace.lastMillis()))
                .max()
                .orElse(log.toMillis()));
    }

    /** What the record says was meant over a stretch no stage begins or ends in; a stage without an end excuses nothing. */
    Limits.Meant meantAt(long fromMillis, long toMillis) {
        for (Stage stage : stages) {
            if (stage.to().isPresent() && isInside(stage, fromMillis, toMillis)) {
                return stage.kind().isCook()
                        ? Limits.Meant.COOKING
                        : stage.kind() == Stage.Kind.HOT_HOLD || stage.kind() == Stage.Kind.REHEAT
                                ? Limits.Meant.HELD
                                : Limits.Meant.NOTHING;
            }
        }
        return Limits.Meant.NOTHING;
    }

    /** Whether a cooking stage runs on after an instant, or begins later. */
    boolean cooksFrom(long millis) {
        return stages.stream()
                .anyMatch(stage -> stage.kind().isCook() && span(stage).toMillis() > millis);
    }

    /** Whether a stretch lies inside a stage of a kind. */
    public boolean isIn(Stage.Kind kind, long fromMillis, long toMillis) {
        return stages.stream()
                .anyMatch(stage ->
                        stage.kind() == kind && stage.to().isPresent() && isInside(stage, fromMillis, toMillis));
    }

    private boolean isInside(Stage stage, long fromMillis, long toMillis) {
        Span lasts = span(stage);
        return lasts.fromMillis() <= fromMillis && toMillis <= lasts.toMillis();
    }

    /** The log from its first to its last row. */
    public Span log() {
        return log;
    }

    /**
     * The cook: from the start of the first cooking stage until the food is chilled, stored or served after the last
     * one. Heat still rising after the bath, and a hot hold, belong to it. Without a cooking stage, nothing does.
     */
    public Optional<Span> cook() {
        Optional<Stage> first =
                stages.stream().filter(stage -> stage.kind().isCook()).findFirst();
        if (first.isEmpty()) {
            return Optional.empty();
        }
        long from = first.get().from().toEpochMilli();
        long to = log.toMillis();
        for (int i = lastCook() + 1; i < stages.size(); i++) {
            Stage.Kind kind = stages.get(i).kind();
            if (kind == Stage.Kind.CHILL
                    || kind == Stage.Kind.STORE
                    || kind == Stage.Kind.FREEZE
                    || kind == Stage.Kind.TIME_ONLY
                    || kind == Stage.Kind.SERVE
                    || kind == Stage.Kind.REHEAT) {
                to = stages.get(i).from().toEpochMilli();
                break;
            }
        }
        return Optional.of(new Span(from, Math.max(from, to)));
    }

    /** The first chill after the last cook. */
    public Optional<Stage> chill() {
        return stages.stream()
                .skip(lastCook() + 1)
                .filter(stage -> stage.kind() == Stage.Kind.CHILL)
                .findFirst();
    }

    /** A chill or a store with a cook before it and another after it. */
    public Optional<Stage> chillBetweenCooks() {
        boolean cooked = false;
        for (int i = 0; i < lastCook(); i++) {
            Stage stage = stages.get(i);
            cooked |= stage.kind().isCook();
            if (cooked && (stage.kind() == Stage.Kind.CHILL || stage.kind() == Stage.Kind.STORE)) {
                return Optional.of(stage);
            }
        }
        return Optional.empty();
    }

    /** The last stage that kept the food hot before an instant. */
    public Optional<Stage> lastHeatBefore(long millis) {
        return stages.stream()
                .filter(stage -> stage.kind().isCook() || stage.kind() == Stage.Kind.HOT_HOLD)
                .filter(stage -> stage.from().toEpochMilli() < millis)
                .reduce((earlier, later) -> later);
    }

    /** All stages of a kind. */
    public List<Stage> all(Stage.Kind kind) {
        return stages.stream().filter(stage -> stage.kind() == kind).toList();
    }

    /** A stage's span; one still open ends where the next begins, or with the log. */
    public Span span(Stage stage) {
        long from = stage.from().toEpochMilli();
        if (stage.to().isPresent()) {
            return new Span(from, stage.to().get().toEpochMilli());
        }
        long to = stages.stream()
                .mapToLong(other -> other.from().toEpochMilli())
                .filter(other -> other > from)
                .min()
                .orElse(log.toMillis());
        return new Span(from, Math.max(from, to));
    }

    private int lastCook() {
        int last = -1;
        for (int i = 0; i < stages.size(); i++) {
            if (stages.get(i).kind().isCook()) {
                last = i;
            }
        }
        return last;
    }
}
