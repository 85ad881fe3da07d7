package org.holdproof.core.log.reading;

import de.siegmar.fastcsv.reader.AbstractBaseCsvCallbackHandler;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.log.Channel;
import org.holdproof.core.log.LogFault;
import org.holdproof.core.quantity.TemperatureUnit;

/** Takes the cells of one row after another, straight from the reader's buffer, and adds the rows to the columns. */
final class RowReader extends AbstractBaseCsvCallbackHandler<Boolean> {
    /** Figures outside this range no probe in a kitchen reads, in °C; common practice, no source. */
    static final double COLDEST = -60;

    static final double HOTTEST = 650;

    private static final int LEFT_OUT = 0;
    private static final int CLOCK = 1;
    private static final int DATE = 2;
    private static final int TIME = 3;
    private static final int FIRST_CHANNEL = 4;
    private static final int MOST_LINES_IN_A_CELL = 10;
    private static final double ABSENT_PROBE_LOW = 999;
    private static final double ABSENT_PROBE_HIGH = 999.9;

    private final Layout layout;
    private final FaultLedger ledger;
    private final Columns columns;
    private final ClockReader clock;
    private final TemperatureCell cell = new TemperatureCell();
    private final int[] roles;
    private final String[] headings;
    private final int lastNeeded;

    private final String[] names;
    private final int[] units;
    private final boolean[] unitOnlyInCells;
    private final boolean[] hasFigure;
    private final boolean[] missing;
    private final boolean[] impossible;
    private final int[] decimals;
    private final int[] decimalsBefore;
    private final String[] strangeWords;
    private final long[] strangeLines;
    private final double[] readings;
    private char mark;

    private long line;
    private boolean passedOver;
    private boolean anyCell;
    private boolean hasClock;
    private boolean hasTime;
    private boolean garbledClock;
    private String garbledText = "";
    private String garbledExpected = "";
    private int garbledColumn;
    private boolean repeatsHeadings;
    private int extraColumn;
    private String extraText = "";
    private Optional<Refusal> garbledReading = Optional.empty();
    private Optional<Refusal> unlessLast = Optional.empty();
    private boolean unlessLastIsShort;
    private long unlessLastLine;
    private boolean shortRun;
    private boolean timelessRun;
    private long timeless;
    private boolean lastCellSpansLines;
    private int lastField;

    RowReader(Layout layout, FaultLedger ledger) {
        this.layout = layout;
        this.ledger = ledger;
        int count = layout.channels().size();
        this.columns = new Columns(count);
        this.clock = new ClockReader(layout.clock(), layout.separator() == ',' ? ',' : 0);
        this.headings = layout.headingCells().toArray(new String[0]);
        int width = headings.length;
        int needed = Math.max(layout.clock().column(), layout.clock().timeColumn());
        for (ChannelPlan channel : layout.channels()) {
            needed = Math.max(needed, channel.column());
        }
        this.lastNeeded = needed;
        this.roles = new int[Math.max(width, needed + 1)];
        if (layout.clock().timeColumn() >= 0) {
            roles[layout.clock().column()] = DATE;
            roles[layout.clock().timeColumn()] = TIME;
        } else {
            roles[layout.clock().column()] = CLOCK;
        }
        this.names = new String[count];
        this.units = new int[count];
        for (int i = 0; i < count; i++) {
            ChannelPlan channel = layout.channels().get(i);
            roles[channel.column()] = FIRST_CHANNEL + i;
            names[i] = channel.name();
            units[i] = channel.unit().map(RowReader::code).orElse(TemperatureCell.NO_UNIT);
        }
        this.unitOnlyInCells = new boolean[count];
        for (int i = 0; i < count; i++) {
            unitOnlyInCells[i] = units[i] == TemperatureCell.NO_UNIT;
        }
        this.hasFigure = new boolean[count];
        this.missing = new boolean[count];
        this.impossible = new boolean[count];
        this.decimals = new int[count];
        this.decimalsBefore = new int[count];
        this.strangeWords = new String[count];
        Arrays.fill(strangeWords, "");
        this.strangeLines = new long[count];
        this.readings = new double[count];
    }

