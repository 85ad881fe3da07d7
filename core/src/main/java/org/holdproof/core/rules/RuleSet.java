package org.holdproof.core.rules;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * All rules of one kind, in the order of their tables. Immutable.
 *
 * @param <T> the kind
 */
public final class RuleSet<T extends Rule> {
    private final Class<T> kind;
    private final String title;
    private final String file;
    private final Map<String, T> byId;

    /**
     * @param title what the kind is called, as a heading
     * @param file the table its rules stand in, such as {@code cooling.csv}
     * @throws IllegalArgumentException if two rules bear one id
     */
    public RuleSet(Class<T> kind, String title, String file, Collection<T> rules) {
        this.kind = kind;
        this.title = title;
        this.file = file;
        byId = new LinkedHashMap<>();
        for (T rule : rules) {
            if (byId.putIfAbsent(rule.id(), rule) != null) {
                throw new IllegalArgumentException(file + " has two rules " + rule.id());
            }
        }
    }

    /** The kind. */
    public Class<T> kind() {
        return kind;
    }

    /** What the kind is called, as a heading. */
    public String title() {
        return title;
    }

    /** The table its rules stand in. */
    public String file() {
        return file;
    }

    /** The rule of this id. */
    public Optional<T> find(String id) {
        return Optional.ofNullable(byId.get(id));
    }

    /**
     * The rule of this id, which must be there.
     *
     * @throws IllegalStateException if it is not: the tables lack what the program counts on
     */
    public T require(String id) {
        return find(id).orElseThrow(() -> new IllegalStateException(file + " lacks " + id));
    }

    /** All of them, in the order of their tables. */
    public List<T> all() {
        return List.copyOf(byId.values());
    }
}
