package org.holdproof.core.rules;

import java.util.List;

/**
 * How far from ready to grow an organism is after a cook (Baranyi and Roberts 1994, International Journal of Food
 * Microbiology 23:277-294).
 *
 * @param food what it was measured in
 * @param species the species it serves, in the batch record's words, or {@link GrowthModel#ANY}
 * @param q0 the physiological state at the start, dimensionless; the smaller the longer the lag
 */
public record GrowthLag(String id, String organism, String food, List<String> species, double q0, Citation citation)
        implements Rule {

    /** @throws IllegalArgumentException if q0 is not positive and finite */
    public GrowthLag {
        species = List.copyOf(species);
        if (!(q0 > 0) || Double.isInfinite(q0)) {
            throw new IllegalArgumentException(id + ": q0 " + q0 + " must be positive");
        }
    }

    @Override
    public String title() {
        return organism + " in " + food;
    }
}
