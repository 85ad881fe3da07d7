package org.holdproof.core.rules;

import java.util.OptionalDouble;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.Comparison;

/**
 * What an oven must be like for a table of roasts to be used with it. Where an oven is used, one condition that fits the
 * oven and the piece must be kept.
 *
 * @param oven the kind of oven it is about
 * @param pieceAtLeastKilograms the lightest piece it is about, inclusive
 * @param pieceBelowKilograms the heaviest piece it is about, exclusive
 * @param temperature the oven's temperature, preheated and held
 * @param comparison how the oven's temperature is compared with it
 * @param humidityAbovePercent relative humidity that must be passed; a tight bag counts as 100 %
 * @param humidityMinutes for at least this long, in the chamber or at its exit
 */
public record OvenCondition(
        String id,
        String title,
        Oven oven,
        OptionalDouble pieceAtLeastKilograms,
        OptionalDouble pieceBelowKilograms,
        Boundary temperature,
        Comparison comparison,
        OptionalDouble humidityAbovePercent,
        OptionalDouble humidityMinutes,
        Citation citation)
        implements Rule {

    /** Whether it is about a piece of this weight, in kg. */
    public boolean isFor(double kilograms) {
        return kilograms >= pieceAtLeastKilograms.orElse(0)
                && kilograms < pieceBelowKilograms.orElse(Double.POSITIVE_INFINITY);
    }

    /** Kinds of ovens the documents tell apart. */
    public enum Oven {
        STILL_DRY,
        CONVECTION,
        HIGH_HUMIDITY
    }
}
