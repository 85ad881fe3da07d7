package org.holdproof.core.rules;

import java.util.Optional;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.Comparison;

/**
 * A rule by which time alone keeps food safe outside temperature control.
 *
 * @param coldStart the temperature the food must be at or below when its time starts, coming from the cold
 * @param hotStart the temperature it must be at or above, coming from the heat
 * @param ceiling the temperature it must not pass meanwhile
 * @param ceilingComparison how its temperature is compared with the ceiling
 * @param maxMinutes the longest time
 * @param timeComparison how the time is compared with it
 * @param count how time is counted
 * @param marked whether the food must be marked with its time
 * @param disposition what follows
 */
public record TimeLimit(
        String id,
        String title,
        String jurisdiction,
        String applies,
        Optional<Boundary> coldStart,
        Optional<Boundary> hotStart,
        Optional<Boundary> ceiling,
        Comparison ceilingComparison,
        double maxMinutes,
        Comparison timeComparison,
        Count count,
        boolean marked,
        String disposition,
        Citation citation)
        implements Rule {

    /** How time is counted. */
    public enum Count {
        /** One period only; a food that had one before has none left. */
        ONE_PERIOD,
        /** Every spell is added up. */
        CUMULATIVE,
        /** Every spell on its own. */
        EACH_SPELL
    }
}
