package org.holdproof.cli;

import java.lang.reflect.InvocationTargetException;
import org.holdproof.cli.terminal.Terminal;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.HelpCommand;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The program: its commands, and how each ends. */
@Command(
        name = "holdproof",
        versionProvider = Version.class,
        mixinStandardHelpOptions = true,
        header = "Does this temperature record prove that the food was made safe and kept safe?",
        description = {
            "",
            "Reads the log of a long low-temperature cook and its batch record, judges them by the published rules of "
                    + "the authority the record names, and writes a signed report an inspector can check again."
        },
        subcommands = {
            PageCommand.class,
            DraftCommand.class,
            VerifyCommand.class,
            StatusCommand.class,
            PlanCommand.class,
            RecheckCommand.class,
            TablesCommand.class,
            LessonCommand.class,
            KeyCommand.class,
            DemoCommand.class,
            HelpCommand.class
        },
        footerHeading = "%n",
        footer = {
            "Try it: holdproof page, or holdproof demo. Then: holdproof help verify.",
            "",
            "Decision support. Your local authority's code and your approved HACCP plan govern. Food that is NOT MET "
                    + "or NOT PROVEN is not served on this tool's word."
        })
public final class Holdproof implements Runnable {
    @Spec
    private CommandSpec spec = CommandSpec.create();

    /** Runs one command and ends the process with its exit code. */
    public static void main(String[] arguments) {
        int launched = Boolean.getBoolean("holdproof.launched") ? ExitCode.LAUNCHED : 0;
        System.exit(launched + run(arguments));
    }

    /** Runs one command on the terminal this process was started from, and gives its exit code. */
    public static int run(String... arguments) {
        Terminal terminal = Terminal.ofProcess();
        int exitCode = run(terminal, arguments);
        terminal.err().flush();
        if (terminal.out().checkError()) {
            terminal.err().println("holdproof: the answer could not be written whole; read nothing into what is there");
            return ExitCode.INTERNAL;
        }
        return exitCode;
    }

    /** Runs one command on a terminal. */
    static int run(Terminal terminal, String... arguments) {
        try {
            return commandLine(terminal).execute(arguments);
        } catch (StackOverflowError | OutOfMemoryError | LinkageError broken) {
            return new ErrorMessages(terminal).tell(broken);
        }
    }

    /** The commands as they are on a terminal. */
    public static CommandLine commandLine(Terminal terminal) {
        ErrorMessages complaints = new ErrorMessages(terminal);
        CommandLine commands = new CommandLine(new Holdproof(), new Factory(terminal));
        commands.setOut(terminal.out());
        commands.setErr(terminal.err());
        commands.setCaseInsensitiveEnumValuesAllowed(true);
        commands.setUsageHelpWidth(terminal.width());
        commands.setExpandAtFiles(false);
        commands.setUsageHelpAutoWidth(false);
        commands.setColorScheme(CommandLine.Help.defaultColorScheme(
                terminal.colour() ? CommandLine.Help.Ansi.ON : CommandLine.Help.Ansi.OFF));
        commands.setParameterExceptionHandler(complaints);
        commands.setExecutionExceptionHandler(complaints);
        commands.setUnmatchedOptionsArePositionalParams(false);
        return commands;
    }

    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), "name a command, such as verify or demo");
    }

    /** Makes the commands that speak to the terminal with it, and everything else the plain way. */
    private record Factory(Terminal terminal) implements CommandLine.IFactory {
        @Override
        public <K> K create(Class<K> type) throws Exception {
            try {
                return type.getDeclaredConstructor(Terminal.class).newInstance(terminal);
            } catch (NoSuchMethodException plain) {
                return CommandLine.defaultFactory().create(type);
            } catch (InvocationTargetException failed) {
                throw new IllegalStateException(type + " cannot be made", failed);
            }
        }
    }
}
