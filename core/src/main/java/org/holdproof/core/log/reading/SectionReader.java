package org.holdproof.core.log.reading;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import org.holdproof.core.log.Channel;
import org.holdproof.core.log.LogSettings;

/** Reads a log from one row of headings to the next, or to its end. */
final class SectionReader {
    /** How much of a section settles its layout, in characters. */
    private static final int HEAD = 1 << 17;

    private static final int MOST_SECTIONS = 500;

    private final LogBytes bytes;
    private final LogSettings settings;
    private final FaultLedger ledger;

    SectionReader(LogBytes bytes, LogSettings settings, FaultLedger ledger) {
        this.bytes = bytes;
        this.settings = settings;
        this.ledger = ledger;
    }

    /**
     * One section as read.
     *
     * @param columns its rows, the clock in milliseconds since 1970-01-01T00:00Z
     * @param rowsSeen how many rows below its headings say something
     * @param elapsed whether its clock counts from a start
     * @param next the line at which the next section begins, or 0
     */
    record Section(
            Layout layout,
            Columns columns,
            List<Channel> channels,
            long rowsSeen,
            boolean elapsed,
            boolean hasFigures,
            long next) {

        /** Its clock's column, counted from 1. */
        int clockColumn() {
            return layout.clock().column() + 1;
        }
    }

    /** The layout from a line on. */
    Layout layout(long line) throws IOException {
        try (Reader text = bytes.from(line)) {
            return Layout.of(wholeLines(head(text)), settings);
        } catch (Refusal refusal) {
            throw refusal.below(line - 1);
        }
    }

    /** Reads from a line on. */
    Section read(long line) throws IOException {
        try (LogText text = bytes.from(line)) {
            String head = head(text);
            Layout layout;
            try {
                layout = Layout.of(wholeLines(head), settings);
            } catch (Refusal refusal) {
                throw refusal.below(line - 1);
            }
            RowReader rows = new RowReader(layout, ledger, line - 1, this::startsSection);
            readRows(new HeadFirst(head, text), layout, rows);
            rows.finish(text.lastCharacter(), text.lastVisibleCharacter());
            if (rows.columns().rows() > 0) {
                settleClock(rows.columns(), layout.clock(), rows.clock());
            }
            return new Section(
                    layout,
                    rows.columns(),
                    rows.channels(),
                    rows.rowsSeen(),
                    layout.clock().kind().isElapsed(),
                    rows.hasFigures(),
                    rows.nextSection());
        }
    }

    private boolean startsSection(long line) throws IOException {
        List<String> lines = bytes.linesAt(line);
        return !lines.isEmpty() && SectionHeading.isOne(lines.get(0));
    }

    private static String head(Reader text) throws IOException {
        char[] buffer = new char[HEAD];
        int filled = 0;
        for (int count = 0; count >= 0 && filled < HEAD; filled += Math.max(count, 0)) {
            count = text.read(buffer, filled, HEAD - filled);
        }
        return new String(buffer, 0, filled);
    }

    /** The lines that are whole; all of them where the text ends. */
    private static String wholeLines(String head) {
        if (head.length() < HEAD) {
            return head;
        }
        int end = Math.max(head.lastIndexOf('\n'), head.lastIndexOf('\r'));
        return end < 0 ? head : head.substring(0, end);
    }

    private static void readRows(Reader text, Layout layout, RowReader rows) throws IOException {
        CsvReader<Boolean> reader = CsvReader.builder()
                .fieldSeparator(layout.separator())
                .commentStrategy(CommentStrategy.NONE)
                .allowUnclosedQuote(true)
                .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                .build(rows, text);
        try {
            Iterator<Boolean> each = reader.iterator();
            while (rows.nextSection() == 0 && each.hasNext()) {
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
    }

    private void settleClock(Columns columns, ClockPlan plan, ClockReader clock) {
        clock.settle(columns, settings.dateOrder());
        boolean local = !plan.kind().isElapsed() && !clock.isInstant();
        new Chronology(columns, ledger, plan.column() + 1).turnRound(local);
        if (local) {
            ZoneId zone = plan.zone()
                    .or(settings::zone)
                    .orElseThrow(() -> Refusal.question(
                            Refusal.Question.ZONE,
                            columns.line(0),
                            plan.column() + 1,
                            "a clock without an offset from UTC",
                            "a time zone",
                            "Give it as \"kitchen.timeZone\" in the batch record, such as \"Europe/Oslo\"; or export the times"
                                    + " with their offset."));
            new LocalClock(columns, zone, ledger, plan.column() + 1).toInstants();
        } else if (plan.kind().isElapsed()) {
            requireOneRun(columns, plan);
            long start = settings.start()
                    .orElseThrow(() -> Refusal.question(
                            Refusal.Question.START,
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
    }

    /** A counter that starts again was begun at an instant nobody knows. */
    private static void requireOneRun(Columns columns, ClockPlan plan) {
        for (int row = 1; row < columns.rows(); row++) {
            if (columns.clock(row) < columns.clock(row - 1)) {
                throw restarted(columns.line(row), plan.column() + 1);
            }
        }
    }

    static Refusal restarted(long line, int column) {
        return new Refusal(
                line,
                column,
                "an elapsed time that starts again",
                "one run, counted from one start",
                "Cut the file there into two logs, each with the headings, and list both under \"logs\" in the batch record,"
                        + " each with the \"start\" of its own.");
    }

    /** Characters already read, then the rest. */
    private static final class HeadFirst extends Reader {
        private final String head;
        private final Reader rest;
        private int at;

        HeadFirst(String head, Reader rest) {
            this.head = head;
            this.rest = rest;
        }

        @Override
        public int read(char[] target, int offset, int length) throws IOException {
            if (at < head.length()) {
                int count = Math.min(length, head.length() - at);
                head.getChars(at, at + count, target, offset);
                at += count;
                return count;
            }
            return rest.read(target, offset, length);
        }

        @Override
        public void close() throws IOException {
            rest.close();
        }
    }

    /** The sections of a text, one after another. */
    static List<Section> all(byte[] bytes, LogSettings settings, FaultLedger ledger) throws IOException {
        SectionReader reader = new SectionReader(new LogBytes(bytes), settings, ledger);
        List<Section> sections = new ArrayList<>();
        long line = 1;
        do {
            Section section = reader.read(line);
            if (section.next() > 0 && sections.size() >= MOST_SECTIONS) {
                throw new Refusal(
                        section.next(),
                        0,
                        "more than " + MOST_SECTIONS + " rows of headings",
                        "a log with one, or a few",
                        "Split the file.");
            }
            sections.add(section);
            line = section.next();
        } while (line > 0);
        return sections;
    }
}
