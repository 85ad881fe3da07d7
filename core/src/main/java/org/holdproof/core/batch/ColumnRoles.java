package org.holdproof.core.batch;

import java.util.List;

/**
 * Which columns of the log measured what, by their headings.
 *
 * @param core probes in the food, at least one
 * @param bath probes in the water
 * @param air probes in the smoker, oven, chiller or store
 */
public record ColumnRoles(List<String> core, List<String> bath, List<String> air) {
    public ColumnRoles {
        core = List.copyOf(core);
        bath = List.copyOf(bath);
        air = List.copyOf(air);
    }
}
