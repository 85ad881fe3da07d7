package org.holdproof.core.log.reading;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.holdproof.core.input.SourceFile;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.log.Channel;
import org.holdproof.core.log.DateOrder;
import org.holdproof.core.log.LogContents;
import org.holdproof.core.log.LogFault;
import org.holdproof.core.log.LogSettings;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.log.reading.SectionReader.Section;
import org.holdproof.core.quantity.TemperatureUnit;

/**
 * Reads a log in whatever layout a logger or a spreadsheet exports it, and never guesses: a unit, an order of day and
 * month, or a zone that neither the file nor the settings settle is an error that says what to add; all such questions
 * come in one message.
 *
 * <p>A second row of headings opens a section of its own, whose columns are joined with the others by name. A row takes 12
 * bytes and 8 for each channel besides the file itself.
 */
public final class LogReader {
    private static final int HEAD_BYTES = 1 << 17;

    /** What whole degrees in both scales may differ by, in °C, with a little to spare. */
    private static final double MOST_ROUNDING = 0.85;

    private LogReader() {}

    /**
     * Reads a log from a file.
     *
     * @throws UnreadableInputException if it cannot be read as a log, or leaves open what must not be guessed
     * @throws IOException if the file cannot be opened or read
     */
    public static ProbeLog read(Path file, LogSettings settings) throws IOException, UnreadableInputException {
        String name = Optional.ofNullable(file.getFileName()).orElse(file).toString();
        return read(name, Files.readAllBytes(file), settings);
    }

    /**
     * Reads a log from memory.
     *
     * @throws UnreadableInputException if it cannot be read as a log, or leaves open what must not be guessed
     */
    public static ProbeLog read(SourceFile file, LogSettings settings) throws UnreadableInputException {
        return read(file.name(), file.bytes(), settings);
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
        return read(fileName, bytes.readAllBytes(), settings);
    }

    private static ProbeLog read(String fileName, byte[] bytes, LogSettings settings) throws UnreadableInputException {
        byte[] text = bytes;
        try {
            text = SheetText.of(bytes).orElse(bytes);
            return readRefusing(fileName, text, settings);
        } catch (Refusal refusal) {
            throw (refusal.asks().isPresent() ? allQuestions(fileName, text, settings, refusal) : refusal).in(fileName);
        } catch (IOException impossible) {
            throw new IllegalStateException("reading from memory failed", impossible);
        }
    }

    /** What else the file leaves open, found by answering one question after another for the time being. */
    private static Refusal allQuestions(String fileName, byte[] bytes, LogSettings settings, Refusal first) {
        List<Refusal> questions = new ArrayList<>();
        LogSettings answered = settings;
        Optional<Refusal> next = Optional.of(first);
        while (next.isPresent() && questions.size() < Refusal.Question.values().length) {
            Refusal.Question asked = next.get().asks().orElseThrow();
            questions.add(next.get());
            next = Optional.empty();
            for (LogSettings attempt : answers(answered, asked)) {
                try {
                    readRefusing(fileName, bytes, attempt);
                    break;
                } catch (Refusal refusal) {
                    if (refusal.asks().isPresent()) {
                        answered = attempt;
                        next = Optional.of(refusal);
                        break;
                    }
                } catch (IOException impossible) {
                    throw new IllegalStateException("reading from memory failed", impossible);
                }
            }
        }
        return Refusal.all(questions);
    }

    private static List<LogSettings> answers(LogSettings settings, Refusal.Question asked) {
        Optional<TemperatureUnit> unit =
                asked == Refusal.Question.UNIT ? Optional.of(TemperatureUnit.CELSIUS) : settings.unit();
        Optional<ZoneId> zone = asked == Refusal.Question.ZONE ? Optional.of(ZoneOffset.UTC) : settings.zone();
        Optional<Instant> start = asked == Refusal.Question.START ? Optional.of(Instant.EPOCH) : settings.start();
        List<Optional<DateOrder>> orders = asked == Refusal.Question.DATES
                ? Arrays.stream(DateOrder.values()).map(Optional::of).toList()
                : List.of(settings.dateOrder());
        return orders.stream()
                .map(order -> new LogSettings(unit, settings.units(), order, zone, start, settings.date()))
                .toList();
    }

