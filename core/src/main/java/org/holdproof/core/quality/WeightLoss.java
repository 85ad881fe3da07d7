package org.holdproof.core.quality;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.quantity.Predicted;
import org.holdproof.core.rules.LossRange;
import org.holdproof.core.rules.TrimmedCut;

/** What a cook costs in weight, in percent of what went in raw: never one figure. */
public sealed interface WeightLoss {
    /** The least it may be. */
    double leastPercent();

    /** The most it may be: what portions are counted with. */
    double mostPercent();

    /** What the trade says of such a cook, to print beside it. */
    Optional<CommonPractice> practice();

    /** The share of the raw weight that is left at worst, 0 to 1. */
    default double leastLeft() {
        return 1 - mostPercent() / 100;
    }

    /** The share of the raw weight that is left at best, 0 to 1. */
    default double mostLeft() {
        return 1 - leastPercent() / 100;
    }

    /**
     * Reckoned by the model, for what it was tested on: beef whose core is at 50 °C or above for 3 h or more.
     *
     * @param cut what the lean share and the fat are taken from
     * @param pressedOutPercent juice out of the lean
     * @param renderedPercent fat melted out
     * @param evaporatedPercent water evaporated in the smoker
     */
    record Modelled(
            TrimmedCut cut,
            Predicted pressedOutPercent,
            Predicted renderedPercent,
            Predicted evaporatedPercent,
            Optional<CommonPractice> practice)
            implements WeightLoss {

        static Modelled of(
                QualityModels models,
                TrimmedCut cut,
                Predicted leanPercent,
                Smoking smoking,
                Optional<CommonPractice> practice) {
            return new Modelled(
                    cut,
                    leanPercent.times(cut.leanShare()),
                    cut.renderedPercent(),
                    smoking.evaporatedPercent(models),
                    practice);
        }

        /** All three; the ends of independent parts add in quadrature. */
        public Predicted totalPercent() {
            Predicted total = pressedOutPercent.plusIndependent(renderedPercent).plusIndependent(evaporatedPercent);
            return new Predicted(Math.max(0, total.low()), total.central(), Math.min(100, total.high()));
        }

        @Override
        public double leastPercent() {
            return totalPercent().low();
        }

        @Override
        public double mostPercent() {
            return totalPercent().high();
        }
    }

    /**
     * The model's figure narrowed by earlier cooks of the same cut that were weighed.
     *
     * @param before without them
     * @param totalPercent with them
     * @param cooks how many
     */
    record Weighed(Modelled before, Predicted totalPercent, int cooks) implements WeightLoss {
        @Override
        public double leastPercent() {
            return totalPercent.low();
        }

        @Override
        public double mostPercent() {
            return totalPercent.high();
        }

        @Override
        public Optional<CommonPractice> practice() {
            return before.practice();
        }
    }

    /**
     * Published ranges of the food, where the model was not tested.
     *
     * @param ranges at least one
     */
    record Published(List<LossRange> ranges, Optional<CommonPractice> practice) implements WeightLoss {
        /** @throws IllegalArgumentException without a range */
        public Published {
            ranges = List.copyOf(ranges);
            if (ranges.isEmpty()) {
                throw new IllegalArgumentException("no published range");
            }
        }

        @Override
        public double leastPercent() {
            return ranges.stream()
                    .min(Comparator.comparingDouble(LossRange::lowPercent))
                    .orElseThrow()
                    .lowPercent();
        }

        @Override
        public double mostPercent() {
            return ranges.stream()
                    .max(Comparator.comparingDouble(LossRange::highPercent))
                    .orElseThrow()
                    .highPercent();
        }
    }
}