    private static int code(TemperatureUnit unit) {
        return unit == TemperatureUnit.CELSIUS ? TemperatureCell.CELSIUS : TemperatureCell.FAHRENHEIT;
    }

    /** The rows so far. */
    Columns columns() {
        return columns;
    }

    /** The clock that knows what the rows' times mean. */
    ClockReader clock() {
        return clock;
    }

    /** The line the row last begun starts in. */
    long line() {
        return line;
    }

    @Override
    protected void handleBegin(long startingLine) {
        line = startingLine;
        passedOver = startingLine < layout.firstLine();
        anyCell = false;
        hasClock = false;
        hasTime = false;
        garbledClock = false;
        repeatsHeadings = headings.length > 0;
        extraColumn = 0;
        garbledReading = Optional.empty();
    }

    @Override
    protected void handleField(int index, char[] text, int offset, int length, boolean quoted) {
        if (passedOver) {
            return;
        }
        int from = offset;
        int end = offset + length;
        while (from < end && TemperatureCell.isBlank(text[from])) {
            from++;
        }
        while (from < end && TemperatureCell.isBlank(text[end - 1])) {
            end--;
        }
        // a cell in quotation marks with blanks around them
        if (end - from > 1 && text[from] == '"' && text[end - 1] == '"' && !quoted) {
            from++;
            end--;
        }
        if (index == 0 && end - from > 1 && text[from] == '#' && !quoted && !repeats(0, text, from, end)) {
            passedOver = true;
            return;
        }
        lastField = index;
        lastCellSpansLines = false;
        if (repeatsHeadings) {
            repeatsHeadings = repeats(index, text, from, end);
        }
        int role = index < roles.length ? roles[index] : LEFT_OUT;
        if (role >= FIRST_CHANNEL) {
            takeReading(role - FIRST_CHANNEL, index, text, from, end);
        } else if (role == LEFT_OUT) {
            takeOther(index, text, from, end, quoted);
        } else if (from < end) {
            takeClock(role, index, text, from, end);
        }
        anyCell |= from < end;
    }

    private boolean repeats(int index, char[] text, int from, int end) {
        if (index >= headings.length) {
            return from == end;
        }
        String heading = headings[index];
        int length = end - from;
        if (heading.length() != length) {
            return false;
        }
        for (int i = 0; i < length; i++) {
            if (heading.charAt(i) != text[from + i]) {
                return false;
            }
        }
        return true;
    }

    private void takeOther(int index, char[] text, int from, int end, boolean quoted) {
        if (index >= roles.length && from < end && extraColumn == 0 && headings.length > 0) {
            extraColumn = index + 1;
            extraText = new String(text, from, Math.min(end - from, 100));
        }
        if (quoted) {
            int breaks = 0;
            for (int i = from; i < end; i++) {
                breaks += text[i] == '\n' || (text[i] == '\r' && (i + 1 == end || text[i + 1] != '\n')) ? 1 : 0;
            }
            lastCellSpansLines = breaks > 0;
            if (breaks >= MOST_LINES_IN_A_CELL) {
                throw openQuote(index + 1);
            }
        }
    }

    private Refusal openQuote(int column) {
        return new Refusal(
                line,
                column,
                "a quotation mark that is not closed in its row",
                "cells closed by a quotation mark if they open with one",
                "Remove or close the quotation mark.");
    }

    private void takeClock(int role, int index, char[] text, int from, int end) {
        boolean readable;
        if (role == CLOCK) {
            readable = clock.read(line, text, from, end);
            hasClock = true;
        } else if (role == DATE) {
            readable = clock.readDate(text, from, end);
            hasClock = true;
        } else {
            readable = clock.readTime(text, from, end);
            hasTime = true;
        }
        if (!readable && !garbledClock) {
            garbledClock = true;
            garbledColumn = index + 1;
            garbledText = clock.garbledText();
            garbledExpected = clock.expected();
        }
    }

