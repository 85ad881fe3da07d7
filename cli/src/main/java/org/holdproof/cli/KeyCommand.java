package org.holdproof.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code holdproof key}. */
@Command(
        name = "key",
        header = "Make the key a kitchen seals its reports with.",
        description = {"", "A key is made once and kept; every report it seals can be told from every other.", ""},
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        subcommands = KeyNewCommand.class,
        footerHeading = "%n",
        footer = "Example: holdproof key new --name \"Our Kitchen, Our Town\"")
final class KeyCommand implements Runnable {
    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), "say what to do with a key: new");
    }
}
