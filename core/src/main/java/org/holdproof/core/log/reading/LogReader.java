package org.holdproof.core.log.reading;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.io.SequenceInputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.input.SourceFile;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.log.Channel;
import org.holdproof.core.log.LogFault;
import org.holdproof.core.log.LogSettings;
import org.holdproof.core.log.ProbeLog;

/**
 * Reads a log in whatever layout a logger or a spreadsheet exports it, and never guesses: a unit, an order of day and
 * month, or a zone that neither the file nor the settings settle is an error that says what to add.
 *
 * <p>The file is read once, as a stream. A row takes 12 bytes and 8 for each channel, whatever the file's size.
 */
public final class LogReader {
    private static final int HEAD_BYTES = 1 << 17;

    private LogReader() {}

    /**
     * Reads a log from a file.
     *
     * @throws UnreadableInputException if it cannot be read as a log, or leaves open what must not be guessed
     * @throws IOException if the file cannot be opened or read
     */
    public static ProbeLog read(Path file, LogSettings settings) throws IOException, UnreadableInputException {
        String name = Optional.ofNullable(file.getFileName()).orElse(file).toString();
        try (InputStream bytes = Files.newInputStream(file)) {
            return read(name, bytes, settings);
        }
    }

    /**
     * Reads a log from memory.
     *
     * @throws UnreadableInputException if it cannot be read as a log, or leaves open what must not be guessed
     */
    public static ProbeLog read(SourceFile file, LogSettings settings) throws UnreadableInputException {
        try {
            return read(file.name(), file.stream(), settings);
        } catch (IOException impossible) {
            throw new IllegalStateException("reading from memory failed", impossible);
        }
    }

    /**
     * Reads a log from a stream, which is left open.
     *
     * @param fileName the name to give in messages and in {@link ProbeLog#fileName()}
     * @throws UnreadableInputException if it cannot be read as a log, or leaves open what must not be guessed
     * @throws IOException if the stream cannot be read
     */
    public static ProbeLog read(String fileName, InputStream bytes, LogSettings settings)
            throws IOException, UnreadableInputException {
        try {
            return readRefusing(fileName, bytes, settings);
        } catch (Refusal refusal) {
            throw refusal.in(fileName);
        }
    }

    private static ProbeLog readRefusing(String fileName, InputStream bytes, LogSettings settings) throws IOException {
        byte[] head = bytes.readNBytes(HEAD_BYTES);
        FileKind.requireText(head);
        Layout layout = Layout.of(text(head), settings);
        FaultLedger ledger = new FaultLedger();
        RowReader rows = new RowReader(layout, ledger);
        readRows(new SequenceInputStream(new ByteArrayInputStream(head), bytes), layout, rows);
        Columns columns = rows.columns();
        settleClock(columns, layout.clock(), rows.clock(), settings, ledger);

        ProbeLog unchecked = log(fileName, rows.channels(), columns, List.of());
        new ReadingChecks(unchecked, ledger).run();
        return log(fileName, rows.channels(), columns, ledger.faults());
    }

    private static ProbeLog log(String fileName, List<Channel> channels, Columns columns, List<LogFault> faults) {
        return new ProbeLog(
                fileName,
                channels,
                columns.rows(),
                columns.clockChunks(),
                columns.lineChunks(),
                columns.celsiusChunks(),
                faults);
    }

    /** The first lines; the last of them only if the file ends there. */
    private static String text(byte[] head) throws IOException {
        StringBuilder text = new StringBuilder(head.length);
        char[] buffer = new char[8192];
        try (Reader characters = new LogText(new ByteArrayInputStream(head))) {
            for (int count = characters.read(buffer); count >= 0; count = characters.read(buffer)) {
                text.append(buffer, 0, count);
            }
        }
        if (head.length == HEAD_BYTES) {
            int end = Math.max(text.lastIndexOf("\n"), text.lastIndexOf("\r"));
            text.setLength(end < 0 ? text.length() : end);
        }
        return text.toString();
    }

    // the caller closes its stream
    @SuppressWarnings("resource")
    private static void readRows(InputStream bytes, Layout layout, RowReader rows) throws IOException {
        LogText text = new LogText(bytes);
        CsvReader<Boolean> reader = CsvReader.builder()
                .fieldSeparator(layout.separator())
                .commentStrategy(CommentStrategy.NONE)
                .allowUnclosedQuote(true)
                .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                .build(rows, text);
        try {
            Iterator<Boolean> each = reader.iterator();
            while (each.hasNext()) {
                each.next();
            }
        } catch (CsvParseException failure) {
            if (failure.getCause() instanceof Refusal refusal) {
                throw refusal;
            }
            throw new Refusal(
                    rows.line(),
                    0,
                    "a row that cannot be divided into cells",
                    "cells closed by a quotation mark if they open with one, and nothing between it and the separator",
                    "Remove or close the stray quotation mark, or export the log again.");
        } catch (UncheckedIOException failure) {
            throw failure.getCause();
        }
        rows.finish(text.lastCharacter(), text.lastVisibleCharacter());
    }

    private static void settleClock(
            Columns columns, ClockPlan plan, ClockReader clock, LogSettings settings, FaultLedger ledger) {
        clock.settle(columns, settings.dateOrder());
        boolean local = !plan.kind().isElapsed() && !clock.isInstant();
        Chronology chronology = new Chronology(columns, ledger, plan.column() + 1);
        chronology.turnRound(local);
        if (local) {
            ZoneId zone = plan.zone()
                    .or(settings::zone)
                    .orElseThrow(() -> new Refusal(
                            columns.line(0),
                            plan.column() + 1,
                            "a clock without an offset from UTC",
                            "a time zone",
                            "Give it as \"kitchen.timeZone\" in the batch record, such as \"Europe/Oslo\"; or export the times"
                                    + " with their offset."));
            new LocalClock(columns, zone, ledger, plan.column() + 1).toInstants();
        } else if (plan.kind().isElapsed()) {
            long start = settings.start()
                    .orElseThrow(() -> new Refusal(
                            columns.line(0),
                            plan.column() + 1,
                            "an elapsed time",
                            "the instant it is counted from",
                            "Give it as \"log.start\" in the batch record, such as \"2031-05-06T18:00:00+02:00\"."))
                    .toEpochMilli();
            for (int row = 0; row < columns.rows(); row++) {
                columns.setClock(row, columns.clock(row) + start);
            }
        }
        chronology.order();
    }
}
