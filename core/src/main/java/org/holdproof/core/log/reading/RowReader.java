package org.holdproof.core.log.reading;

import de.siegmar.fastcsv.reader.AbstractBaseCsvCallbackHandler;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.log.Channel;
import org.holdproof.core.log.LogFault;

/** Takes the cells of one row after another, straight from the reader's buffer, and adds the rows to the columns. */
final class RowReader extends AbstractBaseCsvCallbackHandler<Boolean> {
    private static final int LEFT_OUT = 0;
    private static final int CLOCK = 1;
    private static final int DATE = 2;
    private static final int TIME = 3;
    private static final int FIRST_CHANNEL = 4;
    private static final int MOST_LINES_IN_A_CELL = 10;
    private static final int MOST_ROWS_ABOVE_A_HEADING = 10;

    private final Layout layout;
    private final FaultLedger ledger;
    private final long linesBefore;
    private final SectionStarts sections;
    private final Columns columns;
    private final ClockReader clock;
    private final ChannelReader[] channels;
    private final double[] readings;
    private final int[] roles;
    private final String[] headings;
    private final int width;

    private final RowState row = new RowState();
    private final GarbledRow garbled = new GarbledRow();
    private boolean shortRun;
    private boolean timelessRun;
    private long timeless;
    private long seen;
    private boolean lastCellSpansLines;
    private int lastField;
    private long nextSection;

    /** Tells whether a line opens another section of the file. */
    interface SectionStarts {
        boolean at(long line) throws IOException;
    }

    /** What is known of the row being read. */
    private static final class RowState {
        private long line;
        private boolean passedOver;
        private boolean anyCell;
        private boolean hasClock;
        private boolean hasTime;
        private boolean repeatsHeadings;
        private char firstCharacter;
        private int extraColumn;
        private String extraText = "";

        void begin(long startingLine, boolean over, boolean mayRepeat) {
            line = startingLine;
            passedOver = over;
            anyCell = false;
            hasClock = false;
            hasTime = false;
            repeatsHeadings = mayRepeat;
            firstCharacter = 0;
            extraColumn = 0;
        }
    }

    /** What cannot be read in a row, and what of that waits for the row behind it. */
    private static final class GarbledRow {
        private boolean clock;
        private int column;
        private String text = "";
        private String expected = "";
        private Optional<Refusal> reading = Optional.empty();

        private Optional<Refusal> waiting = Optional.empty();
        private boolean waitingIsShort;
        private boolean mayStandAboveAHeading;
        private long waitingLine;
        private int rowsWaiting;

        void begin() {
            clock = false;
            reading = Optional.empty();
        }

        void unlessLast(Refusal refusal, boolean isShort, boolean aboveAHeading, long line) {
            rowsWaiting = waiting.isPresent() ? rowsWaiting + 1 : 1;
            if (waiting.isEmpty()) {
                waiting = Optional.of(refusal);
                waitingLine = line;
                mayStandAboveAHeading = true;
            }
            waitingIsShort = isShort;
            mayStandAboveAHeading &= aboveAHeading;
        }
    }

    /**
     * @param linesBefore the lines of the file above the text that is read
     * @param sections tells where the next section begins
     */
    RowReader(Layout layout, FaultLedger ledger, long linesBefore, SectionStarts sections) {
        this.layout = layout;
        this.ledger = ledger;
        this.linesBefore = linesBefore;
        this.sections = sections;
        int count = layout.channels().size();
        this.columns = new Columns(count);
        this.clock = new ClockReader(layout.clock(), layout.separator() == ',' ? ',' : 0);
        this.headings = layout.headingCells().toArray(new String[0]);
        int needed = Math.max(layout.clock().column(), layout.clock().timeColumn());
        for (ChannelPlan channel : layout.channels()) {
            needed = Math.max(needed, channel.column());
        }
        int printed = headings.length;
        while (printed > 0 && headings[printed - 1].isEmpty()) {
            printed--;
        }
        this.width = Math.max(printed, needed + 1);
        this.roles = new int[Math.max(headings.length, needed + 1)];
        if (layout.clock().timeColumn() >= 0) {
            roles[layout.clock().column()] = DATE;
            roles[layout.clock().timeColumn()] = TIME;
        } else {
            roles[layout.clock().column()] = CLOCK;
        }
        DecimalMark mark = new DecimalMark();
        this.channels = new ChannelReader[count];
        for (int i = 0; i < count; i++) {
            roles[layout.channels().get(i).column()] = FIRST_CHANNEL + i;
            channels[i] = new ChannelReader(layout.channels().get(i), ledger, mark);
        }
        this.readings = new double[count];
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
        return row.line;
    }

