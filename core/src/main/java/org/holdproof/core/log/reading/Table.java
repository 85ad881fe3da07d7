package org.holdproof.core.log.reading;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * The start of a log as a table: what stands above it, its headings, its first rows.
 *
 * @param separator the character between the cells
 * @param preamble the rows above the headings
 * @param headings the cells of the headings, with the units of a row of units beneath put behind them in brackets;
 *     empty where the table has none
 * @param headingLine the line of the headings, or 0
 * @param firstLine the line of the first row of readings
 * @param rows the first rows of readings
 */
record Table(
        char separator,
        List<SampleRow> preamble,
        List<String> headings,
        List<String> headingCells,
        long headingLine,
        long firstLine,
        List<SampleRow> rows) {
    static final char[] SEPARATORS = {'\t', ';', '|', ','};
    private static final int ROWS_LOOKED_AT = 60;
    private static final int ROWS_ABOVE = 10;

    Table {
        preamble = List.copyOf(preamble);
        headings = List.copyOf(headings);
        headingCells = List.copyOf(headingCells);
        rows = List.copyOf(rows);
    }

    /**
     * Finds the table under the separator that makes the most sense of the first lines.
     *
     * @throws Refusal if no separator makes sense of them
     */
    static Table find(String head) {
        Optional<Table> best = Optional.empty();
        double bestScore = 0;
        for (char separator : SEPARATORS) {
            List<SampleRow> rows = SampleRow.rows(head, separator);
            double score = score(rows, separator);
            if (score > bestScore + 1e-9) {
                Optional<Table> table = at(separator, rows);
                if (table.isPresent()) {
                    best = table;
                    bestScore = score;
                }
            }
        }
        Table table = best.orElseThrow(() -> noTable(head));
        return firstSection(head, table).orElse(table);
    }

    /** The table above this one, where what stands above its headings is a table too, divided otherwise. */
    private static Optional<Table> firstSection(String head, Table table) {
        if (table.headingLine() < 3) {
            return Optional.empty();
        }
        String above = String.join("\n", Arrays.asList(head.split("\n", -1)).subList(0, (int) table.headingLine() - 1));
        for (char separator : SEPARATORS) {
            List<SampleRow> rows = SampleRow.rows(above, separator);
            long dated = rows.stream()
                    .filter(row -> row.width() >= 2
                            && row.cells().stream().anyMatch(cell -> CellKind.of(cell) == CellKind.DATE_AND_TIME)
                            && row.cells().stream()
                                    .anyMatch(cell -> CellKind.of(cell) == CellKind.FIGURE
                                            || CellKind.of(cell) == CellKind.TEMPERATURE))
                    .count();
            if (dated >= 2) {
                return Optional.of(find(above));
            }
        }
        return Optional.empty();
    }

    private static Refusal noTable(String head) {
        for (char separator : SEPARATORS) {
            for (SampleRow row : SampleRow.rows(head, separator)) {
                if (row.width() > 1 && row.cells().stream().anyMatch(cell -> isClockHeading(cell, row.cells()))) {
                    return new Refusal(
                            row.line(),
                            0,
                            "headings " + Refusal.quote(String.join(" | ", row.cells()))
                                    + " but no rows of readings below that can be understood",
                            "rows with a time and temperatures, divided as the headings are",
                            "Export the log as CSV with semicolons if the decimal mark is a comma, and with a row of"
                                    + " headings above the readings.");
                }
            }
        }
        String first = head.lines().filter(line -> !line.isBlank()).findFirst().orElse("");
        return new Refusal(
                0,
                0,
                first.isEmpty() ? "only blank lines" : "no table; the file begins with " + Refusal.quote(first),
                "rows with a time and temperatures, divided by comma, semicolon, tab or pipe",
                "Export the log as CSV with a row of headings such as \"time,core °C\".");
    }

    /** The share of cells understood among the rows that look like readings, times the share of such rows. */
    private static double score(List<SampleRow> rows, char separator) {
        int wide = 0;
        int readings = 0;
        double understood = 0;
        int step = 1 + rows.size() / ROWS_LOOKED_AT;
        for (int i = rows.size() - 1; i >= 0; i -= step) {
            SampleRow row = rows.get(i);
            if (row.isRemark()) {
                continue;
            }
            wide++;
            if (isReadings(row)) {
                readings++;
                long known = row.cells().stream()
                        .filter(cell -> CellKind.of(cell).isUnderstood() || isPlainNote(cell, separator))
                        .count();
                understood += (double) known / row.cells().size();
            }
        }
        return wide == 0 ? 0 : understood / wide * (readings > 0 ? 1 : 0);
    }

    private static boolean isPlainNote(String cell, char separator) {
        for (char other : SEPARATORS) {
            if (other != separator && cell.indexOf(other) >= 0) {
                return false;
            }
        }
        return true;
    }

    private static boolean isReadings(SampleRow row) {
        if (row.width() < 2) {
            return false;
        }
        boolean clock = false;
        int figures = 0;
        int understood = 0;
        int texts = 0;
        for (String cell : row.cells()) {
            CellKind kind = CellKind.of(cell);
            clock |= kind.isClock();
            figures += kind.isFigure() && !cell.isEmpty() ? 1 : 0;
            understood += kind.isUnderstood() && kind != CellKind.BLANK ? 1 : 0;
            texts += kind == CellKind.TEXT ? 1 : 0;
        }
        boolean elapsed = CellKind.of(row.cell(0)) == CellKind.FIGURE && figures > 1;
        return understood > 1 && (clock || elapsed || (figures > 1 && texts == 0));
    }

    private static Optional<Table> at(char separator, List<SampleRow> all) {
        List<SampleRow> rows = all.stream().filter(row -> !row.isRemark()).toList();
        List<SampleRow> remarks = all.stream().filter(SampleRow::isRemark).toList();
        int first = firstReadings(rows);
        if (first < 0) {
            return Optional.empty();
        }
        int heading = headingAbove(rows, first);
        if (heading >= 0) {
            return Optional.of(withHeadings(separator, rows, remarks, rows.get(heading), heading, first));
        }
        // a heading written as a remark: "# time, core"
        for (int i = remarks.size() - 1; i >= 0; i--) {
            SampleRow remark = remarks.get(i);
            SampleRow bare = withoutSign(remark);
            if (remark.line() < rows.get(first).line()
                    && bare.width() >= 2
                    && bare.width() >= rows.get(first).width()
                    && isHeading(bare, true)) {
                List<SampleRow> preamble = new ArrayList<>(rows.subList(0, first));
                preamble.addAll(remarks.subList(0, i));
                return Optional.of(new Table(
                        separator,
                        preamble,
                        bare.cells(),
                        remark.cells(),
                        remark.line(),
                        rows.get(first).line(),
                        rows.subList(first, rows.size())));
            }
        }
        List<SampleRow> preamble = new ArrayList<>(rows.subList(0, first));
        preamble.addAll(remarks);
        return Optional.of(new Table(
                separator,
                preamble,
                List.of(),
                List.of(),
                0,
                rows.get(first).line(),
                rows.subList(first, rows.size())));
    }

    private static SampleRow withoutSign(SampleRow remark) {
        List<String> cells = new ArrayList<>(remark.cells());
        cells.set(0, SampleRow.strip(cells.get(0).substring(1)));
        return new SampleRow(remark.line(), cells);
    }

    private static Table withHeadings(
            char separator,
            List<SampleRow> rows,
            List<SampleRow> remarks,
            SampleRow headingRow,
            int heading,
            int first) {
        List<SampleRow> preamble = new ArrayList<>(rows.subList(0, heading));
        remarks.stream().filter(remark -> remark.line() < headingRow.line()).forEach(preamble::add);
        List<String> headings = new ArrayList<>(headingRow.cells());
        int below = heading + 1;
        if (below < first && isUnits(rows.get(below))) {
            for (int column = 0; column < rows.get(below).width(); column++) {
                String unit = rows.get(below).cell(column);
                if (column < headings.size() && !unit.isEmpty() && !TemperatureCell.isMissingWord(unit)) {
                    String bracketed = unit.matches("[(\\[].*") ? unit : "(" + unit + ")";
                    headings.set(column, SampleRow.strip(headings.get(column) + " " + bracketed));
                }
            }
            below++;
        }
        return new Table(
                separator,
                preamble,
                headings,
                headingRow.cells(),
                headingRow.line(),
                rows.get(below).line(),
                rows.subList(below, rows.size()));
    }

    private static int firstReadings(List<SampleRow> rows) {
        for (int i = 0; i < rows.size(); i++) {
            if (!isReadings(rows.get(i))) {
                continue;
            }
            int alike = 0;
            int looked = 0;
            for (int j = i + 1; j < rows.size() && looked < 3; j++, looked++) {
                alike += isReadings(rows.get(j)) ? 1 : 0;
            }
            if (alike * 2 >= looked) {
                return i;
            }
        }
        return -1;
    }

    /** The nearest row above the readings that heads a clock, else the row just above if it is all words; or -1. */
    private static int headingAbove(List<SampleRow> rows, int first) {
        for (int i = first - 1; i >= Math.max(0, first - ROWS_ABOVE); i--) {
            if (isHeading(rows.get(i), true)) {
                return i;
            }
        }
        int above = first - 1;
        if (above > 0 && isUnits(rows.get(above))) {
            above--;
        }
        return above >= 0
                        && isHeading(rows.get(above), false)
                        && rows.get(above).width() >= rows.get(first).width() - 1
                ? above
                : -1;
    }

    static boolean isHeading(SampleRow row, boolean namesClock) {
        boolean clock = false;
        int words = 0;
        for (String cell : row.cells()) {
            CellKind kind = CellKind.of(cell);
            if (kind.isClock() || kind == CellKind.TEMPERATURE) {
                return false;
            }
            if (kind == CellKind.TEXT || kind == CellKind.NO_READING) {
                words++;
            }
            clock |= isClockHeading(cell, row.cells());
        }
        return (words >= 2 && (clock || !namesClock)) || (words >= 1 && clock && row.width() >= 2);
    }

    private static boolean isClockHeading(String cell, List<String> all) {
        return !cell.isEmpty()
                && cell.length() <= 60
                && CellKind.of(cell) == CellKind.TEXT
                && Heading.of(cell, all).isClock();
    }

    private static boolean isUnits(SampleRow row) {
        Predicate<String> unit = cell -> cell.isEmpty()
                || cell.toLowerCase(java.util.Locale.ROOT)
                        .matches(
                                "[(\\[]?(?:[°º˚]\\s?[cf]|[cf]|deg\\.?\\s?[cf]|celsius|fahrenheit|[℃℉]|s|sec|seconds|min"
                                        + "|minutes|h|hours|k|kelvin|ms|%|% ?rh|%rf|rh|v|mv|hpa|mbar|kpa|-|utc|h{1,2}:mm(:ss)?|mm:ss"
                                        + "|[ymdj./ \\-]+([t ]?h{1,2}:mm(:ss)?)?)[)\\]]?");
        return row.width() > 0 && row.cells().stream().allMatch(unit);
    }

    /** The widest of the rows looked at, and of the headings. */
    int width() {
        int width = headings.size();
        for (SampleRow row : rows) {
            width = Math.max(width, row.width());
        }
        return width;
    }
}
