package org.holdproof.core.heat;

/**
 * How a surface dries with the water it has lost: {@code φ = 1/(1 + M/m₀) · max(0, 1 − (M/M_end)³)}, the share of a wet
 * surface's evaporation. First the vapour has to cross a dry layer that thickens with the loss, in series with the air's
 * film; then the water that can leave at all runs out.
 *
 * @param halfWetKilograms m₀, water lost from a square metre after which the first factor is one half, in kg/m²;
 *     infinite: no dry layer grows
 * @param evaporableShare the part of the raw mass that can leave as vapour; 0 never wet, infinite never dry
 */
public record Wetness(double halfWetKilograms, double evaporableShare) {
    /** A surface that stays wet. */
    public static final Wetness FOR_EVER = new Wetness(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);

    /** A surface nothing evaporates from. */
    public static final Wetness NONE = new Wetness(Double.POSITIVE_INFINITY, 0);

    /** @throws IllegalArgumentException if the first is not positive or the second negative */
    public Wetness {
        if (!(halfWetKilograms > 0) || !(evaporableShare >= 0)) {
            throw new IllegalArgumentException(
                    "not a wetness: " + halfWetKilograms + " kg/m², " + evaporableShare + " of the mass");
        }
    }

    /**
     * The share of a wet surface's evaporation, 0 to 1.
     *
     * @param lostKilograms water lost so far, in kg/m²; below 0 where it has condensed
     * @param massKilograms raw mass behind a square metre of surface, in kg/m²
     */
    public double share(double lostKilograms, double massKilograms) {
        if (evaporableShare == 0) {
            return 0;
        }
        double lost = Math.max(0, lostKilograms);
        double used = lost / (evaporableShare * massKilograms);
        return Math.max(0, 1 - used * used * used) / (1 + lost / halfWetKilograms);
    }
}
