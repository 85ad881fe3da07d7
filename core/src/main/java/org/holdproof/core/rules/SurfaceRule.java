package org.holdproof.core.rules;

import java.util.OptionalDouble;
import org.holdproof.core.quantity.Boundary;

/**
 * Pasteurization of an intact piece at its surface alone.
 *
 * @param at the temperature to reach or pass
 * @param seconds for at least this long
 * @param depthMillimetres how deep below the surface; empty: at the surface
 */
public record SurfaceRule(
        String id,
        String title,
        String jurisdiction,
        String applies,
        Boundary at,
        double seconds,
        OptionalDouble depthMillimetres,
        Citation citation)
        implements Rule {}
