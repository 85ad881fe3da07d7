package org.holdproof.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Instant;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.holdproof.cli.demo.DemoBatch;
import org.holdproof.cli.demo.DemoKitchen;
import org.holdproof.cli.terminal.Answer;
import org.holdproof.cli.terminal.Progress;
import org.holdproof.cli.terminal.Terminal;
import org.holdproof.cli.terminal.VerdictMark;
import org.holdproof.core.Verification;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.verdict.AssessmentJson;
import org.holdproof.report.Rechecked;
import org.holdproof.report.Report;
import org.holdproof.report.seal.NewSigningKey;
import org.holdproof.report.seal.SigningKey;
import org.holdproof.report.seal.UnusableKeyException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code holdproof demo}. */
@Command(
        name = "demo",
        header = "Make four simulated batches, judge them, and write their sealed reports.",
        description = {
            "",
            "An invented kitchen in February 2031: brisket smoked, bagged and chilled; a bath too low; a late chill; a "
                    + "logger that fell silent. Logs, batch records, figures and reports are written into DIR, and every "
                    + "report is rechecked.",
            ""
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        exitCodeListHeading = "%nExit code:%n",
        exitCodeList = {
            " 0:The reports were written and come out intact.",
            "64:Usage: DIR holds something else than a demo, or cannot be written.",
            "70:Internal: a fault of the program or of the disk under it."
        },
        footerHeading = "%n",
        footer = "Simulated data, a throw-away key: nothing of it is evidence of anything.")
final class DemoCommand implements Callable<Integer> {
    private static final String MARK = "ABOUT-THIS-DEMO.txt";
    private static final String KEY = "demo-key.p12";
    private static final String PASSPHRASE = "demo-key.passphrase.txt";
    private static final int PASSPHRASE_BYTES = 16;

    private final Terminal terminal;

    @Parameters(
            arity = "0..1",
            paramLabel = "DIR",
            defaultValue = "holdproof-demo",
            description = "The folder to write in (default: ./${DEFAULT-VALUE}); made where it does not exist.")
    private Path folder = Path.of("");

    DemoCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws Exception {
        prepare();
        Instant now = DemoKitchen.SEALED_AT;
        PrintWriter out = terminal.out();
        try (Progress progress = new Progress(terminal)) {
            progress.now("making a key");
            SigningKey key = key(now);
            RuleLibrary library = RuleLibrary.builtIn();
            progress.now("simulating four cooks");
            for (DemoBatch batch : DemoKitchen.batches()) {
                Path log = write(batch.logFile(), batch.log());
                Path record = write(batch.recordFile(), batch.record());
                Verification verification =
                        Verification.of(InputFile.logs(List.of(log)), InputFile.record(record), library);
                progress.now("writing " + batch.name() + ".pdf");
                byte[] report = Report.write(verification, key, now);
                Path pdf = folder.resolve(batch.name() + ".pdf");
                OutputFile.at(pdf, List.of(log, record)).write(report);
                OutputFile.at(folder.resolve(batch.name() + ".json"), List.of(log, record))
                        .write(AssessmentJson.write(verification.assessment()));
                progress.now("rechecking " + batch.name() + ".pdf");
                recheck(pdf);
                progress.wipe();
                out.println(VerdictMark.of(verification.assessment().verdict(), terminal.unicode(), terminal.colour())
                        + ": " + batch.story());
                out.println("    " + pdf.toAbsolutePath().normalize());
                out.flush();
            }
        }
        out.println();
        out.println("Each report was rechecked: sealed, unchanged, every figure the same. Do it yourself:");
        out.println("  holdproof recheck \"" + folder.resolve("1-smoked-then-bagged.pdf") + "\"");
        out.println("And judge one on this screen:");
        out.println("  holdproof verify \"" + folder.resolve("3-late-chill.csv") + "\" --batch \""
                + folder.resolve("3-late-chill.batch.json") + "\"");
        out.println("Or look at all four in the browser:");
        out.println("  holdproof page");
        out.println(DemoKitchen.STATEMENT);
        Answer.SAFETY.forEach(out::println);
        out.flush();
        return 0;
    }

    private static void recheck(Path pdf) throws IOException {
        Rechecked found = Report.recheck(Files.readAllBytes(pdf), RuleLibrary.builtIn(), Optional.empty());
        if (found.outcome() != Rechecked.Outcome.WHOLE) {
            throw new IllegalStateException(pdf + " does not recheck: "
                    + found.seal().findings() + " " + found.figures().differences());
        }
    }

    private void prepare() throws Refusal, IOException {
        if (Files.exists(folder) && !Files.isDirectory(folder)) {
            throw Refusal.usage(folder + " is a file; name a folder for the demo");
        }
        if (Files.isDirectory(folder) && !Files.exists(folder.resolve(MARK)) && !isEmpty()) {
            throw Refusal.usage(folder + " holds something else than a demo; name another folder");
        }
        try {
            Files.createDirectories(folder);
        } catch (IOException failed) {
            throw Refusal.usage(folder + " cannot be made (" + ErrorMessages.words(failed) + "); name another folder");
        }
        write(MARK, DemoKitchen.ABOUT);
    }

    private boolean isEmpty() throws IOException {
        try (DirectoryStream<Path> entries = Files.newDirectoryStream(folder)) {
            return !entries.iterator().hasNext();
        }
    }

    private Path write(String name, String text) throws Refusal, IOException {
        Path file = folder.resolve(name);
        OutputFile.at(file, List.of()).write(text.getBytes(StandardCharsets.UTF_8));
        return file;
    }

    private SigningKey key(Instant now) throws Refusal, IOException, UnusableKeyException {
        Path file = folder.resolve(KEY);
        Path secret = folder.resolve(PASSPHRASE);
        Files.deleteIfExists(file);
        Files.deleteIfExists(secret);
        byte[] random = new byte[PASSPHRASE_BYTES];
        new SecureRandom().nextBytes(random);
        String passphrase = HexFormat.of().formatHex(random);
        OutputFile.secretAt(secret)
                .write((passphrase + "\nFor the demo's key only; it seals nothing but simulated reports.\n")
                        .getBytes(StandardCharsets.UTF_8));
        // Valid on the invented day and today, so that a visitor can seal something with it.
        Instant begin = now.isBefore(Instant.now()) ? now : Instant.now();
        return NewSigningKey.create(
                file, passphrase.toCharArray(), DemoKitchen.SIGNER, begin, NewSigningKey.MOST_YEARS);
    }
}
