package org.holdproof.core.quality;

import org.holdproof.core.quantity.Predicted;

/** What part of a cook is a smoke step, as far as water evaporates. */
public sealed interface Smoking {
    /** Water evaporated, in percent of the raw weight. */
    Predicted evaporatedPercent(QualityModels models);

    /** None: a sealed bag lets nothing evaporate. */
    record None() implements Smoking {
        @Override
        public Predicted evaporatedPercent(QualityModels models) {
            return Predicted.exactly(0);
        }
    }

    /**
     * Before the bag, unwrapped. The range is for 8 h. A shorter smoke lowers its low end and its middle in proportion,
     * a longer one raises its middle and its high end; the other end stays, as drying slows down.
     *
     * @param hours more than none
     */
    record BeforeBag(double hours) implements Smoking {
        private static final double RANGE_HOURS = 8;

        /** @throws IllegalArgumentException if the hours are not positive */
        public BeforeBag {
            if (!(hours > 0) || !Double.isFinite(hours)) {
                throw new IllegalArgumentException("a smoke step of " + hours + " h");
            }
        }

        @Override
        public Predicted evaporatedPercent(QualityModels models) {
            Predicted range = models.range("evaporated-before-bag");
            double share = hours / RANGE_HOURS;
            return share <= 1
                    ? new Predicted(range.low() * share, range.central() * share, range.high())
                    : new Predicted(range.low(), Math.min(range.high(), range.central() * share), range.high() * share);
        }
    }

    /** All the way to the end, unwrapped. */
    record ToTheEnd() implements Smoking {
        @Override
        public Predicted evaporatedPercent(QualityModels models) {
            return models.range("evaporated-to-the-end");
        }
    }
}
