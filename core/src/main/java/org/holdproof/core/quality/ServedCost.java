package org.holdproof.core.quality;

/**
 * What a portion costs and how many there are, from the price of the raw cut as bought, what is trimmed off before the
 * cook, and what the cook takes: {@code price x portion / ((1 - trim) (1 - loss))}, at both ends of the loss.
 *
 * @param trimmedOff share of the bought weight trimmed off before the cook, 0 to below 1
 * @param portionKilograms what one guest gets on the plate
 */
public record ServedCost(Price price, double trimmedOff, WeightLoss loss, double portionKilograms) {
    private static final double ROUNDING = 1e-9;

    /** @throws IllegalArgumentException if a figure is out of its range */
    public ServedCost {
        if (!(trimmedOff >= 0) || !(trimmedOff < 1)) {
            throw new IllegalArgumentException("trimmed off " + trimmedOff + " of the weight");
        }
        if (!(portionKilograms > 0) || !Double.isFinite(portionKilograms)) {
            throw new IllegalArgumentException("a portion of " + portionKilograms + " kg");
        }
    }

    /** The share of the bought weight that is served, at worst. */
    public double leastYield() {
        return (1 - trimmedOff) * loss.leastLeft();
    }

    /** The share of the bought weight that is served, at best. */
    public double mostYield() {
        return (1 - trimmedOff) * loss.mostLeft();
    }

    /** What a portion costs at best, in the price's currency. */
    public double leastAPortion() {
        return price.amountPerKilogram() * portionKilograms / mostYield();
    }

    /** What a portion costs at worst; infinite where all may be lost. */
    public double mostAPortion() {
        return price.amountPerKilogram() * portionKilograms / leastYield();
    }

    /**
     * Whole portions that are there even at worst.
     *
     * @param boughtKilograms before trimming
     */
    public int portions(double boughtKilograms) {
        return portions(boughtKilograms * (1 - trimmedOff), loss, portionKilograms);
    }

    /** Whole portions a trimmed raw weight gives even at worst. */
    public static int portions(double rawKilograms, WeightLoss loss, double portionKilograms) {
        return (int) Math.floor(rawKilograms * loss.leastLeft() / portionKilograms + ROUNDING);
    }

    /** Which of two a portion costs less by, at every end. */
    public Rank against(ServedCost other) {
        if (mostAPortion() < other.leastAPortion()) {
            return Rank.CHEAPER;
        }
        return other.mostAPortion() < leastAPortion() ? Rank.DEARER : Rank.OPEN;
    }

    /** One cost beside another. */
    public enum Rank {
        /** Even at its worst below the other at its best. */
        CHEAPER,
        /** Even at its best above the other at its worst. */
        DEARER,
        /** The two overlap. */
        OPEN
    }
}
