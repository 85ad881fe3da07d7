package org.holdproof.core.batch;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Which probes measured what, by their names: the headings of the log where there is one log and no probe changed its
 * place.
 *
 * @param core probes in the food, at least one
 * @param bath probes in the water
 * @param air probes in the smoker, oven, chiller or store
 * @param surface probes on the food's surface
 */
public record ColumnRoles(List<String> core, List<String> bath, List<String> air, List<String> surface) {
    public ColumnRoles {
        core = List.copyOf(core);
        bath = List.copyOf(bath);
        air = List.copyOf(air);
        surface = List.copyOf(surface);
    }

    /** Roles without a probe on the surface. */
    public ColumnRoles(List<String> core, List<String> bath, List<String> air) {
        this(core, bath, air, List.of());
    }

    /** The probes of all logs by their roles, in the order of the record. */
    static ColumnRoles of(List<LogSource> logs) {
        return new ColumnRoles(
                probes(logs, ColumnRole.CORE),
                probes(logs, ColumnRole.BATH),
                probes(logs, ColumnRole.AIR),
                probes(logs, ColumnRole.SURFACE));
    }

    private static List<String> probes(List<LogSource> logs, ColumnRole role) {
        Set<String> probes = logs.stream()
                .flatMap(log -> log.columns().stream())
                .filter(use -> use.role() == role)
                .map(ColumnUse::probe)
                .collect(Collectors.toCollection(LinkedHashSet::new));
        return List.copyOf(probes);
    }

    /** The probes of a role. */
    public List<String> of(ColumnRole role) {
        return switch (role) {
            case CORE -> core;
            case BATH -> bath;
            case AIR -> air;
            case SURFACE -> surface;
        };
    }
}
