package org.holdproof.core.log;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import org.holdproof.core.quantity.TemperatureUnit;

/**
 * What a log's file may leave open and somebody else must settle. Each answer is used only where the file is silent; a
 * file that says otherwise is an error.
 *
 * @param unit the scale of the temperatures
 * @param dateOrder the order of day, month and year in dates written in figures only
 * @param zone the zone of a clock without offset
 * @param start the instant of elapsed time zero
 */
public record LogSettings(
        Optional<TemperatureUnit> unit, Optional<DateOrder> dateOrder, Optional<ZoneId> zone, Optional<Instant> start) {

    /** Nothing settled: the file must say everything. */
    public static final LogSettings NONE =
            new LogSettings(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
}