    private static ProbeLog readRefusing(String fileName, byte[] bytes, LogSettings settings) throws IOException {
        FileKind.requireText(Arrays.copyOf(bytes, Math.min(bytes.length, HEAD_BYTES)));
        FaultLedger ledger = new FaultLedger();
        List<Section> sections = sections(bytes, settings, ledger);
        requireReadings(sections);
        Joined joined = sections.size() == 1
                ? new Joined(sections.get(0).columns(), sections.get(0).channels())
                : join(sections);
        int clockColumn = sections.get(0).clockColumn();
        new Chronology(joined.columns(), ledger, clockColumn).order();
        for (Section section : sections) {
            requireOneProbeInBothScales(section);
        }
        LogContents contents = new LogContents(
                fileName,
                sections.stream().mapToLong(Section::rowsSeen).sum(),
                joined.columns().rows(),
                ledger.leftOut());
        ProbeLog unchecked = log(fileName, joined, List.of(), contents);
        new ReadingChecks(unchecked, ledger).run();
        return log(fileName, joined, ledger.faults(), contents);
    }

    private record Joined(Columns columns, List<Channel> channels) {}

    private static List<Section> sections(byte[] bytes, LogSettings settings, FaultLedger ledger) throws IOException {
        Layout layout = new SectionReader(new LogBytes(bytes), settings, ledger).layout(1);
        if (layout.labels().isEmpty()) {
            return SectionReader.all(bytes, settings, ledger);
        }
        Map<String, String> texts = LabelColumn.apart(lines(bytes), layout);
        if (texts.size() < 2) {
            return SectionReader.all(bytes, settings, ledger);
        }
        List<Section> sections = new ArrayList<>();
        for (Map.Entry<String, String> labelled : texts.entrySet()) {
            for (Section section :
                    SectionReader.all(labelled.getValue().getBytes(StandardCharsets.UTF_8), settings, ledger)) {
                List<Channel> channels = section.channels().stream()
                        .map(channel -> new Channel(
                                LabelColumn.name(
                                        labelled.getKey(),
                                        channel.name(),
                                        section.channels().size()),
                                labelled.getKey(),
                                channel.column(),
                                channel.unit()))
                        .toList();
                sections.add(new Section(
                        section.layout(),
                        section.columns(),
                        channels,
                        section.rowsSeen(),
                        section.elapsed(),
                        section.hasFigures(),
                        0));
            }
        }
        return sections;
    }

    private static List<String> lines(byte[] bytes) throws IOException {
        StringBuilder text = new StringBuilder();
        char[] buffer = new char[8192];
        try (Reader characters = new LogText(new ByteArrayInputStream(bytes))) {
            for (int count = characters.read(buffer); count >= 0; count = characters.read(buffer)) {
                text.append(buffer, 0, count);
            }
        }
        return List.of(text.toString().split("\r\n|\n|\r", -1));
    }

    private static void requireReadings(List<Section> sections) {
        int rows =
                sections.stream().mapToInt(section -> section.columns().rows()).sum();
        if (rows < 2) {
            throw new Refusal(
                    0,
                    0,
                    rows == 0 ? "no row of readings" : "a single row of readings",
                    "at least two rows, so that there is time between readings",
                    "Export the whole log.");
        }
        if (sections.stream().noneMatch(Section::hasFigures)) {
            throw new Refusal(
                    0,
                    sections.get(0).layout().channels().get(0).column() + 1,
                    "no figure in any temperature column",
                    "temperatures",
                    "Check that the probes were connected, and export the log again.");
        }
    }

