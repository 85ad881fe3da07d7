package org.holdproof.core.quality;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.quantity.Predicted;

/**
 * A predicted loss after earlier cooks of the same cut were weighed. What sets one kitchen's cut apart from the model is
 * taken as one unknown factor, what sets its pieces apart as the published spread between pieces cooked alike; the
 * weighed cooks tell of the first as far as the second allows (normal, half the predicted width for two standard
 * deviations). Where a cook lay outside what was predicted for it, nothing is narrowed: the interval grows to hold both.
 */
final class Narrowing {
    private Narrowing() {}

    static Optional<WeightLoss.Weighed> of(QualityModels models, WeightLoss.Modelled next, List<WeighedCook> earlier) {
        List<Double> ratios = new ArrayList<>();
        boolean surprised = false;
        for (WeighedCook cook : earlier) {
            Optional<Predicted> predicted = cook.total(models);
            OptionalDouble lost = cook.cookedPercent();
            if (predicted.isPresent() && lost.isPresent()) {
                ratios.add(lost.getAsDouble() / predicted.get().central());
                surprised |= !predicted.get().contains(lost.getAsDouble());
            }
        }
        return ratios.isEmpty() ? Optional.empty() : Optional.of(narrowed(models, next, ratios, surprised));
    }

    private static WeightLoss.Weighed narrowed(
            QualityModels models, WeightLoss.Modelled next, List<Double> ratios, boolean surprised) {
        Predicted before = next.totalPercent();
        double count = ratios.size();
        double mean = ratios.stream().mapToDouble(Double::doubleValue).sum() / count;
        double between = square(models.betweenPieces() / before.central());
        double all = square(before.width() / 4 / before.central());
        double kitchen = Math.max(0, all - between);
        double weight = kitchen == 0 ? 0 : kitchen / (kitchen + between / count);
        double left = kitchen * (1 - weight) + Math.min(all, between);
        double side = Math.sqrt(left / all);
        double central = before.central() * (1 + weight * (mean - 1));
        Predicted after = new Predicted(
                Math.max(0, central - side * (before.central() - before.low())),
                central,
                Math.min(100, central + side * (before.high() - before.central())));
        if (surprised) {
            after = new Predicted(
                    Math.min(before.low(), after.low()), after.central(), Math.max(before.high(), after.high()));
        }
        return new WeightLoss.Weighed(next, after, ratios.size());
    }

    private static double square(double value) {
        return value * value;
    }
}
