package org.holdproof.core.log;

import org.holdproof.core.quantity.TemperatureUnit;

/**
 * One temperature column of a log.
 *
 * @param name the column's heading as the file prints it, without its unit
 * @param heading the heading as the file prints it
 * @param column the column's place in the file, counted from 1
 * @param unit the scale the file's figures are in
 */
public record Channel(String name, String heading, int column, TemperatureUnit unit) {
    /** A channel whose heading is its name. */
    public Channel(String name, int column, TemperatureUnit unit) {
        this(name, name, column, unit);
    }
}
