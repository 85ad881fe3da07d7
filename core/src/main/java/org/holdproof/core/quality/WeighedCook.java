package org.holdproof.core.quality;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.batch.Bite;
import org.holdproof.core.batch.Outcome;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.batch.WeighIns;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Predicted;
import org.holdproof.core.rules.TrimmedCut;

/**
 * An earlier cook that was weighed, eaten, or both.
 *
 * @param piece what was cooked
 * @param cook its core's history
 * @param smoking its smoke step
 */
public record WeighedCook(
        QualityOutlook.Piece piece,
        CookHistories cook,
        Smoking smoking,
        Optional<WeighIns> weights,
        Optional<Bite> bite) {

    /** Where nothing is said of the thickness; it only sets how long juice lags behind the heat. */
    private static final double USUAL_MILLIMETRES = 50;

    /**
     * A logged cook whose record says what it weighed or how it ate, from its first heat to the end of its bath or smoke.
     *
     * @param cores the core probes' readings; of several the coldest and the hottest on the mean are the ends
     * @param cut its cut and trim, if known
     * @return empty where the record says neither, names no heat, or no core was read in it
     * @throws IllegalArgumentException if the cut is another animal's
     */
    public static Optional<WeighedCook> of(BatchRecord record, List<Trace> cores, Optional<TrimmedCut> cut) {
        Outcome outcome = record.outcome();
        Optional<Stage> smoke = record.first(Stage.Kind.SMOKE);
        Optional<Stage> bath = record.first(Stage.Kind.BATH);
        Optional<Stage> first = smoke.or(() -> bath);
        if (outcome.equals(Outcome.UNSAID) || first.isEmpty()) {
            return Optional.empty();
        }
        long from = first.get().from().toEpochMilli();
        long to = bath.or(() -> smoke)
                .orElseThrow()
                .to()
                .map(Instant::toEpochMilli)
                .orElse(Long.MAX_VALUE);
        List<CookHistory> histories = cores.stream()
                .map(core -> core.between(from, to))
                .filter(core -> core.size() > 1)
                .map(CookHistory::ofCore)
                .sorted(Comparator.comparingDouble(CookHistory::meanCoreCelsius))
                .toList();
        if (histories.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new WeighedCook(
                new QualityOutlook.Piece(
                        record.product().species(),
                        cut,
                        record.product().thicknessMillimetres().orElse(USUAL_MILLIMETRES)),
                new CookHistories(
                        histories.get(0), histories.get(histories.size() / 2), histories.get(histories.size() - 1)),
                smoking(smoke, bath),
                outcome.weights(),
                outcome.bite()));
    }

    private static Smoking smoking(Optional<Stage> smoke, Optional<Stage> bath) {
        if (smoke.isEmpty()) {
            return new Smoking.None();
        }
        if (bath.isEmpty()) {
            return new Smoking.ToTheEnd();
        }
        Instant out = smoke.get().to().orElse(bath.get().from());
        double hours = Duration.between(smoke.get().from(), out).toMillis() / 3_600_000.0;
        return hours > 0 ? new Smoking.BeforeBag(hours) : new Smoking.None();
    }

    /** Where a piece was weighed. */
    public enum Step {
        AFTER_SMOKE("after the smoke"),
        OUT_OF_BAG("out of the bag"),
        SERVED("served");

        private final String title;

        Step(String title) {
            this.title = title;
        }

        /** As printed. */
        public String title() {
            return title;
        }
    }

    /**
     * A measured loss beside the predicted one.
     *
     * @param lostPercent in percent of the raw weight
     * @param predictedPercent empty where nothing predicts it: what the knife takes
     */
    public record Measured(Step step, double lostPercent, Optional<Predicted> predictedPercent) {
        /** Whether it lies within what was predicted; empty without a prediction. */
        public Optional<Boolean> asPredicted() {
            return predictedPercent.map(predicted -> predicted.contains(lostPercent));
        }
    }

    /** Every weighing after the raw one, in order. */
    public List<Measured> measured(QualityModels models) {
        List<Measured> measured = new ArrayList<>();
        weights.ifPresent(weighed -> {
            add(measured, weighed, Step.AFTER_SMOKE, weighed.afterSmoke(), afterSmoke(models));
            add(measured, weighed, Step.OUT_OF_BAG, weighed.outOfBag(), total(models));
            add(measured, weighed, Step.SERVED, weighed.served(), Optional.empty());
        });
        return List.copyOf(measured);
    }

    private static void add(
            List<Measured> measured,
            WeighIns weighed,
            Step step,
            OptionalDouble weight,
            Optional<Predicted> predicted) {
        if (weight.isPresent()) {
            measured.add(new Measured(step, 100 * (1 - weight.getAsDouble() / weighed.raw()), predicted));
        }
    }

    /** Loss by the end of the cook as predicted; empty where the model does not apply. */
    Optional<Predicted> total(QualityModels models) {
        return modelled(models).map(WeightLoss.Modelled::totalPercent);
    }

    private Optional<WeightLoss.Modelled> modelled(QualityModels models) {
        return QualityOutlook.of(models, piece, cook, smoking)
                .weight()
                .filter(WeightLoss.Modelled.class::isInstance)
                .map(WeightLoss.Modelled.class::cast);
    }

    /** By the end of the smoke; when the fat melts is not known, so that none to all of it may have. */
    private Optional<Predicted> afterSmoke(QualityModels models) {
        if (smoking instanceof Smoking.ToTheEnd) {
            return total(models);
        }
        if (!(smoking instanceof Smoking.BeforeBag before)) {
            return Optional.empty();
        }
        CookHistories smoked = cook.each(history -> history.until(history.minute(0) + 60 * before.hours()));
        double end = smoked.likely().lastMinute();
        return modelled(models).map(loss -> new CookProgress(models, smoked, piece.thicknessMillimetres())
                .lean(end)
                .times(loss.cut().leanShare())
                .plusIndependent(Predicted.between(0, loss.renderedPercent().high()))
                .plusIndependent(loss.evaporatedPercent()));
    }

    /** The weighing that closes the cook: out of the bag, or out of the smoker where there was no bag. */
    OptionalDouble cookedPercent() {
        if (weights.isEmpty()) {
            return OptionalDouble.empty();
        }
        OptionalDouble last = smoking instanceof Smoking.ToTheEnd
                ? weights.get().afterSmoke()
                : weights.get().outOfBag();
        return last.isPresent()
                ? OptionalDouble.of(
                        100 * (1 - last.getAsDouble() / weights.get().raw()))
                : last;
    }
}
