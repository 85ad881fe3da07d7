package org.holdproof.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.holdproof.cli.terminal.Terminal;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.rules.AuthorityProfile;
import org.holdproof.core.rules.AuthorityProfile.LethalityChoice;
import org.holdproof.core.rules.Citation;
import org.holdproof.core.rules.CoolingRule;
import org.holdproof.core.rules.HoldingRule;
import org.holdproof.core.rules.HumidityOption;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.core.rules.LethalityTable;
import org.holdproof.core.rules.ReheatingRule;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.rules.ShelfLifeRule;
import org.holdproof.core.rules.ThermalDeath;
import org.holdproof.core.rules.TimeLimit;
import org.holdproof.core.rules.WrittenRule;
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
        heading(out, "Lethality tables");
        for (LethalityTable table : library.lethalityTables()) {
            line(out, table.id(), table.citation());
        }
        heading(out, "Kinetics");
        for (ThermalDeath death : library.kinetics()) {
            line(out, death.id(), death.citation());
        }
        heading(out, "Cooling");
        for (CoolingRule rule : library.coolingRules()) {
            line(out, rule.id(), rule.citation());
        }
        heading(out, "Holding and come-up");
        for (HoldingRule rule : library.holdingRules()) {
            line(out, rule.id(), rule.citation());
        }
        heading(out, "Reheating");
        for (ReheatingRule rule : library.reheatingRules()) {
            line(out, rule.id(), rule.citation());
        }
        heading(out, "Surface moisture");
        for (HumidityOption option : library.humidityOptions()) {
            line(out, option.id(), option.citation());
        }
        heading(out, "Time as a control");
        for (TimeLimit limit : library.timeLimits()) {
            line(out, limit.id(), limit.citation());
        }
        heading(out, "Shelf life");
        for (ShelfLifeRule rule : library.shelfLives()) {
            line(out, rule.id(), rule.citation());
        }
        for (String group : RuleLibrary.WRITTEN_GROUPS) {
            heading(out, group.substring(0, 1).toUpperCase(Locale.ROOT) + group.substring(1));
            for (WrittenRule rule : library.writtenRules(group)) {
                line(out, rule.id(), rule.citation());
            }
        }
    }

    private static boolean show(PrintWriter out, RuleLibrary library, String name) {
        Optional<AuthorityProfile> profile = library.profile(name);
        profile.ifPresent(found -> show(out, found));
        Optional<LethalityTable> table = library.lethalityTable(name);
        table.ifPresent(found -> show(out, found));
        Optional<ThermalDeath> death = library.kinetics(name);
        death.ifPresent(found -> show(out, found));
        Optional<CoolingRule> cooling = library.coolingRule(name);
        cooling.ifPresent(found -> show(out, found));
        Optional<HoldingRule> holding = library.holdingRule(name);
        holding.ifPresent(found -> show(out, found));
        Optional<ReheatingRule> reheating = library.reheatingRule(name);
        reheating.ifPresent(found -> show(out, found));
        Optional<WrittenRule> written = library.writtenRule(name);
        written.ifPresent(found -> show(out, found));
        Optional<HumidityOption> humidity = library.humidityOptions().stream()
                .filter(option -> option.id().equals(name))
                .findFirst();
        humidity.ifPresent(found -> show(out, found));
        Optional<TimeLimit> time = library.timeLimit(name);
        time.ifPresent(found -> show(out, found));
        Optional<ShelfLifeRule> life = library.shelfLife(name);
        life.ifPresent(found -> show(out, found));
        return List.of(profile, table, death, cooling, holding, reheating, written, humidity, time, life).stream()
                .anyMatch(Optional::isPresent);
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
        return (choice.species().isEmpty() ? "all" : String.join(", ", choice.species()))
                + (choice.forms().isEmpty() ? "" : " (" + String.join(", ", choice.forms()) + ")")
                + ": " + String.join(", ", rules)
                + (margin.isEmpty() ? "" : "; margin by " + String.join(", ", margin));
    }

    private static void show(PrintWriter out, LethalityTable table) {
        head(out, table.id(), table.title(), table.jurisdiction(), table.applies());
        for (LethalityRow row : table.rows()) {
            out.println("  " + row.at().text()
                    + (row.fatPercent().isPresent()
                            ? ", fat " + row.fatPercent().getAsInt() + " %"
                            : "") + ": "
                    + row.printedTime()
                    + (row.citation().how() == table.citation().how()
                            ? ""
                            : " (" + row.citation().how().title() + ")"));
        }
        cite(out, table.citation());
    }

    private static void show(PrintWriter out, ThermalDeath death) {
        out.println(death.id() + ": " + death.title());
        out.println("Organism       " + death.organism());
        out.println("D              " + death.dMinutes() + " min at " + death.referenceCelsius() + " °C");
        out.println("z              " + death.zCelsius() + " °C");
        out.println("Good for       " + death.floorCelsius() + " °C to " + death.capCelsius() + " °C");
        death.targetLog10().ifPresent(target -> out.println("Target         " + target + " log10"));
        cite(out, death.citation());
    }

    private static void show(PrintWriter out, CoolingRule rule) {
        head(out, rule.id(), rule.title(), rule.jurisdiction(), rule.applies());
        for (CoolingRule.Stage stage : rule.stages()) {
            out.println("Stage " + stage.number() + "        "
                    + stage.from().map(from -> "from " + from.text() + " ").orElse("")
                    + stage.to().map(to -> "to " + to.text() + " ").orElse("")
                    + (stage.maxMinutes().isPresent()
                            ? stage.comparison().words() + " "
                                    + plain(stage.maxMinutes().getAsDouble()) + " min"
                            : "no figure")
                    + " (" + words(stage.start()) + "; " + words(stage.clock()) + ")");
        }
        action(out, rule.correctiveAction());
        cite(out, rule.citation());
    }

    private static void show(PrintWriter out, HoldingRule rule) {
        head(out, rule.id(), rule.title(), rule.jurisdiction(), rule.applies());
        out.println("Limits         " + words(rule.kind())
                + rule.from().map(from -> ", from " + from.text()).orElse("")
                + rule.limit()
                        .map(limit -> ", " + rule.comparison().words() + " " + limit.text())
                        .orElse("")
                + (rule.maxMinutes().isPresent()
                        ? ", " + rule.timeComparison().words() + " "
                                + plain(rule.maxMinutes().getAsDouble()) + " min"
                        : ""));
        action(out, rule.correctiveAction());
        cite(out, rule.citation());
    }

    private static void show(PrintWriter out, ReheatingRule rule) {
        head(out, rule.id(), rule.title(), rule.jurisdiction(), rule.applies());
        out.println("Target         "
                + rule.target()
                        .map(target -> rule.comparison().words() + " " + target.text())
                        .orElse("none")
                + (rule.holdSeconds() > 0 ? " for " + plain(rule.holdSeconds()) + " s" : "")
                + (rule.maxMinutes().isPresent()
                        ? ", " + rule.timeComparison().words() + " "
                                + plain(rule.maxMinutes().getAsDouble()) + " min"
                        : ""));
        action(out, rule.correctiveAction());
        cite(out, rule.citation());
    }

    private static void show(PrintWriter out, WrittenRule rule) {
        head(out, rule.id(), rule.topic(), rule.jurisdiction(), rule.applies());
        out.println("Asks           " + rule.requirement());
        cite(out, rule.citation());
    }

    private static void show(PrintWriter out, HumidityOption option) {
        out.println(option.id() + ": " + option.title());
        out.println("Surface        " + option.means().title()
                + (option.sharePercent() > 0 ? ", " + plain(option.sharePercent()) + " % of the cook" : "")
                + (option.atLeastMinutes() > 0 ? ", at least " + plain(option.atLeastMinutes()) + " min" : "")
                + option.endPoint().map(at -> ", row at or above " + at.text()).orElse(""));
        cite(out, option.citation());
    }

    private static void show(PrintWriter out, TimeLimit limit) {
        head(out, limit.id(), limit.title(), limit.jurisdiction(), limit.applies());
        out.println("Time           " + limit.timeComparison().words() + " " + plain(limit.maxMinutes()) + " min, "
                + words(limit.count())
                + limit.ceiling()
                        .map(ceiling -> ", food " + limit.ceilingComparison().words() + " " + ceiling.text())
                        .orElse(""));
        action(out, limit.disposition());
        cite(out, limit.citation());
    }

    private static void show(PrintWriter out, ShelfLifeRule rule) {
        head(out, rule.id(), rule.title(), rule.jurisdiction(), rule.applies());
        out.println("Keeps          " + rule.days() + " days from " + words(rule.from()) + " at or below "
                + rule.storeAt().text());
        action(out, rule.disposition());
        cite(out, rule.citation());
    }

    private static void head(PrintWriter out, String id, String title, String jurisdiction, String applies) {
        out.println(id + ": " + title);
        out.println("Where          " + jurisdiction);
        out.println("For            " + applies);
    }

    private static void action(PrintWriter out, String action) {
        if (!action.isEmpty()) {
            out.println("If missed      " + action);
        }
    }

    private static void cite(PrintWriter out, Citation citation) {
        out.println("Source         " + citation.document() + ", " + citation.section());
        String edition = citation.source().edition();
        out.println("               " + citation.source().issuer() + ", "
                + (edition.isEmpty() ? citation.source().year() : edition));
        out.println(
                "Figures        " + citation.how().title() + (citation.note().isEmpty() ? "" : ": " + citation.note()));
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

    private static String words(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    private static String plain(double value) {
        return value == Math.rint(value) ? Long.toString((long) value) : Double.toString(value);
    }
}
