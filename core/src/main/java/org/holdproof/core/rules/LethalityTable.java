package org.holdproof.core.rules;

import java.util.List;
import java.util.OptionalDouble;

/**
 * A published time-temperature table; any row of it will do.
 *
 * @param id the table's id
 * @param title as printed
 * @param jurisdiction where it is used
 * @param applies the food it is for, in words
 * @param organism what it is aimed at; empty where the document does not say
 * @param targetLog10 the reduction it stands for
 * @param counting how the time of a row is counted
 * @param rows by rising temperature
 */
public record LethalityTable(
        String id,
        String title,
        String jurisdiction,
        String applies,
        String organism,
        OptionalDouble targetLog10,
        Counting counting,
        List<LethalityRow> rows,
        Citation citation)
        implements Rule {

    public LethalityTable {
        rows = List.copyOf(rows);
    }

    /** How the time at or above a row's temperature is counted. */
    public enum Counting {
        /** The longest unbroken spell. */
        UNBROKEN,
        /** All of it, added up. */
        TOTAL
    }

    /** Whether the table's times depend on fat. */
    public boolean hasFatColumns() {
        return rows.stream().anyMatch(row -> row.fatPercent().isPresent());
    }

    /**
     * The rows for a product of this fat. Between two columns the longer time of the two governs; above the last
     * column, or where fat is unknown, the last one (FSIS Cooking Guideline 2021, page 39).
     */
    public List<LethalityRow> rowsFor(OptionalDouble fatPercent) {
        if (!hasFatColumns()) {
            return rows;
        }
        int last = rows.stream().mapToInt(LethalityTable::column).max().orElse(0);
        int first = rows.stream().mapToInt(LethalityTable::column).min().orElse(0);
        double fat = Math.max(first, Math.min(last, fatPercent.orElse(last)));
        List<LethalityRow> leaner = column((int) Math.floor(fat));
        return column((int) Math.ceil(fat)).stream()
                .map(row -> longer(row, leaner))
                .toList();
    }

    private static LethalityRow longer(LethalityRow row, List<LethalityRow> others) {
        return others.stream()
                .filter(other -> other.at().equals(row.at()) && other.seconds() > row.seconds())
                .findFirst()
                .orElse(row);
    }

    private List<LethalityRow> column(int fatPercent) {
        return rows.stream().filter(row -> column(row) == fatPercent).toList();
    }

    private static int column(LethalityRow row) {
        return row.fatPercent().orElse(0);
    }
}
