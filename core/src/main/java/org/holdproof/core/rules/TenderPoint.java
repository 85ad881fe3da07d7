package org.holdproof.core.rules;

/**
 * A case in which tough beef is said to have become tender.
 *
 * @param celsius what it was held at
 * @param lowHours the shortest time that may have done it
 * @param highHours the longest
 * @param used whether the time to tender rests on it
 */
public record TenderPoint(
        String id,
        String material,
        double celsius,
        double lowHours,
        double highHours,
        boolean used,
        Citation citation) {}
