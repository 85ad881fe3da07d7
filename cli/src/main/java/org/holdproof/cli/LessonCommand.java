package org.holdproof.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.holdproof.cli.terminal.LessonScreen;
import org.holdproof.cli.terminal.Progress;
import org.holdproof.cli.terminal.Terminal;
import org.holdproof.core.lesson.Cut;
import org.holdproof.core.lesson.Lesson;
import org.holdproof.core.lesson.LessonSetup;
import org.holdproof.core.quantity.QuantityKind;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.quantity.UnreadableQuantityException;
import org.holdproof.core.rules.AuthorityProfile.Paper;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.report.lesson.LessonPages;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code holdproof lesson}. */
@Command(
        name = "lesson",
        header = "Show a class why a very low bath is unsafe, not just slower.",
        description = {
            "",
            "Simulates the same cut in a row of baths: the core, what grows in it and then dies or does not, and when a "
                    + "published row is met. The PDF has a page to hand out, one to project, an exercise sheet and its "
                    + "key. Every statement on them names its source.",
            ""
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        exitCodeListHeading = "%nExit code:%n",
        exitCodeList = {
            " 0:The lesson was worked out.",
            "64:Usage: the command line asks for something that cannot be done.",
            "70:Internal: a fault of the program or of the disk under it."
        },
        footerHeading = "%n",
        footer = {
            "Example: holdproof lesson --cut pork --thickness \"80 mm\" --baths 46..62 --pdf lesson.pdf",
            "",
            "A simulation: it shows direction and order of size, not a safety limit. Your local authority's code and "
                    + "your approved HACCP plan govern."
        })
final class LessonCommand implements Callable<Integer> {
    private static final String BATHS_EXPECTED =
            "expected a range such as 46..62 or 115..143F, or a list such as 48,51,53,55";
    private static final String FIGURE = "([0-9]{1,3}(?:\\.[0-9]{1,3})?)";
    private static final Pattern RANGE = Pattern.compile(FIGURE + "\\.\\." + FIGURE + " ?(?:°? ?([CF]))?");
    private static final Pattern LIST = Pattern.compile("(" + FIGURE + "(?:," + FIGURE + ")*) ?(?:°? ?([CF]))?");

    private final Terminal terminal;

    @Option(
            names = "--cut",
            paramLabel = "beef|lamb|pork|chicken|turkey",
            defaultValue = "beef",
            description = "The roast (default: ${DEFAULT-VALUE}).")
    private Cut cut = Cut.BEEF;

    @Option(
            names = "--thickness",
            paramLabel = "LENGTH",
            defaultValue = "70 mm",
            description = "Through its thinnest way, with the unit (default: ${DEFAULT-VALUE}).")
    private String thickness = "";

    @Option(
            names = "--baths",
            paramLabel = "BATHS",
            defaultValue = "46..62",
            description = "Set points in °C, or in °F with an F behind them: a range, or a list with commas "
                    + "(default: ${DEFAULT-VALUE}).")
    private String baths = "";

    @Option(
            names = "--paper",
            paramLabel = "a4|letter",
            defaultValue = "a4",
            description = "The paper of the pages to print (default: ${DEFAULT-VALUE}).")
    private Paper paper = Paper.A4;

    @Option(names = "--pdf", paramLabel = "OUT", description = "Write the pages here.")
    private Optional<Path> pdf = Optional.empty();

    LessonCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws Refusal, IOException {
        LessonSetup setup = setup();
        Optional<OutputFile> file =
                pdf.isPresent() ? Optional.of(OutputFile.at(pdf.get(), List.of())) : Optional.empty();
        RuleLibrary library = RuleLibrary.builtIn();
        String written = "The pages for the class: add --pdf lesson.pdf";
        Lesson lesson;
        try (Progress progress = new Progress(terminal)) {
            progress.now("simulating the baths");
            lesson = Lesson.of(setup, library);
            if (file.isPresent()) {
                progress.now("writing the pages");
                file.get().write(LessonPages.write(lesson, paper, library.archive(), Instant.now()));
                written = "Hand-out, page to project, exercises and key: "
                        + file.get().path();
            }
        }
        PrintWriter out = terminal.out();
        new LessonScreen(lesson).lines().forEach(out::println);
        out.println(written);
        out.flush();
        return 0;
    }

    private LessonSetup setup() throws Refusal {
        double millimetres;
        try {
            millimetres = QuantityKind.LENGTH.parse(thickness);
        } catch (UnreadableQuantityException unreadable) {
            throw Refusal.usage("--thickness: " + unreadable.getMessage());
        }
        try {
            return new LessonSetup(cut, millimetres, bathsCelsius());
        } catch (IllegalArgumentException refused) {
            throw Refusal.usage(
                    refused.getMessage() + "; found --thickness '" + thickness + "' --baths '" + baths + "'");
        }
    }

    private List<Double> bathsCelsius() throws Refusal {
        String text = baths.strip();
        Matcher range = RANGE.matcher(text);
        if (range.matches()) {
            TemperatureUnit unit = unit(range.group(3));
            return LessonSetup.bathsBetween(
                    unit.toCelsius(Double.parseDouble(range.group(1))),
                    unit.toCelsius(Double.parseDouble(range.group(2))));
        }
        Matcher list = LIST.matcher(text);
        if (!list.matches()) {
            throw Refusal.usage("--baths: found '" + baths + "'; " + BATHS_EXPECTED);
        }
        TemperatureUnit unit = unit(list.group(list.groupCount()));
        List<Double> celsius = new ArrayList<>();
        for (String figure : list.group(1).split(",", -1)) {
            celsius.add(unit.toCelsius(Double.parseDouble(figure)));
        }
        return celsius;
    }

    private static TemperatureUnit unit(@Nullable String letter) {
        return "F".equals(letter) ? TemperatureUnit.FAHRENHEIT : TemperatureUnit.CELSIUS;
    }
}
