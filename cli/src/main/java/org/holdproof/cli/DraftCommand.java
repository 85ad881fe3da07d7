package org.holdproof.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.holdproof.cli.terminal.Terminal;
import org.holdproof.core.batch.ColumnRole;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.course.DraftRecord;
import org.holdproof.core.course.StageProposal;
import org.holdproof.core.input.SourceFile;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.log.Channel;
import org.holdproof.core.log.DateOrder;
import org.holdproof.core.log.GapLimit;
import org.holdproof.core.log.LogFault;
import org.holdproof.core.log.LogSettings;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.log.Trace;
import org.holdproof.core.log.reading.LogReader;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.wording.Printable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code holdproof draft}. */
@Command(
        name = "draft",
        header = "Say what is in a log and begin its batch record.",
        description = {
            "",
            "Reads the logs of a cook, says in plain words what is in them, proposes the stages from the curves and "
                    + "writes a batch record with every member. What a log cannot say stays a question in it, and so "
                    + "does every proposal, until somebody writes the answer in its place; verify refuses it till then.",
            ""
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        abbreviateSynopsis = false,
        exitCodeListHeading = "%nExit code:%n",
        exitCodeList = {
            " 0:The draft is written.",
            "64:Usage: the command line asks for something that cannot be done.",
            "65:Unreadable: a log cannot be read, or leaves open what must not be guessed.",
            "70:Internal: a fault of the program or of the disk under it."
        },
        footerHeading = "%n",
        footer = {
            "Example: holdproof draft smoker.csv bath.csv --out cook.json",
            "",
            "A proposal is a guess from curves. Only who was there knows what was done."
        })
final class DraftCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(paramLabel = "LOG", arity = "1..*", description = "The probes' logs.")
    private List<Path> logs = List.of();

    @Option(names = "--out", paramLabel = "FILE", description = "Write the record here; to the screen otherwise.")
    private Optional<Path> out = Optional.empty();

    @Option(
            names = "--unit",
            paramLabel = "C|F",
            description = "The logs' temperatures are in °C or °F, where a file does not say.")
    private Optional<JudgingOptions.LogUnit> unit = Optional.empty();

    @Option(
            names = "--dates",
            paramLabel = "dmy|mdy|ymd",
            description = "The order of day, month and year, where a file does not settle it.")
    private Optional<JudgingOptions.LogDates> dates = Optional.empty();

    DraftCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws Exception {
        Optional<OutputFile> file = out.isPresent() ? Optional.of(OutputFile.at(out.get(), logs)) : Optional.empty();
        List<ProbeLog> read = new ArrayList<>();
        boolean local = false;
        for (SourceFile log : InputFile.logs(logs)) {
            try {
                read.add(LogReader.read(log, settings(false)));
            } catch (UnreadableInputException open) {
                read.add(LogReader.read(log, settings(true)));
                local = true;
            }
        }
        DraftRecord draft = DraftRecord.of(read, local);
        PrintWriter screen = terminal.out();
        for (ProbeLog log : read) {
            contents(log, draft).forEach(line -> screen.println(Printable.line(line)));
        }
        screen.println(draft.stages().isEmpty() ? "No stage can be told from the curves." : "Stages, to be confirmed:");
        for (StageProposal stage : draft.stages()) {
            screen.println(Printable.line(line(stage, draft)));
        }
        if (file.isPresent()) {
            file.get().write(draft.json());
            screen.println("Draft: " + file.get().path() + ". Answer its questions, then: holdproof verify.");
        } else {
            screen.println(new String(draft.json(), StandardCharsets.UTF_8));
        }
        screen.flush();
        return 0;
    }

    /** A clock without a zone is read as it stands: the record writes it without one again. */
    private LogSettings settings(boolean asItStands) {
        return new LogSettings(
                unit.map(letter ->
                        letter == JudgingOptions.LogUnit.C ? TemperatureUnit.CELSIUS : TemperatureUnit.FAHRENHEIT),
                dates.map(order -> switch (order) {
                    case dmy -> DateOrder.DAY_MONTH_YEAR;
                    case mdy -> DateOrder.MONTH_DAY_YEAR;
                    case ymd -> DateOrder.YEAR_MONTH_DAY;
                }),
                asItStands ? Optional.of(ZoneOffset.UTC) : Optional.empty(),
                Optional.empty());
    }

    private static List<String> contents(ProbeLog log, DraftRecord draft) {
        List<String> lines = new ArrayList<>();
        lines.add(log.fileName() + ": " + log.rows() + " rows, " + draft.time(log.millis(0)) + " to "
                + draft.time(log.millis(log.rows() - 1)));
        for (int i = 0; i < log.channels().size(); i++) {
            Channel channel = log.channels().get(i);
            Trace trace = log.trace(i);
            double low = Double.POSITIVE_INFINITY;
            double high = Double.NEGATIVE_INFINITY;
            for (int reading = 0; reading < trace.size(); reading++) {
                low = Math.min(low, trace.celsius(reading));
                high = Math.max(high, trace.celsius(reading));
            }
            TemperatureUnit shown = channel.unit();
            lines.add(String.format(
                    Locale.ROOT,
                    "  %s (%s): %s%s",
                    channel.name(),
                    DraftRecord.role(channel).map(ColumnRole::title).orElse("what it measured is a question"),
                    trace.isEmpty()
                            ? "no reading"
                            : String.format(
                                    Locale.ROOT,
                                    "%.1f to %.1f %s, a reading every %.1f min",
                                    shown.fromCelsius(low),
                                    shown.fromCelsius(high),
                                    shown.symbol(),
                                    GapLimit.medianMinutes(trace)),
                    holes(log, channel)));
        }
        return lines;
    }

    private static String holes(ProbeLog log, Channel channel) {
        long holes = log.faults().stream()
                .filter(fault ->
                        fault.kind() == LogFault.Kind.GAP && fault.channel().equals(channel.name()))
                .count();
        return holes == 0 ? "" : ", " + holes + (holes == 1 ? " hole" : " holes");
    }

    private static String line(StageProposal stage, DraftRecord draft) {
        String when = stage.kind() == Stage.Kind.BAG
                ? draft.time(stage.fromMillis())
                : draft.time(stage.fromMillis()) + " to " + draft.time(stage.toMillis());
        return "  " + stage.kind().title() + " " + when + ": "
                + stage.sureness().title() + ", " + stage.why();
    }
}
