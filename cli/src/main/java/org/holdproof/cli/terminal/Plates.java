package org.holdproof.cli.terminal;

import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.quality.Price;

/**
 * What is bought and what comes of it, as far as the cook said.
 *
 * @param boughtKilograms all pieces together, before trimming
 * @param trimmedOff share of it cut off before the cook, 0 to below 1
 * @param portionKilograms what one guest gets
 * @param price what the raw cut costs
 */
public record Plates(
        OptionalDouble boughtKilograms, double trimmedOff, OptionalDouble portionKilograms, Optional<Price> price) {}
