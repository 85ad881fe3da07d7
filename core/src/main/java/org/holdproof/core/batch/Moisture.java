package org.holdproof.core.batch;

import java.util.OptionalDouble;

/**
 * What kept a piece's surface moist while it cooked.
 *
 * @param means how
 * @param minutes for how long, where that matters; empty: throughout
 */
public record Moisture(Means means, OptionalDouble minutes) {

    /** The ways the FSIS Cooking Guideline 2021 (pages 26 to 33) knows to keep a surface moist, or to do without. */
    public enum Means {
        SEALED_BAG("sealed bag"),
        IMMERSION("immersion"),
        CASING("casing"),
        LARGE_PIECE("large piece in a hot oven"),
        DIRECT_HEAT("direct heat"),
        STEAM("steam"),
        SEALED_OVEN("sealed oven"),
        HUMID_AIR("humid air");

        private final String title;

        Means(String title) {
            this.title = title;
        }

        /** As it is written in a batch record and printed. */
        public String title() {
            return title;
        }
    }
}
