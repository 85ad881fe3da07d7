package org.holdproof.core.log.reading;

import java.util.Optional;
import org.holdproof.core.quantity.TemperatureUnit;

/**
 * A temperature column about to be read.
 *
 * @param name the heading without its unit
 * @param heading the heading as printed
 * @param column the column, counted from 0
 * @param unit the unit settled for figures without one; empty where each cell must state its own
 */
record ChannelPlan(String name, String heading, int column, Optional<TemperatureUnit> unit) {}
