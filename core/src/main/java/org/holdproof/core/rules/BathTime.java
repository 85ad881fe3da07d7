package org.holdproof.core.rules;

import java.util.OptionalDouble;

/**
 * How long a bagged piece stays in a bath to be pasteurized, by its thickness, as a guide prints it.
 *
 * @param thicknessMillimetres across the thinnest way through the middle
 * @param bathCelsius the bath, in °C
 * @param startCelsius the piece when it goes in, in °C
 * @param seconds the time as printed, in seconds
 * @param printedTime the time as printed, with its unit: {@code 2 h}
 * @param targets the reductions it stands for, in words
 */
public record BathTime(
        String id,
        String product,
        double thicknessMillimetres,
        double bathCelsius,
        OptionalDouble startCelsius,
        double seconds,
        String printedTime,
        String targets,
        Citation citation)
        implements Rule {
    @Override
    public String title() {
        return product;
    }
}
