package org.holdproof.core.rules;

import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.batch.Moisture;
import org.holdproof.core.quantity.Boundary;

/**
 * One way to keep the surface moist that a lethality table may be used with.
 *
 * @param means how the surface is kept moist, or why it need not be
 * @param sharePercent least share of the cooking time it must last, in percent
 * @param atLeastMinutes least time it must last, in minutes; the longer of the two counts
 * @param endPoint lowest temperature of the row met that it may be used with
 * @param cookAtLeastMinutes least cooking time, in minutes
 * @param pieceKilograms least weight of a piece
 * @param ovenAtLeast lowest oven temperature, throughout
 */
public record HumidityOption(
        String id,
        String title,
        Moisture.Means means,
        double sharePercent,
        double atLeastMinutes,
        Optional<Boundary> endPoint,
        double cookAtLeastMinutes,
        OptionalDouble pieceKilograms,
        Optional<Boundary> ovenAtLeast,
        Citation citation)
        implements Rule {

    /** How long the surface must be kept moist in a cook of this length, in minutes. */
    public double neededMinutes(double cookMinutes) {
        return Math.max(atLeastMinutes, cookMinutes * sharePercent / 100);
    }
}
