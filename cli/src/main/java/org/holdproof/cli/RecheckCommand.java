package org.holdproof.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.holdproof.cli.terminal.Answer;
import org.holdproof.cli.terminal.Progress;
import org.holdproof.cli.terminal.Terminal;
import org.holdproof.cli.terminal.VerdictMark;
import org.holdproof.report.seal.Attachment;
import org.holdproof.report.seal.Fingerprint;
import org.holdproof.report.seal.Recheck;
import org.holdproof.report.seal.RecheckReport;
import org.holdproof.report.seal.RecheckReport.Signer;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code holdproof recheck}. */
@Command(
        name = "recheck",
        header = "Check a report again: who sealed it, whether anything changed, every figure.",
        description = {
            "",
            "Looks whether the seal holds and the file is as it was sealed, to the last byte; then reckons every figure "
                    + "again from the log, record and tables that ride inside, and compares.",
            ""
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        exitCodeListHeading = "%nExit code:%n",
        exitCodeList = {
            " 0:The seal is intact and every figure comes out as printed.",
            " 1:It was never sealed, something was changed or added, or a figure differs.",
            "64:Usage: the command line asks for something that cannot be done.",
            "65:Unreadable: there is no such file, or it is no PDF.",
            "70:Internal: a fault of the program or of the disk under it."
        },
        footerHeading = "%n",
        footer = {
            "A kitchen's own certificate is vouched for by nobody else: compare the fingerprint with the one the kitchen "
                    + "gave you, or have it compared with --fingerprint.",
            "",
            "The exit code says whether the report is what it was, not whether the food was safe: read its verdict."
        })
final class RecheckCommand implements Callable<Integer> {
    private static final int CHANGED = 1;
    private static final int LARGEST = Integer.MAX_VALUE - 8;
    private static final int MOST_LISTED = 12;
    /** ISO 32000-1, annex H: readers accept the header within the first 1024 bytes. */
    private static final int HEADER_WITHIN = 1024;

    private final Terminal terminal;

    @Parameters(paramLabel = "PDF", description = "The report.")
    private Path pdf = Path.of("");

    @Option(
            names = "--fingerprint",
            paramLabel = "HEX",
            description = "The SHA-256 fingerprint the kitchen gave you; another signer's seal is then a finding.")
    private Optional<String> fingerprint = Optional.empty();

    RecheckCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws Refusal, IOException {
        byte[] file = InputFile.bytes(pdf, LARGEST);
        if (!new String(file, 0, Math.min(file.length, HEADER_WITHIN), StandardCharsets.ISO_8859_1).contains("%PDF-")) {
            throw Refusal.unreadable(pdf + ": not a PDF; a report written by holdproof verify was expected");
        }
        RecheckReport report;
        Recomputation figures;
        try (Progress progress = new Progress(terminal)) {
            progress.now("checking the seal");
            report = fingerprint.isPresent() ? Recheck.of(file, expected()) : Recheck.of(file);
            progress.now("reckoning every figure again");
            figures = Recomputation.of(report);
        }
        PrintWriter out = terminal.out();
        seal(out, report);
        attachments(out, report);
        figures(out, figures);
        Answer.SAFETY.forEach(out::println);
        out.flush();
        return report.intact() && figures.differences().isEmpty() ? 0 : CHANGED;
    }

    private Fingerprint expected() throws Refusal {
        try {
            return Fingerprint.parse(fingerprint.orElseThrow());
        } catch (IllegalArgumentException unfit) {
            throw Refusal.usage("--fingerprint: " + unfit.getMessage());
        }
    }

    private static void seal(PrintWriter out, RecheckReport report) {
        out.println(
                switch (report.state()) {
                    case INTACT -> "INTACT: nothing was changed or added since it was sealed.";
                    case BROKEN -> "BROKEN: this file is not as it was sealed; nothing in it proves anything.";
                    case UNSEALED -> "UNSEALED: nothing shows that this file is as it was written.";
                });
        report.findings().forEach(finding -> out.println("  - " + finding.detail()));
        if (report.signer().isPresent()) {
            Signer signer = report.signer().get();
            out.println("Sealed by    " + signer.name()
                    + (signer.selfSigned() ? " (own certificate: only the fingerprint tells who)" : ""));
            out.println("Fingerprint  " + signer.fingerprint().hex());
        }
        report.claimedTime().ifPresent(time -> out.println("Sealed at    " + time + " by the signer's own clock"));
        report.timestamp().ifPresent(stamp -> out.println("Witnessed    " + stamp.time() + " by a timestamp"));
    }

    private static void attachments(PrintWriter out, RecheckReport report) {
        for (Attachment.Role role : Attachment.Role.values()) {
            report.attachment(role)
                    .ifPresent(attached -> out.println("Inside       " + attached.name() + ", SHA-256 "
                            + attached.sha256().substring(0, 16) + "…"));
        }
    }

    private void figures(PrintWriter out, Recomputation figures) {
        List<String> differences = figures.differences();
        if (differences.isEmpty()) {
            out.println("Figures      all come out as printed, by the tables inside");
        } else {
            out.println("Figures      DIFFER or cannot be reckoned again:");
            differences.stream().limit(MOST_LISTED).forEach(difference -> out.println("  - " + difference));
            if (differences.size() > MOST_LISTED) {
                out.println("  - and " + (differences.size() - MOST_LISTED) + " more");
            }
        }
        figures.again()
                .ifPresent(again -> out.println("Verdict      "
                        + VerdictMark.of(again.verdict(), terminal.unicode(), terminal.colour()) + ", reckoned again"));
    }
}
