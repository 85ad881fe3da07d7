package org.holdproof.core.quality;

import java.util.Optional;
import org.holdproof.core.quantity.TemperatureUnit;

/** What cooks say of a tough beef cut's weight. Common practice, no source: printed as such, only beside what is reckoned. */
public enum CommonPractice {
    /** Brought near 160 °F inside and not held: about 18 % of the raw weight is lost. Says nothing of a held piece. */
    NEAR_160_F(160, 18, "about", "brought near 160 °F and not held"),
    /** Taken past 200 °F: 40 % or more. */
    PAST_200_F(200, 40, "at least", "taken past 200 °F");

    /** What every such fact is marked with. */
    public static final String MARK = "common practice, no source";

    /** What is usual for the tough cut. */
    public static final String USUAL_TIME = "155 °F for about a day, or 18 to 20 h after 8 h of smoke";

    /** Exact by definition: 236.5882365 mL, NIST Special Publication 811 (2008). */
    private static final double LITRES_A_CUP = 0.2365882365;

    private static final double NEAR_FAHRENHEIT = 7.5;

    private final double fahrenheit;
    private final double lossPercent;
    private final String degree;
    private final String where;

    CommonPractice(double fahrenheit, double lossPercent, String degree, String where) {
        this.fahrenheit = fahrenheit;
        this.lossPercent = lossPercent;
        this.degree = degree;
        this.where = where;
    }

    /** What the trade says of a beef core that ended at a temperature, held there or not. */
    static Optional<CommonPractice> of(double coreCelsius, boolean held) {
        double core = TemperatureUnit.FAHRENHEIT.fromCelsius(coreCelsius);
        if (core > PAST_200_F.fahrenheit) {
            return Optional.of(PAST_200_F);
        }
        boolean near = Math.abs(core - NEAR_160_F.fahrenheit) <= NEAR_FAHRENHEIT;
        return near && !held ? Optional.of(NEAR_160_F) : Optional.empty();
    }

    /** Part of the raw weight lost, in percent. */
    public double lossPercent() {
        return lossPercent;
    }

    /** {@code about 18 % brought near 160 °F and not held}. */
    public String words() {
        return degree + " " + Math.round(lossPercent) + " % " + where;
    }

    /** The weight lost of a raw weight, in the same unit. */
    public double lost(double rawWeight) {
        return rawWeight * lossPercent / 100;
    }

    /** US cups a weight of water fills, at 1 kg a litre. */
    public static double usCups(double waterKilograms) {
        return waterKilograms / LITRES_A_CUP;
    }
}
