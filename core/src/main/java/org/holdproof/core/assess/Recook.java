package org.holdproof.core.assess;

/** What a second cook must reach after growth in the first (FSIS Cooking Guideline 2021, pages 70 to 72). */
public final class Recook {
    private Recook() {}

    /**
     * The reduction a recook must reach: the product's own target and the modelled growth on top.
     *
     * @param targetLog10 the reduction the product needs
     * @param growthLog10 modelled growth of the organism, not negative
     */
    public static double neededLog10(double targetLog10, double growthLog10) {
        return targetLog10 + Math.max(0, growthLog10);
    }
}
