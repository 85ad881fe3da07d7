package org.holdproof.core.batch;

import java.time.ZoneId;

/**
 * Where the food was cooked.
 *
 * @param name the kitchen's name
 * @param place its town, as it should be printed; may be empty
 * @param zone the zone of its clocks, in which the report prints every time
 */
public record Kitchen(String name, String place, ZoneId zone) {}
