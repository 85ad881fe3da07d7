package org.holdproof.core.standing;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.verdict.Check;

/**
 * A batch record as far as it has happened: stages still to come are left out, the one under way ends now. A record may
 * be written before the cook, with the times planned.
 *
 * @param record the record up to now
 * @param underWay the stage under way, as it stands in {@code record}
 * @param toCome the stages that have not begun, as planned
 * @param isOver whether the last stage the record names is over
 */
record CookSoFar(BatchRecord record, Optional<Stage> underWay, List<Stage> toCome, boolean isOver) {

    CookSoFar {
        toCome = List.copyOf(toCome);
    }

    /** What has happened of a record by an instant, in milliseconds since 1970-01-01T00:00Z. */
    static CookSoFar of(BatchRecord whole, long presentMillis) {
        Instant present = Instant.ofEpochMilli(presentMillis);
        List<Stage> begun = new ArrayList<>();
        List<Stage> toCome = new ArrayList<>();
        Optional<Stage> underWay = Optional.empty();
        for (Stage stage : whole.stages()) {
            if (stage.from().isAfter(present)) {
                toCome.add(stage);
                continue;
            }
            Stage soFar = stage;
            if (!stage.kind().isMoment()) {
                boolean open = isOpen(whole, stage, present);
                soFar = open ? endingAt(stage, present) : stage;
                underWay = open ? Optional.of(soFar) : Optional.empty();
            }
            begun.add(soFar);
        }
        return new CookSoFar(
                soFar(whole, begun, present),
                underWay,
                toCome,
                toCome.isEmpty() && underWay.isEmpty() && !begun.isEmpty());
    }

    /** A stage without an end is over when the next one that lasts has begun. */
    private static boolean isOpen(BatchRecord whole, Stage stage, Instant present) {
        if (stage.to().isPresent()) {
            return stage.to().get().isAfter(present);
        }
        return whole.stages().stream()
                .filter(other -> !other.kind().isMoment())
                .noneMatch(other ->
                        other.from().isAfter(stage.from()) && !other.from().isAfter(present));
    }

    private static Stage endingAt(Stage stage, Instant present) {
        return new Stage(
                stage.kind(),
                stage.from(),
                Optional.of(present),
                stage.setPointCelsius(),
                stage.moisture(),
                stage.mark());
    }

    /** The record as far as it has happened: an end still to come is none. */
    private static BatchRecord soFar(BatchRecord whole, List<Stage> stages, Instant present) {
        return whole.withStages(stages)
                .withEnd(whole.end().filter(end -> !end.at().isAfter(present)));
    }

    /** Whether a cooking stage is under way or to come. */
    boolean heatsOn() {
        return Stream.concat(underWay.stream(), toCome.stream())
                .anyMatch(stage -> stage.kind().isCook());
    }

    boolean isUnderWay(Stage.Kind kind) {
        return underWay.filter(stage -> stage.kind() == kind).isPresent();
    }

    /** Whether what the check judged belongs to a stage of this kind that still runs. */
    boolean isUnderWay(Stage.Kind kind, Check check) {
        return underWay.filter(stage -> stage.kind() == kind)
                .filter(stage -> check.window().isEmpty()
                        || check.window().get().fromMillis() >= stage.from().toEpochMilli())
                .isPresent();
    }

    /** Whether the food has left its last cook for the chill, the store or the table. */
    boolean cookIsOver() {
        boolean over = false;
        for (Stage stage : record.stages()) {
            over = switch (stage.kind()) {
                case SMOKE, BATH -> false;
                case CHILL, STORE, SERVE, REHEAT, FREEZE, TIME_ONLY -> true;
                case BAG, HOT_HOLD -> over;
            };
        }
        return over || isOver;
    }

    /** The chill that is to come, while the food has left the heat and no stage is under way. */
    boolean waitsForChill() {
        return underWay.isEmpty()
                && record.stages().stream().anyMatch(stage -> stage.kind().isCook())
                && !cookIsOver()
                && toCome.stream()
                        .filter(stage -> !stage.kind().isMoment())
                        .findFirst()
                        .filter(stage -> stage.kind() == Stage.Kind.CHILL)
                        .isPresent();
    }
}