    private void takeReading(int channel, int index, char[] text, int from, int end) {
        TemperatureCell.Content content = cell.read(text, from, end);
        if (content == TemperatureCell.Content.FIGURE) {
            takeFigure(channel, index, text, from, end);
            return;
        }
        readings[channel] = Double.NaN;
        if (content == TemperatureCell.Content.GARBLED) {
            if (garbledReading.isEmpty()) {
                garbledReading = Optional.of(new Refusal(
                        line,
                        index + 1,
                        Refusal.quote(new String(text, from, Math.min(end - from, 200))),
                        "a temperature, or nothing",
                        "Correct the cell, or leave it blank if there was no reading."));
            }
            return;
        }
        if (repeatsHeadings) {
            return;
        }
        if (missing[channel] && (hasFigure[channel] || from == end)) {
            ledger.extend(LogFault.Kind.MISSING_READING, names[channel], line, "");
            return;
        }
        String word = from == end ? "" : new String(text, from, Math.min(end - from, 40));
        if (!hasFigure[channel] && strangeLines[channel] == 0 && !TemperatureCell.isMissingWord(word)) {
            strangeWords[channel] = word;
            strangeLines[channel] = line;
        }
        endImpossible(channel);
        missing[channel] = true;
        ledger.extend(
                LogFault.Kind.MISSING_READING,
                names[channel],
                line,
                word.isEmpty() ? "blank: taken as missing" : Refusal.quote(word) + ": taken as missing");
    }

    private void takeFigure(int channel, int index, char[] text, int from, int end) {
        if (cell.mark() != 0 && cell.mark() != mark) {
            if (mark != 0) {
                throw new Refusal(
                        line,
                        index + 1,
                        Refusal.quote(new String(text, from, end - from)),
                        "the decimal mark of the rows before, " + (mark == '.' ? "a point" : "a comma"),
                        "Export the log with one decimal mark and without thousands separators.");
            }
            mark = cell.mark();
        }
        if (cell.unit() != TemperatureCell.NO_UNIT || unitOnlyInCells[channel]) {
            checkUnit(channel, index, text, from, end);
        }
        double value = cell.value();
        double celsius = units[channel] == TemperatureCell.FAHRENHEIT ? (value - 32) / 1.8 : value;
        decimalsBefore[channel] = decimals[channel];
        decimals[channel] = cell.decimals();
        hasFigure[channel] = true;
        if (missing[channel]) {
            missing[channel] = false;
            ledger.end(LogFault.Kind.MISSING_READING, names[channel]);
        }
        boolean absent = value == ABSENT_PROBE_LOW || value == ABSENT_PROBE_HIGH;
        if (!(celsius >= COLDEST && celsius <= HOTTEST) || absent) {
            readings[channel] = Double.NaN;
            impossible[channel] = true;
            ledger.extend(
                    LogFault.Kind.IMPOSSIBLE_READING,
                    names[channel],
                    line,
                    Refusal.quote(new String(text, from, Math.min(end - from, 40)))
                            + " is no temperature a probe in a kitchen reads: taken as missing");
            return;
        }
        endImpossible(channel);
        readings[channel] = celsius;
    }

    private void endImpossible(int channel) {
        if (impossible[channel]) {
            impossible[channel] = false;
            ledger.end(LogFault.Kind.IMPOSSIBLE_READING, names[channel]);
        }
    }

