package org.holdproof.core.plan;

/**
 * Smoking before the bag.
 *
 * @param airCelsius the smoker's air, 20 to 180 °C
 * @param minutes how long, up to 48 h
 */
public record SmokeStep(double airCelsius, double minutes) {
    private static final double COLDEST = 20;
    private static final double HOTTEST = 180;
    private static final double LONGEST = 48 * 60;

    /** @throws UnplannableException if either lies outside its range */
    public SmokeStep {
        PlannedCook.require("the smoker's air", airCelsius, COLDEST, HOTTEST, "°C");
        if (!(minutes > 0) || !(minutes <= LONGEST)) {
            throw new UnplannableException("the smoke step lasts " + PlannedCook.plain(minutes / 60)
                    + " h; expected more than none and at most 48 h");
        }
    }
}
