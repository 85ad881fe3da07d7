package org.holdproof.core.standard;

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
 * @param rows by rising temperature
 */
public record LethalityTable(
        String id,
        String title,
        String jurisdiction,
        String applies,
        String organism,
        OptionalDouble targetLog10,
        List<LethalityRow> rows,
        Citation citation) {

    public LethalityTable {
        rows = List.copyOf(rows);
    }

    /** Whether the table's times depend on fat. */
    public boolean hasFatColumns() {
        return rows.stream().anyMatch(row -> row.fatPercent().isPresent());
    }

    /**
     * The rows for a product of this fat. Between two columns the longer time governs, which is the fatter column;
     * above the last column, or where fat is unknown, the last one (FSIS Cooking Guideline 2021, page 39).
     */
    public List<LethalityRow> rowsFor(OptionalDouble fatPercent) {
        if (!hasFatColumns()) {
            return rows;
        }
        int last =
                rows.stream().mapToInt(row -> row.fatPercent().orElse(0)).max().orElse(0);
        int column = rows.stream()
                .mapToInt(row -> row.fatPercent().orElse(0))
                .filter(fat -> fatPercent.isPresent() && fat >= fatPercent.getAsDouble())
                .min()
                .orElse(last);
        return rows.stream().filter(row -> row.fatPercent().orElse(0) == column).toList();
    }
}
