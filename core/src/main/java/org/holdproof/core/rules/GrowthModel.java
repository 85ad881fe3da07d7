package org.holdproof.core.rules;

import java.util.List;
import java.util.Optional;

/**
 * How fast one organism grows in one food at each temperature, by its cardinal temperatures (Rosso and others 1993,
 * Journal of Theoretical Biology 162:447-463).
 *
 * @param food what it was measured in
 * @param species the species it is the choice for when a record is screened, in the batch record's words, or {@link
 *     #ANY} for those no other model of the organism names; empty: not used for screening
 * @param minCelsius no growth at or below it, in °C
 * @param optimumCelsius the temperature of fastest growth, in °C
 * @param maxCelsius no growth at or above it, in °C
 * @param optimumLnPerHour rate at the optimum, in natural-log units of the count an hour
 * @param startLog10 the count a screening assumes at its start, in log10 CFU/g; an assumption
 * @param ceilingLog10 the count growth comes to a stop at, in log10 CFU/g; an assumption
 * @param concern the count that is a danger in itself, where there is one
 * @param caveat what the model cannot claim, in sentences
 */
public record GrowthModel(
        String id,
        String title,
        String organism,
        String food,
        List<String> species,
        double minCelsius,
        double optimumCelsius,
        double maxCelsius,
        double optimumLnPerHour,
        double startLog10,
        double ceilingLog10,
        Optional<Concern> concern,
        String caveat,
        Citation citation)
        implements Rule {

    /** In {@link #species()}: every species that no other model of the organism names. */
    public static final String ANY = "any";

    /**
     * @throws IllegalArgumentException if the cardinal temperatures do not rise, the optimum does not lie in the upper
     *     half of the range (where the equation has a pole), the rate is not positive, or the start is not below the
     *     ceiling
     */
    public GrowthModel {
        species = List.copyOf(species);
        if (!(minCelsius < optimumCelsius && optimumCelsius < maxCelsius)
                || !(optimumCelsius > (minCelsius + maxCelsius) / 2)) {
            throw new IllegalArgumentException(id + ": cardinal temperatures " + minCelsius + ", " + optimumCelsius
                    + ", " + maxCelsius + " must rise, the optimum in the upper half");
        }
        if (!(optimumLnPerHour > 0) || !(startLog10 < ceilingLog10)) {
            throw new IllegalArgumentException(id + ": the rate must be positive and the start below the ceiling");
        }
    }

    /**
     * A count that is a danger in itself.
     *
     * @param log10 in log10 CFU/g
     * @param why the fact behind it
     */
    public record Concern(double log10, GrowthFact why) {}
}
