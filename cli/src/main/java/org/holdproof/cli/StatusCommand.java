package org.holdproof.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.holdproof.cli.terminal.ScreenCode;
import org.holdproof.cli.terminal.StandingAnswer;
import org.holdproof.cli.terminal.Terminal;
import org.holdproof.core.Verification;
import org.holdproof.core.batch.BatchReader;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.course.ColumnMissingException;
import org.holdproof.core.course.CookLogs;
import org.holdproof.core.input.SourceFile;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.rules.AuthorityProfile;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.standing.Remedies;
import org.holdproof.core.standing.Standing;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code holdproof status}. */
@Command(
        name = "status",
        header = "Say where a cook under way stands.",
        description = {
            "",
            "Reads a log that may still be growing and its batch record, and says on one screen what is proven "
                    + "already, what is still needed, how long at the present temperature, by when the next limit "
                    + "falls, what is lost, and what the documents allow now. A stage without an end in the record, "
                    + "or with one still to come, is under way; the present is the log's last whole line.",
            ""
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        abbreviateSynopsis = false,
        exitCodeListHeading = "%nExit code:%n",
        exitCodeList = {
            " 0:Everything so far is proven or kept, and no limit is lost.",
            " 1:A limit has run out, or was not kept.",
            " 2:Something is still needed, or cannot be proven.",
            "64:Usage: the command line asks for something that cannot be done.",
            "65:Unreadable: the log, the record or the tables cannot be read.",
            "70:Internal: a fault of the program or of the disk under it."
        },
        footerHeading = "%n",
        footer = {
            "Example: holdproof status cook.csv --batch cook.json --follow --every \"30 s\"",
            "",
            "Decision support. Your local authority's code and your approved HACCP plan govern. A cook under way is "
                    + "judged by \"holdproof verify\" when it is over; until then nothing is served on this tool's word."
        })
final class StatusCommand implements Callable<Integer> {
    /** How often an unreadable log is looked at in vain before it is given up. */
    private static final int PATIENCE = 30;

    private final Terminal terminal;

    @Parameters(
            paramLabel = "LOG",
            arity = "1..*",
            description = "The probe's log, as far as it is written; several where the record lists several.")
    private List<Path> logs = List.of();

    @Option(
            names = "--batch",
            required = true,
            paramLabel = "FILE",
            description = "The batch record: what is being cooked, in which stages, under which authority.")
    private Path batch = Path.of("");

    @Option(
            names = "--follow",
            description = "Say it again whenever the log or the record has changed, until the record's last stage is "
                    + "over or Ctrl-C is pressed.")
    private boolean follow;

    @Option(
            names = "--every",
            paramLabel = "TIME",
            description = "With --follow, look for changes this often, from 1 s to 60 min (otherwise every 10 s).")
    private Optional<String> every = Optional.empty();

    @Mixin
    private JudgingOptions judging = new JudgingOptions();

    StatusCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    private record Read(ProbeLog log, Standing standing) {}

    @Override
    public Integer call() throws Exception {
        Duration look = Watch.every(every.orElse("10 s"));
        if (every.isPresent() && !follow) {
            throw Refusal.usage("--every says how often --follow looks: add --follow");
        }
        RuleLibrary library = judging.library();
        return follow ? follow(library, look) : show(read(library), library, false);
    }

    private int follow(RuleLibrary library, Duration look) throws Exception {
        Watch watch = new Watch(Stream.concat(logs.stream(), Stream.of(batch)).toList(), look);
        Read first = firstReading(library, watch);
        int exitCode = show(first, library, true);
        Standing standing = first.standing();
        try {
            while (!standing.isOver()) {
                if (!watch.waitForChange(looksToSilence(standing, watch))) {
                    say("the log has not grown for longer than a gap may last: look at the logger");
                    watch.waitForChange(Integer.MAX_VALUE);
                }
                try {
                    Read next = read(library);
                    standing = next.standing();
                    exitCode = show(next, library, true);
                } catch (UnreadableInputException | ColumnMissingException | Refusal | IOException unreadable) {
                    say(unreadable.getMessage() + " Still waiting for it to change.");
                }
            }
        } catch (InterruptedException ended) {
            Thread.currentThread().interrupt();
        }
        return exitCode;
    }

    /** A log just begun may hold too few rows to be read: it is waited for, but not for ever. */
    private Read firstReading(RuleLibrary library, Watch watch) throws Exception {
        while (true) {
            try {
                return read(library);
            } catch (UnreadableInputException tooEarly) {
                if (logs.stream().noneMatch(log -> tooEarly.place().file().equals(InputFile.name(log)))) {
                    throw tooEarly;
                }
                say(tooEarly.getMessage() + " Waiting for more.");
                if (!watch.waitForChange(PATIENCE)) {
                    throw tooEarly;
                }
            }
        }
    }

    private static int looksToSilence(Standing standing, Watch watch) {
        double minutes = standing.assessment().record().gapLimitMinutes();
        return (int) Math.ceil(minutes * 60_000 / watch.every().toMillis());
    }

    private Read read(RuleLibrary library)
            throws Refusal, IOException, UnreadableInputException, ColumnMissingException {
        SourceFile file = judging.answers().writtenInto(InputFile.record(batch));
        BatchRecord record = BatchReader.parse(file.name(), file.bytes());
        AuthorityProfile profile = Verification.authority(file.name(), record, library);
        List<SourceFile> grown = new ArrayList<>();
        for (Path log : logs) {
            InputFile.checkReadable(log);
            grown.add(GrowingLog.read(log));
        }
        CookLogs readings = Verification.read(Verification.inOrder(grown, file.name(), record), file.name(), record);
        return new Read(readings.joined(), Standing.of(readings, profile, library));
    }

    private int show(Read read, RuleLibrary library, boolean again) {
        PrintWriter out = terminal.out();
        boolean redraw = again && terminal.colour();
        out.print(redraw ? ScreenCode.CLEAR_SCREEN.toString() : "");
        new StandingAnswer(read.standing(), read.log(), Remedies.of(read.standing(), library))
                .lines(terminal.unicode(), terminal.colour())
                .forEach(out::println);
        if (again && !redraw) {
            out.println();
        }
        out.flush();
        return ExitCode.of(read.standing().verdict());
    }

    private void say(String message) {
        terminal.err().println("holdproof: " + message);
        terminal.err().flush();
    }
}
