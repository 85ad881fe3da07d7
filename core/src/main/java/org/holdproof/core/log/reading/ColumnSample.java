package org.holdproof.core.log.reading;

import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** What the first rows hold in one column. */
final class ColumnSample {
    private static final int ROWS_LOOKED_AT = 100;

    private final Map<CellKind, Integer> counts = new EnumMap<>(CellKind.class);
    private final boolean counter;
    private final boolean offsets;
    private final boolean oneWay;
    private final boolean varies;
    private final boolean zeroFirst;
    private final boolean twoPartTimes;
    private final int distinct;
    private final double changes;
    private int rows;

    ColumnSample(List<SampleRow> table, int column) {
        double before = Double.NaN;
        boolean counts1 = true;
        boolean first = true;
        boolean withOffset = true;
        Set<String> distinct = new HashSet<>();
        double figureBefore = Double.NaN;
        boolean up = false;
        boolean down = false;
        boolean zero = false;
        boolean twoParts = true;
        String cellBefore = "";
        int changed = 0;
        for (SampleRow row : table.subList(0, Math.min(ROWS_LOOKED_AT, table.size()))) {
            String cell = row.cell(column);
            CellKind kind = CellKind.of(cell);
            rows++;
            distinct.add(cell);
            changed += rows > 1 && !cell.equals(cellBefore) ? 1 : 0;
            cellBefore = cell;
            counts.merge(kind, 1, Integer::sum);
            if (kind == CellKind.FIGURE && cell.matches("\\d+")) {
                double value = Double.parseDouble(cell);
                counts1 &= Double.isNaN(before) ? value == 0 || value == 1 : value == before + 1;
                before = value;
            } else if (kind != CellKind.BLANK) {
                counts1 = false;
            }
            if (kind == CellKind.FIGURE) {
                Figure figure = new Figure();
                figure.read(cell.toCharArray(), 0, cell.length());
                up |= figure.value() > figureBefore;
                down |= figure.value() < figureBefore;
                figureBefore = figure.value();
            }
            if (kind == CellKind.DATE_AND_TIME) {
                ClockCell clock = new ClockCell();
                withOffset &= clock.read(cell.toCharArray(), 0, cell.length()) && clock.hasOffset();
            }
            if (kind != CellKind.BLANK && first) {
                zero = cell.matches(
                        "(?:0 ?d(?:ays?)?,? )?(?:0+(?::0+)*(?:[.,]0+)?|(?:0+ ?h)?[ ]?(?:0+ ?m(?:in)?)?[ ]?(?:0+ ?s)?)");
                first = false;
            }
            if (kind == CellKind.TIME_OF_DAY || kind == CellKind.ELAPSED) {
                twoParts &= cell.indexOf(':') >= 0 && cell.indexOf(':') == cell.lastIndexOf(':');
            }
        }
        this.counter = counts1 && count(CellKind.FIGURE) > 1;
        this.offsets = withOffset && count(CellKind.DATE_AND_TIME) > 0;
        this.distinct = distinct.size();
        this.changes = rows > 1 ? (double) changed / (rows - 1) : 0;
        this.varies = distinct.size() > 1;
        this.oneWay = !(up && down);
        this.zeroFirst = zero;
        this.twoPartTimes = twoParts;
    }

    private int count(CellKind kind) {
        return counts.getOrDefault(kind, 0);
    }

    /** Whether most rows, and most cells that are not blank, are of the kinds. */
    boolean mostly(CellKind... kinds) {
        int of = 0;
        for (CellKind kind : kinds) {
            of += count(kind);
        }
        return of > 0 && of * 2 >= rows && of * 2 > rows - count(CellKind.BLANK);
    }

    /** Whether there are figures, and little else but missing readings. */
    boolean isFigures() {
        int figures = count(CellKind.FIGURE) + count(CellKind.TEMPERATURE);
        int others = rows - figures - count(CellKind.BLANK) - count(CellKind.NO_READING) - count(CellKind.TEXT);
        return figures > 0 && others == 0 && figures >= count(CellKind.TEXT);
    }

    /** Whether there are figures with a temperature unit. */
    boolean hasUnits() {
        return count(CellKind.TEMPERATURE) > 0;
    }

    /** Whether it counts the rows: whole figures from 0 or 1, each one more than the one before. */
    boolean isCounter() {
        return counter;
    }

    /** Whether its dates and times state their offset from UTC. */
    boolean hasOffsets() {
        return offsets;
    }

    /** How many different cells there are. */
    int distinct() {
        return distinct;
    }

    /** The share of rows whose cell is not that of the row before. */
    double changes() {
        return changes;
    }

    /** Whether its values come again and again. */
    boolean repeats() {
        return distinct * 2 <= rows;
    }

    /** Whether every cell is a word. */
    boolean isWords() {
        return rows > 0 && count(CellKind.TEXT) == rows;
    }

    /** Whether any cell is a figure. */
    boolean holdsFigures() {
        return count(CellKind.FIGURE)
                        + count(CellKind.TEMPERATURE)
                        + count(CellKind.EPOCH_SECONDS)
                        + count(CellKind.EPOCH_MILLIS)
                > 0;
    }

    /** Whether its cells differ. */
    boolean varies() {
        return varies;
    }

    /** Whether its figures only rise, or only fall. */
    boolean runsOneWay() {
        return oneWay;
    }

    /** Whether there is no reading in it, nor anything else. */
    boolean isEmpty() {
        return count(CellKind.BLANK) + count(CellKind.NO_READING) == rows;
    }

    /** Whether its first figure or time is zero. */
    boolean startsAtZero() {
        return zeroFirst;
    }

    /** Whether its times have two parts only, so that minutes and hours cannot be told apart. */
    boolean hasTwoPartTimes() {
        return twoPartTimes;
    }
}