    /** The line at which another section begins, or 0. */
    long nextSection() {
        return nextSection;
    }

    /** How many rows below the headings say something. */
    long rowsSeen() {
        return seen;
    }

    @Override
    protected void handleBegin(long startingLine) {
        row.begin(
                startingLine + linesBefore, nextSection > 0 || startingLine < layout.firstLine(), headings.length > 0);
        garbled.begin();
    }

    @Override
    protected void handleField(int index, char[] text, int offset, int length, boolean quoted) {
        if (row.passedOver) {
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
        if (index == 0) {
            if (end - from > 1 && text[from] == '#' && !quoted && !repeats(0, text, from, end)) {
                row.passedOver = true;
                return;
            }
            row.firstCharacter = from < end ? text[from] : 0;
        }
        lastField = index;
        lastCellSpansLines = false;
        if (row.repeatsHeadings) {
            row.repeatsHeadings = repeats(index, text, from, end);
        }
        int role = index < roles.length ? roles[index] : LEFT_OUT;
        if (role >= FIRST_CHANNEL) {
            readings[role - FIRST_CHANNEL] =
                    channels[role - FIRST_CHANNEL].read(row.line, text, from, end, row.repeatsHeadings);
            if (garbled.reading.isEmpty()) {
                garbled.reading = channels[role - FIRST_CHANNEL].garbled();
            }
        } else if (role == LEFT_OUT) {
            takeOther(index, text, from, end, quoted);
        } else if (from < end) {
            takeClock(role, index, text, from, end);
        }
        row.anyCell |= from < end;
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
        if (index >= roles.length && from < end && row.extraColumn == 0 && headings.length > 0) {
            row.extraColumn = index + 1;
            row.extraText = new String(text, from, Math.min(end - from, 100));
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
                row.line,
                column,
                "a quotation mark that is not closed in its row",
                "cells closed by a quotation mark if they open with one",
                "Remove or close the quotation mark.");
    }

    private void takeClock(int role, int index, char[] text, int from, int end) {
        boolean readable;
        if (role == CLOCK) {
            readable = clock.read(row.line, text, from, end);
            row.hasClock = true;
        } else if (role == DATE) {
            readable = clock.readDate(text, from, end);
            row.hasClock = true;
        } else {
            readable = clock.readTime(text, from, end);
            row.hasTime = true;
        }
        if (!readable && !garbled.clock) {
            garbledClock(index + 1);
        }
    }

    private void garbledClock(int column) {
        garbled.clock = true;
        garbled.column = column;
        garbled.text = clock.garbledText();
        garbled.expected = clock.expected();
    }

    @Override
    protected Boolean buildRecord() {
        if (row.passedOver || !row.anyCell) {
            return Boolean.FALSE;
        }
        if (row.repeatsHeadings) {
            refuseWhatWaited();
            ledger.add(LogFault.Kind.SHORT_ROW, "", row.line, row.line, "the headings again: left out");
            return Boolean.FALSE;
        }
        seen++;
        boolean apart = layout.clock().timeColumn() >= 0;
        boolean whole = apart ? row.hasClock && row.hasTime : row.hasClock;
        if (whole && !garbled.clock && apart && !clock.join(row.line)) {
            garbledClock(layout.clock().column() + 1);
        }
        if (garbled.clock || !whole) {
            if (startsSection()) {
                return Boolean.FALSE;
            }
            return garbled.clock ? takeGarbled() : takeTimeless();
        }
        refuseWhatWaited();
        if (row.extraColumn > 0) {
            throw new Refusal(
                    row.line,
                    row.extraColumn,
                    Refusal.quote(row.extraText) + " behind the last heading",
                    "at most " + roles.length + " cells, one a heading",
                    "Put cells that contain the separator into quotation marks; export with semicolons if the decimal"
                            + " mark is a comma.");
        }
        if (timelessRun) {
            timelessRun = false;
            ledger.end(LogFault.Kind.SHORT_ROW, "clock");
        }
        if (getFieldCount() < width) {
            takeShort();
        } else {
            endShortRun();
        }
        if (garbled.reading.isPresent()) {
            Refusal refusal = garbled.reading.get();
            garbled.unlessLast(refusal, lastField + 1 == refusal.column(), false, row.line);
        }
        columns.add(clock.clock(), row.line, readings);
        return Boolean.TRUE;
    }

    private void refuseWhatWaited() {
        if (garbled.waiting.isPresent()) {
            throw garbled.waiting.get();
        }
    }

    /** Whether the row, whose clock cannot be read, is another section's heading. */
    private boolean startsSection() {
        char first = row.firstCharacter;
        if (first == 0 || Character.isDigit(first)) {
            return false;
        }
        boolean starts;
        try {
            starts = sections.at(row.line);
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
        if (!starts) {
            return false;
        }
        if (garbled.waiting.isPresent()) {
            if (!garbled.mayStandAboveAHeading) {
                throw garbled.waiting.get();
            }
            ledger.add(
                    LogFault.Kind.SHORT_ROW,
                    "",
                    garbled.waitingLine,
                    row.line - 1,
                    "lines above another row of headings: left out");
            for (int i = 0; i < garbled.rowsWaiting; i++) {
                ledger.leaveOut("above another row of headings");
            }
            garbled.waiting = Optional.empty();
        }
        nextSection = row.line;
        seen--;
        return true;
    }

    /** A row without a time; one that is not divided as the rows above is an error. */
    private Boolean takeTimeless() {
        refuseWhatWaited();
        if (getFieldCount() == 1 && width > 2 && Character.isDigit(row.firstCharacter)) {
            throw new Refusal(
                    row.line,
                    0,
                    "a row in one piece",
                    "cells divided as in the rows above",
                    "If two logs were joined in this file, hand them in as two files; keep the headings of both.");
        }
        timeless++;
        ledger.leaveOut("without a time");
        timelessRun = true;
        endShortRun();
        ledger.extend(LogFault.Kind.SHORT_ROW, "clock", row.line, "a row without a time: left out");
        return Boolean.FALSE;
    }

    /**
     * In a row with fewer cells than headings nobody can say which are lacking. A reading stays only where, however far the
     * cells are pushed to the right, it keeps its column: figures go only where figures can stand, and the clock stands
     * where it was read.
     */
    private void takeShort() {
        int cells = getFieldCount();
        boolean lost = false;
        for (int i = 0; i < readings.length; i++) {
            if (layout.channels().get(i).column() >= cells) {
                readings[i] = Double.NaN;
                lost = true;
            }
        }
        int free = width;
        for (int column = Math.min(cells, roles.length) - 1; column >= 0; column--) {
            int role = roles[column];
            boolean figure = role >= FIRST_CHANNEL && !Double.isNaN(readings[role - FIRST_CHANNEL]);
            int furthest = role == CLOCK || role == DATE || role == TIME ? column : free - 1;
            while (furthest > column && !canStand(figure, furthest)) {
                furthest--;
            }
            if (figure && furthest > column) {
                readings[role - FIRST_CHANNEL] = Double.NaN;
                lost = true;
            }
            free = furthest;
        }
        if (!lost) {
            endShortRun();
            return;
        }
        shortRun = true;
        ledger.extend(
                LogFault.Kind.SHORT_ROW,
                "",
                row.line,
                "ends after " + cells + " of " + width
                        + " cells: which are lacking nobody can say, so what cannot be told apart is missing");
    }

    private boolean canStand(boolean figure, int column) {
        int role = column < roles.length ? roles[column] : LEFT_OUT;
        return role != CLOCK && role != DATE && role != TIME && (!figure || layout.canHoldFigures(column));
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
                row.line,
                garbled.column,
                garbled.text.isEmpty() ? "a date and time that do not belong together" : Refusal.quote(garbled.text),
                garbled.expected,
                "Correct or remove the row, or export the log again.");
        boolean incomplete = getFieldCount() < width;
        char first = garbled.text.isEmpty() ? '0' : garbled.text.charAt(0);
        boolean words = Character.isLetter(first) || "-=*_".indexOf(first) >= 0;
        if (incomplete && words) {
            ledger.add(
                    LogFault.Kind.SHORT_ROW,
                    "",
                    row.line,
                    row.line,
                    Refusal.quote(garbled.text) + " stands where the time should: left out");
            ledger.leaveOut("with words for a time");
            return Boolean.FALSE;
        }
        boolean mayWait = words && !Character.isDigit(row.firstCharacter);
        if (garbled.waiting.isPresent()
                && !(mayWait && garbled.mayStandAboveAHeading && garbled.rowsWaiting < MOST_ROWS_ABOVE_A_HEADING)) {
            throw garbled.waiting.get();
        }
        garbled.unlessLast(refusal, incomplete || lastField + 1 == garbled.column, mayWait, row.line);
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
        boolean cutOff = nextSection == 0 && lastCharacter != '\n' && lastCharacter != '\r';
        if (lastCellSpansLines && lastVisible != '"') {
            throw openQuote(lastField + 1);
        }
        if (garbled.waiting.isPresent()) {
            if (!garbled.waitingIsShort || !cutOff || garbled.rowsWaiting > 1) {
                throw garbled.waiting.get();
            }
            ledger.add(
                    LogFault.Kind.SHORT_ROW,
                    "",
                    garbled.waitingLine,
                    garbled.waitingLine,
                    "the file ends inside the row: what is not whole is left out");
            if (garbled.clock) {
                ledger.leaveOut("cut off by the file's end");
            }
        } else if (cutOff && columns.rows() > 1) {
            dropCutFigure();
        }
        ledger.endAll();
        for (ChannelReader channel : channels) {
            channel.requireNoOtherWords();
        }
        if (timeless > columns.rows()) {
            throw new Refusal(
                    0,
                    layout.clock().column() + 1,
                    timeless + " rows without a time",
                    "a time in every row",
                    "Export the log with the time of each reading.");
        }
    }

    /** A last figure with fewer decimals than the one above it may have lost some: it is no reading. */
    private void dropCutFigure() {
        int role = lastField < roles.length ? roles[lastField] : LEFT_OUT;
        int last = columns.rows() - 1;
        if (role < FIRST_CHANNEL || columns.line(last) != row.line) {
            return;
        }
        ChannelReader channel = channels[role - FIRST_CHANNEL];
        if (channel.lastFigureIsShorter() && !Double.isNaN(columns.celsius(role - FIRST_CHANNEL, last))) {
            columns.setCelsius(role - FIRST_CHANNEL, last, Double.NaN);
            ledger.add(
                    LogFault.Kind.SHORT_ROW,
                    channel.name(),
                    row.line,
                    row.line,
                    "the file ends inside the last figure: taken as missing");
        }
    }

    /** Whether any temperature column holds a figure. */
    boolean hasFigures() {
        for (ChannelReader channel : channels) {
            if (channel.hasFigure()) {
                return true;
            }
        }
        return false;
    }

    /** The channels as read. */
    List<Channel> channels() {
        int settled = TemperatureCell.CELSIUS;
        for (ChannelReader channel : channels) {
            settled = channel.unit() == TemperatureCell.NO_UNIT ? settled : channel.unit();
        }
        Channel[] read = new Channel[channels.length];
        for (int i = 0; i < read.length; i++) {
            read[i] = channels[i].channel(settled);
        }
        return List.of(read);
    }
}
