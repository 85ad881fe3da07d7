package org.holdproof.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.holdproof.cli.terminal.Terminal;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.rules.AuthorityProfile;
import org.holdproof.core.rules.Citation;
import org.holdproof.core.rules.Rule;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.rules.RuleSet;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code holdproof tables}. */
@Command(
        name = "tables",
        header = "List the authorities' profiles and the published rules, or show one.",
        description = {
            "",
            "Every rule carries the document it stands in and how its figures were obtained: read in the document, "
                    + "derived from figures that were read, quoted in another text or from memory and unconfirmed, or a "
                    + "convention of this program.",
            ""
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        exitCodeListHeading = "%nExit code:%n",
        exitCodeList = {
            " 0:Listed.",
            "64:Usage: there is no rule of that name.",
            "65:Unreadable: the site's own tables cannot be used.",
            "70:Internal: a fault of the program or of the disk under it."
        },
        footerHeading = "%n",
        footer = "Example: holdproof tables us-fsis-2021")
final class TablesCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(arity = "0..1", paramLabel = "NAME", description = "The rule or authority profile to show in full.")
    private Optional<String> name = Optional.empty();

    @Option(names = "--all", description = "Everything: every rule of the list, every row, every point left open.")
    private boolean all;

    @Option(
            names = "--tables",
            paramLabel = "DIR",
            description = "Lay the site's own tables in DIR over the built-in ones.")
    private Optional<Path> tables = Optional.empty();

    TablesCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws Refusal, IOException, UnreadableInputException {
        RuleLibrary library = tables.isPresent() ? RuleLibrary.withSite(tables.get()) : RuleLibrary.builtIn();
        PrintWriter out = terminal.out();
        if (name.isEmpty()) {
            list(out, library);
        } else if (!show(out, library, name.get())) {
            throw Refusal.usage("no rule named '" + name.get() + "'; list them with: holdproof tables");
        }
        out.flush();
        return 0;
    }

    private void list(PrintWriter out, RuleLibrary library) {
        out.println("Edition " + library.edition());
        heading(out, "Authority profiles (--authority)");
        for (AuthorityProfile profile : library.profiles()) {
            out.println("  " + column(profile.id()) + profile.title());
        }
        if (!all) {
            heading(out, "Rules (all of them: holdproof tables --all)");
        }
        for (RuleSet<? extends Rule> set : library.rules()) {
            if (!all) {
                out.println("  " + column(set.title()) + set.all().size());
                continue;
            }
            heading(out, set.title());
            for (Rule rule : set.all()) {
                line(out, rule.id(), rule.citation());
            }
        }
    }

    private boolean show(PrintWriter out, RuleLibrary library, String name) {
        Optional<AuthorityProfile> profile = library.profile(name);
        profile.map(found -> all ? ProfilePage.full(found) : ProfilePage.onOneScreen(found))
                .ifPresent(lines -> lines.forEach(out::println));
        List<? extends Rule> rules =
                library.rules().stream().flatMap(set -> set.find(name).stream()).toList();
        rules.forEach(rule -> RulePage.of(rule, all).forEach(out::println));
        return profile.isPresent() || !rules.isEmpty();
    }

    private static void heading(PrintWriter out, String title) {
        out.println();
        out.println(title);
    }

    private static void line(PrintWriter out, String id, Citation citation) {
        out.println("  " + column(id)
                + String.format(Locale.ROOT, "%-11s", citation.how().title()) + citation.document()
                + (citation.section().isEmpty() ? "" : ", " + citation.section()));
    }

    private static String column(String id) {
        return String.format(Locale.ROOT, "%-32s ", id);
    }
}
