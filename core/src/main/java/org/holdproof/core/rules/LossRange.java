package org.holdproof.core.rules;

import java.util.List;

/**
 * A published range of the weight lost in a cook, where no more is known than the food and how far it was cooked.
 *
 * @param species the animals it is about, as written in a batch record
 * @param fromCelsius from this core temperature
 * @param toCelsius below this one
 * @param lowPercent in percent of the raw weight
 * @param highPercent in percent of the raw weight
 */
public record LossRange(
        String id,
        String title,
        List<String> species,
        double fromCelsius,
        double toCelsius,
        double lowPercent,
        double highPercent,
        Citation citation) {

    public LossRange {
        species = List.copyOf(species);
    }
}
