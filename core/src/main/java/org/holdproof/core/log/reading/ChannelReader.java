package org.holdproof.core.log.reading;

import java.util.Optional;
import org.holdproof.core.log.Channel;
import org.holdproof.core.log.LogFault;
import org.holdproof.core.quantity.TemperatureUnit;

/** Reads the cells of one temperature column, one row after another. */
final class ChannelReader {
    /** Figures outside this range no probe in a kitchen reads, in °C; common practice, no source. */
    static final double COLDEST = -60;

    static final double HOTTEST = 650;

    private static final double ABSENT_PROBE_LOW = 999;
    private static final double ABSENT_PROBE_HIGH = 999.9;

    private final ChannelPlan plan;
    private final String name;
    private final FaultLedger ledger;
    private final DecimalMark mark;
    private final TemperatureCell cell = new TemperatureCell();
    private final boolean unitOnlyInCells;
    private int unit;

    private boolean hasFigure;
    private boolean missing;
    private boolean impossible;
    private int decimals;
    private int decimalsBefore;
    private String strangeWord = "";
    private long strangeLine;
    private Optional<Refusal> garbled = Optional.empty();

    ChannelReader(ChannelPlan plan, FaultLedger ledger, DecimalMark mark) {
        this.plan = plan;
        this.name = plan.name();
        this.ledger = ledger;
        this.mark = mark;
        this.unit = plan.unit()
                .map(settled ->
                        settled == TemperatureUnit.CELSIUS ? TemperatureCell.CELSIUS : TemperatureCell.FAHRENHEIT)
                .orElse(TemperatureCell.NO_UNIT);
        this.unitOnlyInCells = unit == TemperatureCell.NO_UNIT;
    }

    String name() {
        return name;
    }

    boolean hasFigure() {
        return hasFigure;
    }

    /** The unit of its figures as far as it is settled: {@link TemperatureCell#NO_UNIT} and so on. */
    int unit() {
        return unit;
    }

    /** Why the cell last read can be no reading at all. */
    Optional<Refusal> garbled() {
        return garbled;
    }

    /** Whether the last figure has fewer decimals than the one before it. */
    boolean lastFigureIsShorter() {
        return decimals < decimalsBefore;
    }

    /**
     * Reads a cell.
     *
     * @param mayBeHeading whether the row so far repeats the headings, so that a word is no lack of a reading
     * @return the reading in °C, or NaN where there is none
     */
    double read(long line, char[] text, int from, int end, boolean mayBeHeading) {
        garbled = Optional.empty();
        TemperatureCell.Content content = cell.read(text, from, end);
        if (content == TemperatureCell.Content.FIGURE) {
            return readFigure(line, text, from, end);
        }
        if (content == TemperatureCell.Content.GARBLED) {
            garbled = Optional.of(new Refusal(
                    line,
                    plan.column() + 1,
                    Refusal.quote(new String(text, from, Math.min(end - from, 200))),
                    "a temperature, or nothing",
                    "Correct the cell, or leave it blank if there was no reading."));
        } else if (!mayBeHeading) {
            noteMissing(line, text, from, end);
        }
        return Double.NaN;
    }

    private void noteMissing(long line, char[] text, int from, int end) {
        if (missing && (hasFigure || from == end)) {
            ledger.extend(LogFault.Kind.MISSING_READING, name, line, "");
            return;
        }
        String word = from == end ? "" : new String(text, from, Math.min(end - from, 40));
        if (!hasFigure && strangeLine == 0 && !TemperatureCell.isMissingWord(word)) {
            strangeWord = word;
            strangeLine = line;
        }
        endImpossible();
        missing = true;
        ledger.extend(
                LogFault.Kind.MISSING_READING,
                name,
                line,
                word.isEmpty() ? "blank: taken as missing" : Refusal.quote(word) + ": taken as missing");
    }

    private double readFigure(long line, char[] text, int from, int end) {
        if (!mark.agrees(cell.mark())) {
            throw new Refusal(
                    line,
                    plan.column() + 1,
                    Refusal.quote(new String(text, from, end - from)),
                    "the decimal mark of the rows before, " + mark.words(),
                    "Export the log with one decimal mark and without thousands separators.");
        }
        if (cell.unit() != TemperatureCell.NO_UNIT || unitOnlyInCells) {
            checkUnit(line, text, from, end);
        }
        double value = cell.value();
        double celsius = unit == TemperatureCell.FAHRENHEIT ? (value - 32) / 1.8 : value;
        decimalsBefore = decimals;
        decimals = cell.decimals();
        hasFigure = true;
        if (missing) {
            missing = false;
            ledger.end(LogFault.Kind.MISSING_READING, name);
        }
        boolean absent = value == ABSENT_PROBE_LOW || value == ABSENT_PROBE_HIGH;
        if (!(celsius >= COLDEST && celsius <= HOTTEST) || absent) {
            impossible = true;
            ledger.extend(
                    LogFault.Kind.IMPOSSIBLE_READING,
                    name,
                    line,
                    Refusal.quote(new String(text, from, Math.min(end - from, 40)))
                            + " is no temperature a probe in a kitchen reads: taken as missing");
            return Double.NaN;
        }
        endImpossible();
        return celsius;
    }

    private void endImpossible() {
        if (impossible) {
            impossible = false;
            ledger.end(LogFault.Kind.IMPOSSIBLE_READING, name);
        }
    }

    private void checkUnit(long line, char[] text, int from, int end) {
        int stated = cell.unit();
        if (stated == TemperatureCell.NO_UNIT) {
            throw Layout.noUnit(line, plan.column() + 1, Refusal.quote(new String(text, from, end - from)));
        }
        if (unit == TemperatureCell.NO_UNIT) {
            unit = stated;
        } else if (unit != stated) {
            throw new Refusal(
                    line,
                    plan.column() + 1,
                    Refusal.quote(new String(text, from, end - from)),
                    unit == TemperatureCell.CELSIUS
                            ? "°C, as settled for this column"
                            : "°F, as settled for this column",
                    "Correct the unit in the file, in \"log.unit\" of the batch record, or in --unit.");
        }
    }

    /** @throws Refusal if it holds words that are no lack of a reading, and no figure */
    void requireNoOtherWords() {
        if (!hasFigure && !strangeWord.isEmpty()) {
            throw new Refusal(
                    strangeLine,
                    plan.column() + 1,
                    Refusal.quote(strangeWord) + " and no figure in the whole column",
                    "temperatures under " + Refusal.quote(name),
                    "Remove the column if it holds no temperatures.");
        }
    }

    /** The channel as read; without a single figure it may have no unit of its own. */
    Channel channel(int otherwise) {
        int settled = unit == TemperatureCell.NO_UNIT ? otherwise : unit;
        return new Channel(
                name,
                plan.heading(),
                plan.column() + 1,
                settled == TemperatureCell.FAHRENHEIT ? TemperatureUnit.FAHRENHEIT : TemperatureUnit.CELSIUS);
    }
}
