package org.holdproof.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.holdproof.cli.terminal.AgainstAnswer;
import org.holdproof.cli.terminal.BathChoicesAnswer;
import org.holdproof.cli.terminal.PlanAnswer;
import org.holdproof.cli.terminal.PlanTableAnswer;
import org.holdproof.cli.terminal.Terminal;
import org.holdproof.cli.terminal.Wrapped;
import org.holdproof.core.Verification;
import org.holdproof.core.batch.BatchReader;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.batch.Outcome;
import org.holdproof.core.batch.Product;
import org.holdproof.core.heat.UnfitLogException;
import org.holdproof.core.input.SourceFile;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.plan.BathChoices;
import org.holdproof.core.plan.ChillMedium;
import org.holdproof.core.plan.HeatFigures;
import org.holdproof.core.plan.LoggedCook;
import org.holdproof.core.plan.NoPlan;
import org.holdproof.core.plan.Plan;
import org.holdproof.core.plan.PlanTable;
import org.holdproof.core.plan.PlannedCook;
import org.holdproof.core.plan.SmokeStep;
import org.holdproof.core.plan.UnplannableException;
import org.holdproof.core.plan.WrittenTimes;
import org.holdproof.core.quality.QualityModels;
import org.holdproof.core.quality.WeighedCook;
import org.holdproof.core.quantity.QuantityKind;
import org.holdproof.core.quantity.UnreadableQuantityException;
import org.holdproof.core.rules.AuthorityProfile;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.report.wall.WallChart;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code holdproof plan}. */
@Command(
        name = "plan",
        header = "Plan a bath: when the core is safe, when to start, how to chill.",
        description = {
            "",
            "Reckons how heat goes into the piece, times every row of the authority's table at its core, and gives the "
                    + "time in the bath that still holds if the piece is 5 mm thicker, heat goes in as slowly as was ever "
                    + "published and the bath is 0.5 °C low, all at once. Shape and fat not given count as a slab of a "
                    + "fatty cut. Frozen pieces are not planned.",
            "",
            "A smoke step is reckoned as bare meat that dries and stalls. At worst its surface stays wet for ever; "
                    + "earliest, likely and latest come from published cooks and prove nothing.",
            ""
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        abbreviateSynopsis = false,
        exitCodeListHeading = "%nExit code:%n",
        exitCodeList = {
            " 0:There is a plan, and it keeps what it is judged by.",
            " 1:There is no safe plan for the cook asked for, or its chill or come-up is not kept; the answer says "
                    + "why.",
            "64:Usage: the command line asks for something that cannot be done.",
            "65:Unreadable: the log, the record or the tables cannot be read.",
            "70:Internal: a fault of the program or of the disk under it."
        },
        footerHeading = "%n",
        footer = {
            "Example: holdproof plan --species beef --thickness \"65 mm\" --bath \"144 °F\" "
                    + "--authority us-food-code-2022 --serve 2031-05-01T18:00",
            "",
            "Decision support. Your local authority's code and your approved HACCP plan govern. Food that is NOT MET "
                    + "or NOT PROVEN is not served on this tool's word."
        })
final class PlanCommand implements Callable<Integer> {
    private static final double FRIDGE_CELSIUS = 5;

    /** A table has its own; these only stand in the cook every cell is like. */
    private static final double EVERY_THICKNESS_MILLIMETRES = 50;

    private static final double EVERY_BATH_CELSIUS = 100;

    /** 160 °F, where a smoked brisket is usually bagged: common practice, no source. */
    private static final double USUAL_SMOKED_CELSIUS = (160 - 32) / 1.8;

    private final Terminal terminal;

    @Option(
            names = "--species",
            paramLabel = "ANIMAL",
            description =
                    "beef, veal, pork, lamb, game, farmed-game, chicken, turkey, other-poultry, fish or shellfish.")
    private Optional<String> species = Optional.empty();

    @Option(
            names = "--form",
            paramLabel = "FORM",
            description = "intact (as is, the default), non-intact or comminuted.")
    private Optional<String> form = Optional.empty();

    @Option(names = "--fat", paramLabel = "PERCENT", description = "Fat by weight, such as \"12 %%\".")
    private Optional<String> fat = Optional.empty();

    @Option(
            names = "--shape",
            paramLabel = "SHAPE",
            description = "slab (a steak, a flat), roast (a block), cylinder (a tenderloin, a rolled joint) or sphere "
                    + "(a ball); not given: a roast, at worst a slab.")
    private Optional<String> shape = Optional.empty();

    @Option(
            names = "--thickness",
            paramLabel = "LENGTH",
            description = "Across the thinnest way through the middle, such as \"65 mm\" or \"2.5 in\".")
    private Optional<String> thickness = Optional.empty();

    @Option(
            names = "--start",
            paramLabel = "TEMPERATURE",
            description = "The piece throughout when it goes in; \"5 °C\" where nothing is said.")
    private Optional<String> start = Optional.empty();

    @Option(
            names = "--smoke",
            paramLabel = "STEP",
            description = "A smoke step before the bag, such as \"110 °C for 6 h\".")
    private Optional<String> smoke = Optional.empty();

    @Option(
            names = "--wet-bulb",
            paramLabel = "TEMPERATURE",
            description = "With --smoke: what a thermometer in a wet wick shows beside the meat.")
    private Optional<String> wetBulb = Optional.empty();

    @Option(
            names = "--core",
            paramLabel = "TEMPERATURE",
            description =
                    "With --smoke: say when the core comes to this in the smoker; \"160 °F\" where nothing is said.")
    private Optional<String> core = Optional.empty();

    @Option(
            names = "--bath",
            paramLabel = "TEMPERATURE",
            description = "The bath's set point; without it, a table of set points and stays to choose from.")
    private Optional<String> bath = Optional.empty();

    @Option(
            names = "--for",
            paramLabel = "TIME",
            description = "Leave it in the bath so long, such as \"24 h\", instead of as short as is safe.")
    private Optional<String> stay = Optional.empty();

    @Option(
            names = "--authority",
            paramLabel = "NAME",
            description = "Whose rules to plan by (list: holdproof tables).")
    private Optional<String> authority = Optional.empty();

    @Option(
            names = "--serve",
            paramLabel = "WHEN",
            description = "Count back from serving hot, such as 2031-05-01T18:00.")
    private Optional<String> serve = Optional.empty();

    @Option(
            names = "--zone",
            paramLabel = "ZONE",
            description = "The kitchen's time zone; the record's, else this machine's.")
    private Optional<String> zone = Optional.empty();

    @Option(
            names = "--chill",
            paramLabel = "ice|water",
            description = "Chill in ice slush (the default) or still water.")
    private Chill chill = Chill.ice;

    @Mixin
    private final QualityOptions quality = new QualityOptions();

    @Option(
            names = "--like",
            arity = "1..*",
            paramLabel = "LOG",
            description = "Reckon with what the log of an earlier cook of the same cut shows; needs --batch.")
    private List<Path> like = List.of();

    @Option(
            names = "--batch",
            paramLabel = "FILE",
            description = "The record of that cook; what is not said here is taken from it.")
    private Optional<Path> batch = Optional.empty();

    @Option(names = "--table", description = "Thickness by set point instead of one plan.")
    private boolean table;

    @Option(names = "--pdf", paramLabel = "OUT", description = "With --table: write it as a wall chart here.")
    private Optional<Path> pdf = Optional.empty();

    @Option(names = "--explain", description = "Add every row, every figure and its source.")
    private boolean explain;

    @Option(
            names = "--tables",
            paramLabel = "DIR",
            description = "Lay the site's own tables in DIR (an approved, validated process) over the built-in ones.")
    private Optional<Path> tables = Optional.empty();

    PlanCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    /** As {@code --chill} is written. */
    enum Chill {
        ice,
        water
    }

    @Override
    public Integer call() throws Exception {
        checkTogether();
        RuleLibrary library = tables.isPresent() ? RuleLibrary.withSite(tables.get()) : RuleLibrary.builtIn();
        Optional<BatchRecord> earlier = batch.isPresent() ? Optional.of(earlier(batch.get())) : Optional.empty();
        try {
            PlannedCook cook = cook(library, earlier);
            LoggedCook.Learned learned = learned(earlier);
            HeatFigures published = HeatFigures.published(cook.species(), cook.fatPercent());
            HeatFigures heat = learned.fit().map(published::fittedBy).orElse(published);
            int code = table
                    ? showTable(library, cook, heat)
                    : bath.isPresent() ? showPlan(library, cook, heat, earlier) : showChoices(library, cook, heat);
            learned.notes().forEach(note -> print(Wrapped.at("Like: " + note)));
            return code;
        } catch (UnplannableException wrong) {
            throw Refusal.usage(wrong.getMessage());
        }
    }

    private void checkTogether() throws Refusal {
        if (like.isEmpty() == batch.isPresent()) {
            throw Refusal.usage("--like and --batch go together: the log of an earlier cook and its record");
        }
        if (pdf.isPresent() && !table) {
            throw Refusal.usage("--pdf is the wall chart: add --table");
        }
        quality.checkTogether(table, bath.isPresent());
        if (!table && bath.isEmpty() && Stream.of(stay, serve).anyMatch(Optional::isPresent)) {
            throw Refusal.usage(
                    "--for and --serve are of one bath: say what it is set to with --bath, or leave them out"
                            + " and choose from set points and stays");
        }
        if (smoke.isEmpty() && (wetBulb.isPresent() || core.isPresent())) {
            throw Refusal.usage("--wet-bulb and --core tell of the smoker: add --smoke");
        }
        if (table && Stream.of(smoke, stay, serve, bath, thickness).anyMatch(Optional::isPresent)) {
            throw Refusal.usage("--table is of baths alone, every thickness and set point: leave out --thickness,"
                    + " --bath, --smoke, --for and --serve");
        }
    }

    private PlannedCook cook(RuleLibrary library, Optional<BatchRecord> earlier) throws Refusal {
        Optional<Product> product = earlier.map(BatchRecord::product);
        return new PlannedCook(
                named("--species", species, Product.Species.values(), product.map(Product::species)),
                named(
                        "--form",
                        form,
                        Product.Form.values(),
                        Optional.of(product.map(Product::form).orElse(Product.Form.INTACT))),
                fat.isPresent()
                        ? OptionalDouble.of(quantity("--fat", QuantityKind.PERCENT, fat.get()))
                        : product.map(Product::fatPercent).orElse(OptionalDouble.empty()),
                shape.isPresent()
                        ? Optional.of(named("--shape", shape, Product.Shape.values(), Optional.empty()))
                        : product.map(Product::shape),
                thickness(product),
                start.isPresent() ? quantity("--start", QuantityKind.TEMPERATURE, start.get()) : FRIDGE_CELSIUS,
                smokeStep(),
                bath.isPresent() ? quantity("--bath", QuantityKind.TEMPERATURE, bath.get()) : EVERY_BATH_CELSIUS,
                stay.isPresent()
                        ? OptionalDouble.of(said("--for", () -> WrittenTimes.minutes(stay.get())))
                        : OptionalDouble.empty(),
                authority(library, earlier),
                chill == Chill.ice ? ChillMedium.ICE_SLUSH : ChillMedium.STILL_WATER);
    }

    private static BatchRecord earlier(Path record) throws Refusal, UnreadableInputException {
        SourceFile file = InputFile.record(record);
        return BatchReader.parse(file.name(), file.bytes());
    }

    private Optional<SmokeStep> smokeStep() throws Refusal {
        if (smoke.isEmpty()) {
            return Optional.empty();
        }
        SmokeStep step = said("--smoke", () -> WrittenTimes.smoke(smoke.get()));
        if (wetBulb.isEmpty()) {
            return Optional.of(step);
        }
        double celsius = quantity("--wet-bulb", QuantityKind.TEMPERATURE, wetBulb.get());
        return Optional.of(said("--wet-bulb", () -> step.withWetBulb(celsius)));
    }

    private double thickness(Optional<Product> product) throws Refusal {
        if (thickness.isPresent()) {
            return quantity("--thickness", QuantityKind.LENGTH, thickness.get());
        }
        OptionalDouble recorded = product.map(Product::thicknessMillimetres).orElse(OptionalDouble.empty());
        if (recorded.isEmpty() && !table) {
            throw Refusal.usage("say how thick the piece is with --thickness, such as \"65 mm\"");
        }
        return recorded.orElse(EVERY_THICKNESS_MILLIMETRES);
    }

    private AuthorityProfile authority(RuleLibrary library, Optional<BatchRecord> earlier) throws Refusal {
        String known = library.profiles().stream().map(AuthorityProfile::id).collect(Collectors.joining(", "));
        String id = authority
                .or(() -> earlier.map(BatchRecord::authority))
                .orElseThrow(() -> Refusal.usage("say whose rules to plan by with --authority; there are " + known));
        return library.profile(id)
                .orElseThrow(() -> Refusal.usage("--authority " + id + ": no such profile; there are " + known));
    }

    private LoggedCook.Learned learned(Optional<BatchRecord> earlier) throws Exception {
        if (like.isEmpty() || earlier.isEmpty()) {
            return new LoggedCook.Learned(Optional.empty(), List.of());
        }
        try {
            return LoggedCook.learn(logged(earlier.get()), earlier.get());
        } catch (UnfitLogException unfit) {
            throw Refusal.unreadable(InputFile.names(like) + ": " + unfit.getMessage());
        }
    }

    /** The logs of the earlier cook, joined. */
    private ProbeLog logged(BatchRecord earlier) throws Exception {
        return Verification.read(
                        Verification.inOrder(InputFile.logs(like), InputFile.name(batch.orElseThrow()), earlier),
                        InputFile.name(batch.orElseThrow()),
                        earlier)
                .joined();
    }

    private List<WeighedCook> weighed(QualityModels models, Optional<BatchRecord> earlier) throws Exception {
        if (earlier.isEmpty() || earlier.get().outcome().equals(Outcome.UNSAID)) {
            return List.of();
        }
        return WeighedLog.cooks(logged(earlier.get()), earlier.get(), quality.cut(models));
    }

    private int showPlan(RuleLibrary library, PlannedCook cook, HeatFigures heat, Optional<BatchRecord> earlier)
            throws Exception {
        QualityModels models = QualityModels.of(library);
        Plan plan = Plan.of(cook, heat, library);
        double smokedTo =
                core.isPresent() ? quantity("--core", QuantityKind.TEMPERATURE, core.get()) : USUAL_SMOKED_CELSIUS;
        List<WeighedCook> weighed = weighed(models, earlier);
        PlanAnswer answer =
                new PlanAnswer(plan, serving(earlier), quality.lines(models, plan, heat, weighed), smokedTo);
        Optional<AgainstAnswer> against = quality.against(library, plan, heat, weighed);
        print(answer.lines(terminal.unicode()));
        against.ifPresent(other -> print(other.lines()));
        if (explain) {
            print(answer.explanation());
        }
        return answer.isSound() ? ExitCode.PLANNED : ExitCode.NO_PLAN;
    }

    private Optional<PlanAnswer.Serving> serving(Optional<BatchRecord> earlier) throws Refusal {
        if (serve.isEmpty()) {
            return Optional.empty();
        }
        ZoneId kitchen = zone.isPresent()
                ? said("--zone", () -> WrittenTimes.zone(zone.get()))
                : earlier.map(record -> record.kitchen().zone()).orElseGet(ZoneId::systemDefault);
        Instant at = said("--serve", () -> WrittenTimes.instant(serve.get(), kitchen));
        return Optional.of(new PlanAnswer.Serving(at, kitchen));
    }

    private int showChoices(RuleLibrary library, PlannedCook cook, HeatFigures heat) throws Refusal {
        Optional<NoPlan> unruled = NoPlan.ifUnruled(cook);
        if (unruled.isPresent()) {
            print(PlanAnswer.refusal(unruled.get()));
            return ExitCode.NO_PLAN;
        }
        BathChoices choices = BathChoices.of(
                library,
                cook,
                heat,
                quality.cut(QualityModels.of(library)),
                BathChoices.usualBaths(cook),
                BathChoices.usualHours());
        print(new BathChoicesAnswer(choices, quality.plates()).lines());
        return ExitCode.PLANNED;
    }

    private int showTable(RuleLibrary library, PlannedCook cook, HeatFigures heat) throws Exception {
        Optional<NoPlan> unruled = NoPlan.ifUnruled(cook);
        if (unruled.isPresent()) {
            print(PlanAnswer.refusal(unruled.get()));
            return ExitCode.NO_PLAN;
        }
        Optional<OutputFile> chart = pdf.isPresent()
                ? Optional.of(OutputFile.at(
                        pdf.get(), Stream.concat(like.stream(), batch.stream()).toList()))
                : Optional.empty();
        PlanTable reckoned = PlanTable.of(cook, heat, PlanTable.usualThicknesses(), PlanTable.usualBaths(cook));
        List<String> written = new ArrayList<>();
        if (chart.isPresent()) {
            chart.get().write(WallChart.write(reckoned, library, Instant.now()));
            written.add("Wall chart: " + chart.get().path());
        }
        print(new PlanTableAnswer(reckoned, written).lines());
        return ExitCode.PLANNED;
    }

    private void print(List<String> lines) {
        PrintWriter out = terminal.out();
        lines.forEach(out::println);
        out.flush();
    }

    private static double quantity(String option, QuantityKind kind, String text) throws Refusal {
        try {
            return kind.parse(text);
        } catch (UnreadableQuantityException unreadable) {
            throw Refusal.usage(option + ": " + unreadable.getMessage());
        }
    }

    private static <T> T said(String option, Supplier<T> reading) throws Refusal {
        try {
            return reading.get();
        } catch (UnplannableException wrong) {
            throw Refusal.usage(option + ": " + wrong.getMessage());
        }
    }

    /** One of some words, as they are written in a batch record; a hyphen may stand for a blank. */
    private static <E extends Enum<E>> E named(String option, Optional<String> text, E[] all, Optional<E> otherwise)
            throws Refusal {
        String words = Stream.of(all).map(PlanCommand::word).collect(Collectors.joining(", "));
        if (text.isEmpty()) {
            return otherwise.orElseThrow(() -> Refusal.usage("say with " + option + " which it is: " + words));
        }
        String wanted = text.get().strip().toLowerCase(Locale.ROOT).replace(' ', '-');
        return Stream.of(all)
                .filter(value -> word(value).equals(wanted))
                .findFirst()
                .orElseThrow(() -> Refusal.usage(option + ": found '" + text.get() + "'; expected one of " + words));
    }

    private static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
