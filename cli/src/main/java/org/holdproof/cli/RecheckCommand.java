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
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.report.Rechecked;
import org.holdproof.report.Recomputation;
import org.holdproof.report.Report;
import org.holdproof.report.archive.Attachment;
import org.holdproof.report.recheck.RecheckReport;
import org.holdproof.report.recheck.RulesComparison;
import org.holdproof.report.seal.CertificateFacts;
import org.holdproof.report.seal.Fingerprint;
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
            " 0:The seal is intact, every figure comes out as printed, by the published tables.",
            " 1:It was never sealed, something was changed or added, another key sealed it, a figure differs, or the "
                    + "tables are not the published ones.",
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

    @Option(
            names = "--accept-site-tables",
            description = "End with 0 also where a site's own tables, listed in the answer, are all that differs.")
    private boolean acceptSiteTables;

    RecheckCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws Refusal, IOException {
        byte[] file = InputFile.bytes(pdf, LARGEST);
        if (!new String(file, 0, Math.min(file.length, HEADER_WITHIN), StandardCharsets.ISO_8859_1).contains("%PDF-")) {
            throw Refusal.unreadable(pdf + ": not a PDF; a report written by holdproof verify was expected");
        }
        Optional<Fingerprint> signer = fingerprint.isPresent() ? Optional.of(expected()) : Optional.empty();
        Rechecked found;
        try (Progress progress = new Progress(terminal)) {
            progress.now("checking the seal and reckoning every figure again");
            found = Report.recheck(file, RuleLibrary.builtIn(), signer);
        }
        PrintWriter out = terminal.out();
        out.println(headline(found));
        rules(out, found.figures());
        seal(out, found.seal());
        attachments(out, found.seal());
        figures(out, found.figures());
        Answer.SAFETY.forEach(out::println);
        out.flush();
        boolean accepted = found.outcome() == Rechecked.Outcome.OTHER_RULES && acceptSiteTables;
        return found.outcome() == Rechecked.Outcome.WHOLE || accepted ? 0 : CHANGED;
    }

    private static String headline(Rechecked found) {
        return switch (found.outcome()) {
            case WHOLE -> "INTACT: nothing was changed or added since it was sealed.";
            case OTHER_RULES ->
                "OTHER RULES: nothing was changed since it was sealed, but it was not judged by the published tables.";
            case ANOTHER_SIGNER ->
                "ANOTHER SIGNER: nothing was changed since it was sealed, but not by the key you named.";
            case FIGURES_DIFFER ->
                "FIGURES DIFFER: nothing was changed since it was sealed, but its figures do not come out as printed.";
            case UNSEALED -> "UNSEALED: nothing shows that this file is as it was written.";
            case BROKEN -> "BROKEN: this file is not as it was sealed; nothing in it proves anything.";
        };
    }

    /** Which figures of the rules differ from the published ones, and what follows from that. */
    private void rules(PrintWriter out, Recomputation figures) {
        if (figures.rules().isEmpty() || figures.rules().get().isPublished()) {
            return;
        }
        RulesComparison rules = figures.rules().get();
        out.println(
                rules.siteFiles()
                        ? "Tables       the site's own lie over the published ones; these figures differ:"
                        : rules.sameEdition()
                                ? "Tables       ALTERED: they bear the published edition's name, but these figures differ:"
                                : "Tables       of another edition than this program's; these figures differ:");
        rules.differences().stream().limit(MOST_LISTED).forEach(difference -> out.println("  - " + difference));
        if (rules.differences().size() > MOST_LISTED) {
            out.println("  - and " + (rules.differences().size() - MOST_LISTED) + " more");
        }
        out.println("Published    "
                + figures.byPublished()
                        .map(by -> VerdictMark.of(by.verdict(), terminal.unicode(), terminal.colour())
                                + " by the published tables")
                        .orElse("the published tables have no such profile: nothing to compare the verdict with"));
    }

    private Fingerprint expected() throws Refusal {
        try {
            return Fingerprint.parse(fingerprint.orElseThrow());
        } catch (IllegalArgumentException unfit) {
            throw Refusal.usage("--fingerprint: " + unfit.getMessage());
        }
    }

    private static void seal(PrintWriter out, RecheckReport report) {
        report.findings().forEach(finding -> out.println("  - " + finding.detail()));
        if (report.signer().isPresent()) {
            CertificateFacts signer = report.signer().get();
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
