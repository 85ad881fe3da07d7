package org.holdproof.core.rules;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The rules of every kind. Immutable. */
public final class RuleSets {
    private final Map<Class<? extends Rule>, RuleSet<? extends Rule>> byKind;

    /** @throws IllegalArgumentException if two sets are of one kind */
    public RuleSets(List<RuleSet<? extends Rule>> sets) {
        byKind = new LinkedHashMap<>();
        for (RuleSet<? extends Rule> set : sets) {
            if (byKind.putIfAbsent(set.kind(), set) != null) {
                throw new IllegalArgumentException("two sets of " + set.kind().getSimpleName());
            }
        }
    }

    /**
     * The rules of one kind.
     *
     * @throws IllegalArgumentException if no table holds rules of that kind
     */
    @SuppressWarnings("unchecked") // a set is filed under its own kind
    public <T extends Rule> RuleSet<T> of(Class<T> kind) {
        RuleSet<? extends Rule> set = byKind.get(kind);
        if (set == null) {
            throw new IllegalArgumentException("no table holds rules of kind " + kind.getSimpleName());
        }
        return (RuleSet<T>) set;
    }

    /** All sets, in the order they are listed in. */
    public List<RuleSet<? extends Rule>> all() {
        return List.copyOf(byKind.values());
    }
}
