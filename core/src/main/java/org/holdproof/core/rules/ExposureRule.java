package org.holdproof.core.rules;

import java.util.List;
import org.holdproof.core.quantity.Boundary;

/**
 * A limit on all the time a food spends in bands of temperature: one limb kept whole is enough.
 *
 * @param limbs each a list of bands, all of which must be kept
 */
public record ExposureRule(
        String id, String title, String jurisdiction, String applies, List<List<Band>> limbs, Citation citation)
        implements Rule {

    public ExposureRule {
        limbs = limbs.stream().map(List::copyOf).toList();
    }

    /**
     * The longest time in one band.
     *
     * @param maxMinutes the longest total time, in minutes
     */
    public record Band(Boundary from, Boundary to, double maxMinutes) {}
}
