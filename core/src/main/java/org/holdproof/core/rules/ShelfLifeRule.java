package org.holdproof.core.rules;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.holdproof.core.quantity.Boundary;

/**
 * How many days a chilled food may be kept.
 *
 * @param storeAt the warmest it may be kept
 * @param days the days it may be kept
 * @param from what the days count from
 * @param packagedDays days from packaging that may never be passed
 * @param reach a colder temperature that must be reached first, for the life to be open to it
 * @param reachMinutes time for that from reaching {@code storeAt} of the cooling rule
 */
public record ShelfLifeRule(
        String id,
        String title,
        String jurisdiction,
        String applies,
        Boundary storeAt,
        int days,
        From from,
        OptionalInt packagedDays,
        Optional<Boundary> reach,
        OptionalDouble reachMinutes,
        String disposition,
        Citation citation)
        implements Rule {

    /** What the days count from. */
    public enum From {
        /** The day of preparation or packaging is day 1. */
        DAY_ONE,
        /** The day of preparation is day 0. */
        PREPARATION,
        /** The day of packaging is day 0. */
        PACKAGING,
        /** The day it was taken out of the colder store is day 0. */
        REMOVAL
    }
}
