package org.holdproof.core.plan;

/**
 * What cooks say of a tough beef cut. Common practice, no source: printed as such, and only beside what is published.
 */
public enum TradePractice {
    /** Finished near 160 °F inside: about 18 % of the raw weight is lost as water. */
    NEAR_160_F(160, 18, "about"),
    /** Taken past 200 °F: 40 % or more. */
    PAST_200_F(200, 40, "at least");

    /** What every such fact is marked with. */
    public static final String MARK = "common practice, no source";

    /** Collagen begins to dissolve from about here, the slower the lower the bath. */
    public static final String COLLAGEN_FROM = "140 °F";

    /** What is usual for the tough cut, in words. */
    public static final String USUAL_TIME = "155 °F for about a day, or 18 to 20 h after 8 h of smoke";

    private static final double LITRES_A_CUP = 0.2365882365;
    private static final double NEAR_FAHRENHEIT = 7.5;

    private final double fahrenheit;
    private final double lossPercent;
    private final String degree;

    TradePractice(double fahrenheit, double lossPercent, String degree) {
        this.fahrenheit = fahrenheit;
        this.lossPercent = lossPercent;
        this.degree = degree;
    }

    /** Where it holds: {@code near 160 °F}. */
    public String where() {
        return (this == PAST_200_F ? "past " : "near ") + PlannedCook.plain(fahrenheit) + " °F";
    }

    /** Part of the raw weight lost, in percent. */
    public double lossPercent() {
        return lossPercent;
    }

    /** {@code about 18 %}. */
    public String words() {
        return degree + " " + PlannedCook.plain(lossPercent) + " %";
    }

    /** Whether the fact is about a core finished at this temperature, in °F. */
    boolean isAbout(double coreFahrenheit) {
        return this == PAST_200_F
                ? coreFahrenheit > fahrenheit
                : Math.abs(coreFahrenheit - fahrenheit) <= NEAR_FAHRENHEIT;
    }

    /** The water lost from a raw weight, in the same unit. */
    public double waterLost(double rawWeight) {
        return rawWeight * lossPercent / 100;
    }

    /** US cups a weight of water fills, at 1 kg a litre. */
    public static double usCups(double waterKilograms) {
        return waterKilograms / LITRES_A_CUP;
    }
}
