package org.holdproof.core.quality;

import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.holdproof.core.batch.Bite;
import org.holdproof.core.quantity.Predicted;

/**
 * What a cut needs to become tender, after earlier pieces of it were eaten: the published spread of the need, lognormal,
 * cut off where a tough piece had more than that and where a tender one had less.
 */
final class TenderNeed {
    private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

    /** Where less of the spread is left, the pieces are beyond what was published: a factor around the cut-off is said. */
    private static final double LEAST_LEFT = 1e-9;

    private TenderNeed() {}

    /** The need; empty where nobody said how a piece ate, or where the pieces contradict each other, as animals differ. */
    static Optional<Predicted> of(QualityModels models, List<WeighedCook> earlier) {
        double scatter = models.tenderTime().scatter();
        double least = 0;
        double most = Double.POSITIVE_INFINITY;
        for (WeighedCook cook : earlier) {
            if (cook.bite().isPresent()) {
                Predicted softening = new CookProgress(
                                models, cook.cook(), cook.piece().thicknessMillimetres())
                        .softening(cook.cook().likely().lastMinute());
                if (cook.bite().get() == Bite.TOUGH) {
                    least = Math.max(least, softening.low());
                } else {
                    most = Math.min(most, softening.high());
                }
            }
        }
        boolean silent = least == 0 && Double.isInfinite(most);
        return silent || least >= most ? Optional.empty() : Optional.of(within(least, most, scatter));
    }

    private static Predicted within(double least, double most, double scatter) {
        double from = NORMAL.cumulativeProbability(Math.log(least) / Math.log(scatter));
        double to = NORMAL.cumulativeProbability(Math.log(most) / Math.log(scatter));
        if (to - from < LEAST_LEFT) {
            return least > 1
                    ? new Predicted(least, least * scatter, least * scatter * scatter)
                    : new Predicted(most / scatter / scatter, most / scatter, most);
        }
        double tail = NORMAL.cumulativeProbability(-1);
        return new Predicted(
                quantile(from, to, tail, scatter),
                quantile(from, to, 0.5, scatter),
                quantile(from, to, 1 - tail, scatter));
    }

    private static double quantile(double from, double to, double share, double scatter) {
        return Math.pow(scatter, NORMAL.inverseCumulativeProbability(from + share * (to - from)));
    }
}