    private void checkUnit(int channel, int index, char[] text, int from, int end) {
        int stated = cell.unit();
        if (stated == TemperatureCell.NO_UNIT) {
            throw Layout.noUnit(line, index + 1, Refusal.quote(new String(text, from, end - from)));
        }
        if (units[channel] == TemperatureCell.NO_UNIT) {
            units[channel] = stated;
        } else if (units[channel] != stated) {
            throw new Refusal(
                    line,
                    index + 1,
                    Refusal.quote(new String(text, from, end - from)),
                    units[channel] == TemperatureCell.CELSIUS
                            ? "°C, as settled for this column"
                            : "°F, as settled for this column",
                    "Correct the unit in the file, in \"log.unit\" of the batch record, or in --unit.");
        }
    }

    @Override
    protected Boolean buildRecord() {
        if (passedOver || !anyCell) {
            return Boolean.FALSE;
        }
        if (unlessLast.isPresent()) {
            throw unlessLast.get();
        }
        if (repeatsHeadings) {
            ledger.add(LogFault.Kind.SHORT_ROW, "", line, line, "the headings again: left out");
            return Boolean.FALSE;
        }
        boolean whole = layout.clock().timeColumn() < 0 ? hasClock : hasClock && hasTime;
        if (whole && !garbledClock && layout.clock().timeColumn() >= 0 && !clock.join(line)) {
            garbledClock = true;
            garbledColumn = layout.clock().column() + 1;
            garbledText = clock.garbledText();
            garbledExpected = clock.expected();
        }
        if (garbledClock) {
            return takeGarbled();
        }
        if (!whole) {
            timeless++;
            timelessRun = true;
            endShortRun();
            ledger.extend(LogFault.Kind.SHORT_ROW, "clock", line, "a row without a time: left out");
            return Boolean.FALSE;
        }
        if (extraColumn > 0) {
            throw new Refusal(
                    line,
                    extraColumn,
                    Refusal.quote(extraText) + " behind the last heading",
                    "at most " + roles.length + " cells, one a heading",
                    "Put cells that contain the separator into quotation marks; export with semicolons if the decimal"
                            + " mark is a comma.");
        }
        if (timelessRun) {
            timelessRun = false;
            ledger.end(LogFault.Kind.SHORT_ROW, "clock");
        }
        if (getFieldCount() <= lastNeeded) {
            for (int channel = 0; channel < readings.length; channel++) {
                if (layout.channels().get(channel).column() >= getFieldCount()) {
                    readings[channel] = Double.NaN;
                }
            }
            shortRun = true;
            ledger.extend(
                    LogFault.Kind.SHORT_ROW,
                    "",
                    line,
                    "ends after " + getFieldCount() + " of " + roles.length
                            + " cells: the readings behind are missing");
        } else {
            endShortRun();
        }
        if (garbledReading.isPresent()) {
            unlessLast = garbledReading;
            unlessLastIsShort = lastField + 1 == garbledReading.get().column();
            unlessLastLine = line;
        }
        columns.add(clock.clock(), line, readings);
        return Boolean.TRUE;
    }

    private void endShortRun() {
        if (shortRun) {
            shortRun = false;
            ledger.end(LogFault.Kind.SHORT_ROW, "");
        }
    }

    /** A remark or a footer is left out; a time that cannot be read is an error, unless the file ends inside it. */
    private Boolean takeGarbled() {
        Refusal refusal = new Refusal(
                line,
                garbledColumn,
                garbledText.isEmpty() ? "a date and time that do not belong together" : Refusal.quote(garbledText),
                garbledExpected,
                "Correct or remove the row, or export the log again.");
        boolean incomplete = getFieldCount() <= lastNeeded;
        char first = garbledText.isEmpty() ? '0' : garbledText.charAt(0);
        boolean remark = incomplete && (Character.isLetter(first) || "-=*_".indexOf(first) >= 0);
        if (remark) {
            ledger.add(
                    LogFault.Kind.SHORT_ROW,
                    "",
                    line,
                    line,
                    Refusal.quote(garbledText) + " stands where the time should: left out");
            return Boolean.FALSE;
        }
        unlessLast = Optional.of(refusal);
        unlessLastIsShort = incomplete || lastField + 1 == garbledColumn;
        unlessLastLine = line;
        return Boolean.FALSE;
    }

