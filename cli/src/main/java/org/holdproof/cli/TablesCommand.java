package org.holdproof.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.holdproof.cli.terminal.Terminal;
import org.holdproof.core.batch.Product.Form;
import org.holdproof.core.batch.Product.Species;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.rules.AuthorityProfile;
import org.holdproof.core.rules.Citation;
import org.holdproof.core.rules.LethalityChoice;
import org.holdproof.core.rules.LethalityTable;
import org.holdproof.core.rules.Rule;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.rules.RuleSet;
import org.holdproof.core.rules.ThermalDeath;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code holdproof tables}. */
@Command(
        name = "tables",
        header = "List the published rules, or show one with its figures and source.",
        description = {
            "",
            "Every rule carries the document it stands in and how its figures were obtained: read in the document, "
                    + "derived from figures that were read, or from memory and unconfirmed.",
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

    private static void list(PrintWriter out, RuleLibrary library) {
        out.println("Edition " + library.edition());
        heading(out, "Authority profiles (--authority)");
        for (AuthorityProfile profile : library.profiles()) {
            out.println("  " + column(profile.id()) + profile.title());
        }
        for (RuleSet<? extends Rule> set : library.rules()) {
            heading(out, set.title());
            for (Rule rule : set.all()) {
                line(out, rule.id(), rule.citation());
            }
        }
    }

    private static boolean show(PrintWriter out, RuleLibrary library, String name) {
        Optional<AuthorityProfile> profile = library.profile(name);
        profile.ifPresent(found -> show(out, found));
        List<? extends Rule> rules =
                library.rules().stream().flatMap(set -> set.find(name).stream()).toList();
        rules.forEach(rule -> RulePage.of(rule).forEach(out::println));
        return profile.isPresent() || !rules.isEmpty();
    }

    private static void show(PrintWriter out, AuthorityProfile profile) {
        out.println(profile.id() + ": " + profile.title());
        profile.lethality().forEach(choice -> out.println("Lethality      " + words(choice)));
        profile.comeUp().ifPresent(rule -> out.println("Come-up        " + rule.id()));
        profile.lowCook().ifPresent(rule -> out.println("Low cook       " + rule.id()));
        profile.humidity().forEach(option -> out.println("Surface moist  " + option.id() + ": " + option.title()));
        profile.nonContinuous().ifPresent(rule -> out.println("Two heatings   " + rule.id()));
        profile.seal().ifPresent(rule -> out.println("Sealed hot     " + rule.id()));
        profile.cooling().forEach(rule -> out.println("Cooling        " + rule.id()));
        profile.hotHold().ifPresent(rule -> out.println("Hot holding    " + rule.id()));
        profile.hotHoldRoast().ifPresent(rule -> out.println("Hot roasts     " + rule.id()));
        profile.coldHold().ifPresent(rule -> out.println("Cold holding   " + rule.id()));
        profile.shelfLives().forEach(rule -> out.println("Shelf life     " + rule.id() + ": " + rule.title()));
        profile.reheat().ifPresent(rule -> out.println("Reheating      " + rule.id()));
        profile.records().forEach(rule -> out.println("Records        " + rule.id() + ": " + rule.requirement()));
        profile.left().forEach(left -> out.println("Left open      " + left));
    }

    /** {@code beef, pork (intact): fsis-2021-meat-6.5-log; margin by salmonella-meat}. */
    private static String words(LethalityChoice choice) {
        List<String> rules = Stream.concat(
                        choice.tables().stream().map(LethalityTable::id),
                        choice.kinetics().stream().map(ThermalDeath::id))
                .toList();
        List<String> margin = choice.margin().stream().map(ThermalDeath::id).toList();
        return (choice.species().isEmpty() ? "all" : words(Species.values(), choice.species()))
                + (choice.forms().isEmpty() ? "" : " (" + words(Form.values(), choice.forms()) + ")")
                + ": " + String.join(", ", rules)
                + (margin.isEmpty() ? "" : "; margin by " + String.join(", ", margin));
    }

    private static <E extends Enum<E>> String words(E[] all, Set<E> some) {
        return Stream.of(all)
                .filter(some::contains)
                .map(word -> word.name().toLowerCase(Locale.ROOT).replace('_', '-'))
                .collect(Collectors.joining(", "));
    }

    private static void heading(PrintWriter out, String title) {
        out.println();
        out.println(title);
    }

    private static void line(PrintWriter out, String id, Citation citation) {
        out.println("  " + column(id)
                + String.format(Locale.ROOT, "%-8s", citation.how().title()) + citation.document()
                + (citation.section().isEmpty() ? "" : ", " + citation.section()));
    }

    private static String column(String id) {
        return String.format(Locale.ROOT, "%-32s ", id);
    }
}
