package org.holdproof.core.rules;

import org.holdproof.core.quantity.Predicted;

/**
 * A cut with its trim, as far as its weight goes.
 *
 * @param species the animal, as written in a batch record
 * @param leanShare lean meat over raw weight, 0 to 1
 * @param renderedPercent fat that melts out, in percent of the raw weight
 */
public record TrimmedCut(
        String id, String title, String species, Predicted leanShare, Predicted renderedPercent, Citation citation) {}
