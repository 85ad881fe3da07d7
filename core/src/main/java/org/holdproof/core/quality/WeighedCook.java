package org.holdproof.core.quality;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.batch.Bite;
import org.holdproof.core.batch.WeighIns;
import org.holdproof.core.quantity.Predicted;

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
        return modelled(models).map(loss -> models.leanLoss(smoked, piece.thicknessMillimetres())
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