    /** The sections one after another, their columns joined by name. */
    private static Joined join(List<Section> all) {
        List<Section> sections = all.stream()
                .filter(section -> section.columns().rows() > 0)
                .sorted(Comparator.comparingLong(section -> section.columns().clock(0)))
                .toList();
        Map<String, Integer> places = new HashMap<>();
        List<Channel> channels = new ArrayList<>();
        Optional<Section> counted = Optional.empty();
        for (Section section : sections) {
            if (section.elapsed() && !section.layout().labels().isPresent()) {
                if (counted.isPresent()) {
                    throw SectionReader.restarted(section.columns().line(0), section.clockColumn());
                }
                counted = Optional.of(section);
            }
            requireNamesOfTheirOwn(section);
            for (Channel channel : section.channels()) {
                if (places.putIfAbsent(channel.name().toLowerCase(Locale.ROOT), channels.size()) == null) {
                    channels.add(channel);
                }
            }
        }
        if (channels.size() > Layout.MOST_CHANNELS) {
            throw new Refusal(
                    0,
                    0,
                    channels.size() + " temperature columns in all sections",
                    "at most " + Layout.MOST_CHANNELS,
                    "Leave out the columns that do not belong to this batch.");
        }
        record Row(Section section, int row) {
            long clock() {
                return section.columns().clock(row);
            }
        }
        List<Row> rows = new ArrayList<>();
        for (Section section : sections) {
            for (int row = 0; row < section.columns().rows(); row++) {
                rows.add(new Row(section, row));
            }
        }
        if (sections.stream().anyMatch(section -> section.layout().labels().isPresent())) {
            // probes listed one below the other were read together
            rows.sort(Comparator.comparingLong(Row::clock));
        }
        Columns columns = new Columns(channels.size());
        double[] readings = new double[channels.size()];
        for (Row row : rows) {
            Columns part = row.section().columns();
            Arrays.fill(readings, Double.NaN);
            for (int channel = 0; channel < part.channels(); channel++) {
                String name = row.section().channels().get(channel).name().toLowerCase(Locale.ROOT);
                readings[places.getOrDefault(name, 0)] = part.celsius(channel, row.row());
            }
            columns.add(row.clock(), part.line(row.row()), readings);
        }
        return new Joined(columns, channels);
    }

    /** Columns told apart by their numbers cannot be followed from one section into another. */
    private static void requireNamesOfTheirOwn(Section section) {
        for (Channel channel : section.channels()) {
            if (channel.name().matches("(?s).*\\(column \\d+\\)|column \\d+")) {
                throw new Refusal(
                        section.columns().line(0),
                        channel.column(),
                        "several rows of headings, and " + Refusal.quote(channel.heading()) + " more than once in one",
                        "a name of its own for each column",
                        "Give the columns different headings in the logger, or cut the file into one log for each row of"
                                + " headings.");
            }
        }
    }

    /** Holds two columns that show one probe in both scales against one another. */
    private static void requireOneProbeInBothScales(Section section) {
        for (int[] pair : section.layout().pairs()) {
            String one = section.channels().get(pair[0]).name();
            String other = section.channels().get(pair[1]).name();
            for (int row = 0; row < section.columns().rows(); row++) {
                double difference = section.columns().celsius(pair[0], row)
                        - section.columns().celsius(pair[1], row);
                if (Math.abs(difference) > MOST_ROUNDING) {
                    throw new Refusal(
                            section.columns().line(row),
                            section.channels().get(pair[1]).column(),
                            Refusal.quote(one) + " and " + Refusal.quote(other)
                                    + ", one heading in two scales, whose figures are not the same temperature",
                            "one probe in °C and in °F",
                            "Correct the headings: one of the scales is wrong, or they are two probes and need two names.");
                }
            }
        }
    }

    private static ProbeLog log(String fileName, Joined joined, List<LogFault> faults, LogContents contents) {
        Columns columns = joined.columns();
        return new ProbeLog(
                fileName,
                joined.channels(),
                columns.rows(),
                columns.clockChunks(),
                columns.lineChunks(),
                columns.celsiusChunks(),
                faults,
                List.of(contents));
    }
}
