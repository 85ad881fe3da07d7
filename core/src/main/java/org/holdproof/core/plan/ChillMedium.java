package org.holdproof.core.plan;

import org.holdproof.core.heat.SurfaceCoefficient;

/** What cools the bagged piece after the bath. */
public enum ChillMedium {
    /** At least half ice the whole time: 0.5 °C, as the published ice-water table was found to be reckoned. */
    ICE_SLUSH("ice slush", 0.5, "ice-water-published"),
    /** Still tap water at 15 °C that never warms: better than any real still bath, which warms as the food cools. */
    STILL_WATER("still water", 15, "water-still-cold");

    private final String title;
    private final double celsius;
    private final String coefficient;

    ChillMedium(String title, double celsius, String coefficient) {
        this.title = title;
        this.celsius = celsius;
        this.coefficient = coefficient;
    }

    /** The medium's name as printed. */
    public String title() {
        return title;
    }

    /** Its temperature, in °C. */
    public double celsius() {
        return celsius;
    }

    /** The surface coefficient reckoned with, with its source. */
    public SurfaceCoefficient coefficient() {
        return SurfaceCoefficient.named(coefficient);
    }

    /** The lowest coefficient given, in W/(m² K). */
    double slowCoefficient() {
        return coefficient().low().orElse(coefficient().typical());
    }
}
