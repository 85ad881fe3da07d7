package org.holdproof.core.log;

import org.holdproof.core.quantity.TemperatureUnit;

/**
 * One temperature column of a log.
 *
 * @param name the column's heading as the file prints it, without its unit
 * @param column the column's place in the file, counted from 1
 * @param unit the scale the file's figures are in
 */
public record Channel(String name, int column, TemperatureUnit unit) {}
