package org.holdproof.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import org.holdproof.cli.page.PageServer;
import org.holdproof.cli.page.PageSettings;
import org.holdproof.cli.terminal.Terminal;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code holdproof page}. */
@Command(
        name = "page",
        header = "Do all of it in the browser, on this computer alone.",
        description = {
            "",
            "Opens a page on which a cook drops a log, an inspector a report, and a trainer finds the lesson. This "
                    + "computer serves it to itself alone: nothing is sent, nothing is kept unasked, and it works "
                    + "without a network. Ctrl-C closes it.",
            ""
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        exitCodeListHeading = "%nExit code:%n",
        exitCodeList = {
            " 0:The page was closed.",
            "64:Usage: the command line asks for something that cannot be done.",
            "65:Unreadable: there is no such log.",
            "70:Internal: a fault of the program or of the system under it."
        },
        footerHeading = "%n",
        footer = {
            "Decision support. Your local authority's code and your approved HACCP plan govern. Food that is NOT MET "
                    + "or NOT PROVEN is not served on this tool's word."
        })
final class PageCommand implements Callable<Integer> {
    private static final int LAST_PORT = 65_535;

    private final Terminal terminal;

    @Parameters(arity = "0..1", paramLabel = "LOG", description = "A log to open at once; it may still be growing.")
    private Optional<Path> log = Optional.empty();

    @Option(
            names = "--kitchen",
            paramLabel = "DIR",
            description = "The folder for what is kept: kitchen, instruments, seal, batches. Nothing is written before "
                    + "something is kept. Otherwise \"Holdproof kitchen\" beside your documents.")
    private Optional<Path> kitchen = Optional.empty();

    @Option(names = "--port", paramLabel = "N", description = "The port; otherwise one that is free.")
    private Optional<Integer> port = Optional.empty();

    @Option(names = "--no-browser", description = "Print the address and leave the browser alone.")
    private boolean noBrowser;

    PageCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws Refusal, IOException {
        if (log.isPresent()) {
            InputFile.checkReadable(log.get());
        }
        if (port.isPresent() && (port.get() < 1 || port.get() > LAST_PORT)) {
            throw Refusal.usage("--port " + port.get() + ": from 1 to " + LAST_PORT);
        }
        Path folder = kitchen.orElseGet(PageCommand::besideDocuments);
        if (Files.exists(folder) && !Files.isDirectory(folder)) {
            throw Refusal.usage(folder + " is a file; name a folder for the kitchen");
        }
        PageSettings settings = new PageSettings(
                folder,
                log,
                port.isPresent() ? OptionalInt.of(port.get()) : OptionalInt.empty(),
                PageSettings.LARGEST_FILE);
        PrintWriter out = terminal.out();
        try (PageServer server = PageServer.start(settings)) {
            out.println("The page: " + server.address());
            out.println("For this computer alone; nothing leaves it. Ctrl-C closes it.");
            out.flush();
            if (!noBrowser && !Browser.open(server.address())) {
                out.println("Open that address in a browser.");
                out.flush();
            }
            server.join();
        } catch (InterruptedException ended) {
            Thread.currentThread().interrupt();
        }
        return 0;
    }

    private static Path besideDocuments() {
        Path home = Path.of(System.getProperty("user.home", ""));
        Path documents = home.resolve("Documents");
        return (Files.isDirectory(documents) ? documents : home).resolve("Holdproof kitchen");
    }
}
