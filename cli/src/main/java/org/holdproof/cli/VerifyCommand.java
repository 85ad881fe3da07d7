package org.holdproof.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.holdproof.cli.terminal.Answer;
import org.holdproof.cli.terminal.Progress;
import org.holdproof.cli.terminal.Terminal;
import org.holdproof.core.Verification;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.verdict.AssessmentJson;
import org.holdproof.core.wording.Printable;
import org.holdproof.report.Report;
import org.holdproof.report.seal.SigningKey;
import org.holdproof.report.seal.TimestampService;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code holdproof verify}. */
@Command(
        name = "verify",
        header = "Judge a log and its batch record; write the report.",
        description = {
            "",
            "Reads the log (CSV of any common layout, °C or °F) and the batch record (JSON), judges them by the rules "
                    + "of the record's authority, and answers on one screen. A log that leaves open its unit, its day "
                    + "and month or its zone is refused with a word on what to add; nothing is guessed.",
            ""
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        abbreviateSynopsis = false,
        exitCodeListHeading = "%nExit code:%n",
        exitCodeList = {
            " 0:MET: even the worst reading of the record meets every limit.",
            " 1:NOT MET: even the best reading of the record misses a limit.",
            " 2:NOT PROVEN: the record does not settle it, or lacks what a rule needs.",
            "64:Usage: the command line asks for something that cannot be done.",
            "65:Unreadable: the log, the record, the tables or the key cannot be read.",
            "70:Internal: a fault of the program or of the disk under it."
        },
        footerHeading = "%n",
        footer = {
            "Example: holdproof verify cook.csv --batch cook.json --pdf cook.pdf --key kitchen.p12",
            "",
            "Decision support. Your local authority's code and your approved HACCP plan govern. Food that is NOT MET "
                    + "or NOT PROVEN is not served on this tool's word."
        })
final class VerifyCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(
            paramLabel = "LOG",
            arity = "1..*",
            description = "The probe's log; several where the record lists several.")
    private List<Path> logs = List.of();

    @Option(
            names = "--batch",
            required = true,
            paramLabel = "FILE",
            description = "The batch record: what was cooked, in which stages, under which authority.")
    private Path batch = Path.of("");

    @Option(names = "--pdf", paramLabel = "OUT", description = "Write the report here.")
    private Optional<Path> pdf = Optional.empty();

    @Option(names = "--json", paramLabel = "OUT", description = "Write the assessment as JSON here.")
    private Optional<Path> json = Optional.empty();

    @Option(
            names = "--replace",
            description =
                    "Write also over a sealed report that would be lost: another batch's, or by an unsealed file.")
    private boolean replace;

    @Option(names = "--all", description = "Answer with every check, on as many lines as it takes.")
    private boolean all;

    @Mixin
    private KeyOptions key = new KeyOptions();

    @Mixin
    private JudgingOptions judging = new JudgingOptions();

    VerifyCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws Exception {
        List<Path> inputs = new ArrayList<>(logs);
        inputs.add(batch);
        key.files().forEach(inputs::add);
        Optional<OutputFile> report =
                pdf.isPresent() ? Optional.of(OutputFile.at(pdf.get(), inputs)) : Optional.empty();
        pdf.ifPresent(inputs::add);
        Optional<OutputFile> figures =
                json.isPresent() ? Optional.of(OutputFile.at(json.get(), inputs)) : Optional.empty();
        if (report.isEmpty() && key.file().isPresent()) {
            throw Refusal.usage("--key seals a report: say with --pdf where to write it");
        }
        Optional<TimestampService> timestamps = key.timestamps();

        RuleLibrary library = judging.library();
        Instant now = Instant.now();
        List<String> written = new ArrayList<>();
        Verification verification;
        try (Progress progress = new Progress(terminal)) {
            progress.now("reading " + InputFile.names(logs));
            verification = Verification.of(InputFile.logs(logs), InputFile.record(batch), judging.answers(), library);
            Optional<SigningKey> signer = Optional.empty();
            if (report.isPresent()) {
                progress.wipe();
                signer = key.open(terminal, now);
                if (!replace) {
                    Optional<String> batchId = Optional.of(verification.batch().batch());
                    StandingReport.checkReplaced(report.get().path(), signer.isPresent() ? batchId : Optional.empty());
                }
                progress.now("writing the report");
                report.get().write(Report.write(verification, signer, timestamps, RuleLibrary.builtIn(), now));
                written.add(
                        (signer.isPresent() ? "Report: " : "Report, UNSEALED (no --key; it proves nothing to others): ")
                                + report.get().path());
            }
            if (figures.isPresent()) {
                if (!replace) {
                    StandingReport.checkReplaced(figures.get().path(), Optional.empty());
                }
                figures.get().write(AssessmentJson.write(verification.assessment()));
                written.add("Figures: " + figures.get().path());
            }
        }
        if (!library.edition().equals(RuleLibrary.builtIn().edition())) {
            written.add("Site's own limits: the tables are not all the published ones; the report lists which differ.");
        }
        String read = Printable.line(String.join("; ", verification.logs().summaries()));
        written.add(0, read.length() > terminal.width() ? read.substring(0, terminal.width() - 1) + "…" : read);
        PrintWriter out = terminal.out();
        new Answer(verification.assessment(), verification.log(), written)
                .lines(terminal.width(), all, terminal.unicode(), terminal.colour())
                .forEach(out::println);
        out.flush();
        return ExitCode.of(verification.assessment().verdict());
    }
}
