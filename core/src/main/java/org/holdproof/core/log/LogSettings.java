package org.holdproof.core.log;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Map;
import java.util.Optional;
import org.holdproof.core.quantity.TemperatureUnit;

/**
 * What a log's file may leave open and somebody else must settle. Each answer is used only where the file is silent; a
 * file that says otherwise is an error.
 *
 * @param unit the scale of the temperatures
 * @param units the scale of single columns, by their headings
 * @param dateOrder the order of day, month and year in dates written in figures only
 * @param zone the zone of a clock without offset
 * @param start the instant of elapsed time zero
 * @param date the day of the first row, for a clock that tells the time of day only
 */
public record LogSettings(
        Optional<TemperatureUnit> unit,
        Map<String, TemperatureUnit> units,
        Optional<DateOrder> dateOrder,
        Optional<ZoneId> zone,
        Optional<Instant> start,
        Optional<LocalDate> date) {

    public LogSettings {
        units = Map.copyOf(units);
    }

    /** Settings without a unit for single columns or a day. */
    public LogSettings(
            Optional<TemperatureUnit> unit,
            Optional<DateOrder> dateOrder,
            Optional<ZoneId> zone,
            Optional<Instant> start) {
        this(unit, Map.of(), dateOrder, zone, start, Optional.empty());
    }

    /** Nothing settled: the file must say everything. */
    public static final LogSettings NONE =
            new LogSettings(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
}
