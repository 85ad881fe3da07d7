package org.holdproof.cli.manual;

import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.Model.UsageMessageSpec;

/** One command's man page in the {@code man} macros of roff, from the same words its help prints. */
final class ManPage {
    private final CommandSpec command;
    private final StringBuilder roff = new StringBuilder();

    ManPage(CommandSpec command) {
        this.command = command;
    }

    /** {@code holdproof-verify}. */
    static String name(CommandSpec command) {
        return command.qualifiedName("-");
    }

    /** The whole page. */
    String text() {
        UsageMessageSpec usage = command.usageMessage();
        String version = String.join(" ", command.root().version());
        roff.append(".TH \"%s\" 1 \"\" \"%s\"\n".formatted(name(command).toUpperCase(Locale.ROOT), escape(version)));
        section("NAME");
        line(name(command) + " - " + join(usage.header()));
        section("SYNOPSIS");
        String synopsis = new CommandLine.Help(command, CommandLine.Help.defaultColorScheme(Ansi.OFF)).synopsis(0);
        line(synopsis.replaceAll("\\s+", " ").strip());
        section("DESCRIPTION");
        paragraphs(usage.description());
        if (!command.positionalParameters().isEmpty()) {
            section("ARGUMENTS");
            for (PositionalParamSpec parameter : command.positionalParameters()) {
                entry(parameter.paramLabel(), parameter);
            }
        }
        if (!command.options().isEmpty()) {
            section("OPTIONS");
            for (OptionSpec option : command.options()) {
                String label = option.arity().max() == 0 ? "" : "=" + option.paramLabel();
                entry(String.join(", ", option.names()) + label, option);
            }
        }
        if (!command.subcommands().isEmpty()) {
            section("COMMANDS");
            command.subcommands()
                    .forEach((name, sub) ->
                            term(name, join(sub.getCommandSpec().usageMessage().header())));
        }
        Map<String, String> exitCodes = usage.exitCodeList();
        if (!exitCodes.isEmpty()) {
            section("EXIT STATUS");
            exitCodes.forEach((code, meaning) -> term(code.strip(), meaning));
        }
        section("NOTES");
        paragraphs(usage.footer());
        return roff.toString();
    }

    private void section(String title) {
        roff.append(".SH ").append(title).append('\n');
    }

    private void paragraphs(String[] texts) {
        for (String text : texts) {
            if (text.isBlank()) {
                roff.append(".PP\n");
            } else {
                line(text);
            }
        }
    }

    private void entry(String label, ArgSpec argument) {
        term(label, join(argument.description()));
    }

    private void term(String label, String meaning) {
        roff.append(".TP\n\\fB").append(escape(label)).append("\\fR\n");
        line(meaning);
    }

    private void line(String text) {
        String escaped = escape(text);
        roff.append(escaped.startsWith(".") || escaped.startsWith("'") ? "\\&" : "")
                .append(escaped)
                .append('\n');
    }

    private static String join(String[] texts) {
        return Arrays.stream(texts).map(String::strip).collect(Collectors.joining(" "));
    }

    private static String escape(String text) {
        return text.replace("%n", " ")
                .replace("%%", "%")
                .replace("\\", "\\e")
                .replace("-", "\\-")
                .replace("\"", "\\(dq");
    }
}
