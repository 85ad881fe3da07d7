package org.holdproof.report.layout;

import java.util.List;
import org.holdproof.core.batch.ColumnRoles;

/** Names a log's columns by what they measured: a reader knows the core and the bath, not a logger's T1. */
record ProbeRoles(ColumnRoles roles) {
    private static final int LONGEST_HEADING = 24;

    /** For a chart or a table: {@code Core}, or with the heading where several columns have the role. */
    String title(String channel) {
        if (holds(roles.core(), channel)) {
            return named("Core", roles.core(), channel);
        }
        if (holds(roles.bath(), channel)) {
            return named("Bath", roles.bath(), channel);
        }
        return holds(roles.air(), channel) ? named("Smoker", roles.air(), channel) : channel;
    }

    static boolean same(String one, String other) {
        return one.strip().equalsIgnoreCase(other.strip());
    }

    private static boolean holds(List<String> columns, String channel) {
        return columns.stream().anyMatch(column -> same(column, channel));
    }

    private static String named(String role, List<String> columns, String channel) {
        if (columns.size() == 1) {
            return role;
        }
        if (channel.length() <= LONGEST_HEADING) {
            return role + ", " + channel;
        }
        for (int i = 0; i < columns.size(); i++) {
            if (same(columns.get(i), channel)) {
                return role + " " + (i + 1);
            }
        }
        return role;
    }
}
