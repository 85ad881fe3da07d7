package org.holdproof.core.plan;

import java.util.OptionalDouble;
import org.holdproof.core.heat.Psychrometrics;
import org.holdproof.core.heat.smoke.Smoke;

/**
 * Smoking before the bag, unwrapped.
 *
 * @param airCelsius the smoker's air beside the piece, 20 to 180 °C
 * @param minutes how long, up to 48 h
 * @param wetBulbCelsius what a thermometer with a wet wick shows in that air, if read
 */
public record SmokeStep(double airCelsius, double minutes, OptionalDouble wetBulbCelsius) {
    private static final double COLDEST = 20;
    private static final double HOTTEST = 180;
    private static final double LONGEST = 48 * 60;

    /** @throws UnplannableException if a figure lies outside its range or no air has that wet bulb */
    public SmokeStep {
        PlannedCook.require("the smoker's air", airCelsius, COLDEST, HOTTEST, "°C");
        if (!(minutes > 0) || !(minutes <= LONGEST)) {
            throw new UnplannableException("the smoke step lasts " + PlannedCook.plain(minutes / 60)
                    + " h; expected more than none and at most 48 h");
        }
        if (wetBulbCelsius.isPresent()) {
            double driest = Psychrometrics.wetBulbCelsius(airCelsius, 0, Psychrometrics.SEA_LEVEL_PASCAL);
            double highest = Math.min(airCelsius, BELOW_BOILING);
            PlannedCook.require("the wet bulb", wetBulbCelsius.getAsDouble(), driest, highest, "°C");
        }
    }

    private static final double BELOW_BOILING = 99;

    /** Without a wet-bulb reading. */
    public SmokeStep(double airCelsius, double minutes) {
        this(airCelsius, minutes, OptionalDouble.empty());
    }

    /** The same with a wet-bulb reading, in °C. */
    public SmokeStep withWetBulb(double celsius) {
        return new SmokeStep(airCelsius, minutes, OptionalDouble.of(celsius));
    }

    /** The stay, of another length if need be. */
    Smoke smoke(double forMinutes) {
        Smoke held = Smoke.held(airCelsius, forMinutes);
        return wetBulbCelsius.isPresent() ? held.withWetBulb(wetBulbCelsius.getAsDouble()) : held;
    }
}
