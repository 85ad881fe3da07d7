package org.holdproof.cli.manual;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.holdproof.cli.Holdproof;
import org.holdproof.cli.terminal.Terminal;
import picocli.AutoComplete;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;

/** Writes the man pages and the shell completion; called by the build. */
public final class Manual {
    private Manual() {}

    /** Writes {@code man/man1} and {@code completion} into the folder named by the first argument. */
    public static void main(String[] arguments) throws IOException {
        Path folder = Path.of(arguments[0]);
        CommandLine commands = Holdproof.commandLine(Terminal.ofProcess());
        Path pages = Files.createDirectories(folder.resolve("man").resolve("man1"));
        write(pages, commands.getCommandSpec());
        Path completion = Files.createDirectories(folder.resolve("completion"));
        // The one script serves bash, and zsh through its bashcompinit.
        Files.writeString(completion.resolve("holdproof"), AutoComplete.bash("holdproof", commands));
    }

    private static void write(Path pages, CommandSpec command) throws IOException {
        if (command.usageMessage().hidden() || command.helpCommand()) {
            return;
        }
        Files.writeString(pages.resolve(ManPage.name(command) + ".1"), new ManPage(command).text());
        for (CommandLine sub : command.subcommands().values()) {
            write(pages, sub.getCommandSpec());
        }
    }
}