    /**
     * Ends the reading.
     *
     * @param lastCharacter the file's last character
     * @param lastVisible its last character that is neither blank nor a line break
     * @throws Refusal if the last row, or a whole column, cannot be made sense of
     */
    void finish(char lastCharacter, char lastVisible) {
        boolean cutOff = lastCharacter != '\n' && lastCharacter != '\r';
        if (lastCellSpansLines && lastVisible != '"') {
            throw openQuote(lastField + 1);
        }
        if (unlessLast.isPresent()) {
            if (!unlessLastIsShort || !cutOff) {
                throw unlessLast.get();
            }
            ledger.add(
                    LogFault.Kind.SHORT_ROW,
                    "",
                    unlessLastLine,
                    unlessLastLine,
                    "the file ends inside the row: what is not whole is left out");
        } else if (cutOff && columns.rows() > 1) {
            dropCutFigure();
        }
        ledger.endAll();
        requireReadings();
    }

    /** A last figure with fewer decimals than the one above it may have lost some: it is no reading. */
    private void dropCutFigure() {
        int role = lastField < roles.length ? roles[lastField] : LEFT_OUT;
        int last = columns.rows() - 1;
        if (role < FIRST_CHANNEL || columns.line(last) != line) {
            return;
        }
        int channel = role - FIRST_CHANNEL;
        if (decimals[channel] < decimalsBefore[channel] && !Double.isNaN(columns.celsius(channel, last))) {
            columns.setCelsius(channel, last, Double.NaN);
            ledger.add(
                    LogFault.Kind.SHORT_ROW,
                    names[channel],
                    line,
                    line,
                    "the file ends inside the last figure: taken as missing");
        }
    }

    private void requireReadings() {
        boolean any = false;
        for (int channel = 0; channel < names.length; channel++) {
            any |= hasFigure[channel];
            if (!hasFigure[channel] && !strangeWords[channel].isEmpty()) {
                throw new Refusal(
                        strangeLines[channel],
                        layout.channels().get(channel).column() + 1,
                        Refusal.quote(strangeWords[channel]) + " and no figure in the whole column",
                        "temperatures under " + Refusal.quote(names[channel]),
                        "Remove the column if it holds no temperatures.");
            }
        }
        if (timeless > columns.rows()) {
            throw new Refusal(
                    0,
                    layout.clock().column() + 1,
                    timeless + " rows without a time",
                    "a time in every row",
                    "Export the log with the time of each reading.");
        }
        if (columns.rows() < 2) {
            throw new Refusal(
                    0,
                    0,
                    columns.rows() == 0 ? "no row of readings" : "a single row of readings",
                    "at least two rows, so that there is time between readings",
                    "Export the whole log.");
        }
        if (!any) {
            throw new Refusal(
                    0,
                    layout.channels().get(0).column() + 1,
                    "no figure in any temperature column",
                    "temperatures",
                    "Check that the probes were connected, and export the log again.");
        }
    }

    /** The channels as read. */
    List<Channel> channels() {
        Channel[] channels = new Channel[names.length];
        int settled = TemperatureCell.CELSIUS;
        for (int unit : units) {
            settled = unit == TemperatureCell.NO_UNIT ? settled : unit;
        }
        for (int i = 0; i < channels.length; i++) {
            // a channel without a single figure may have no unit of its own
            int unit = units[i] == TemperatureCell.NO_UNIT ? settled : units[i];
            channels[i] = new Channel(
                    names[i],
                    layout.channels().get(i).column() + 1,
                    unit == TemperatureCell.FAHRENHEIT ? TemperatureUnit.FAHRENHEIT : TemperatureUnit.CELSIUS);
        }
        return List.of(channels);
    }
}
