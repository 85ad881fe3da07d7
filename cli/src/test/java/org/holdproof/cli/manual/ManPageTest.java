package org.holdproof.cli.manual;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.holdproof.cli.Holdproof;
import org.holdproof.cli.terminal.Terminal;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.Model.OptionSpec;

class ManPageTest {
    private static final List<String> MACROS = List.of(".TH", ".SH", ".PP", ".TP");

    @Test
    void everyOptionAndExitCodeIsInThePageAndEveryMacroIsKnown() {
        CommandLine commands = Holdproof.commandLine(Terminal.ofProcess());
        for (CommandLine command : commands.getSubcommands().values()) {
            String page = new ManPage(command.getCommandSpec()).text();
            for (OptionSpec option : command.getCommandSpec().options()) {
                assertThat(page).contains(option.longestName().replace("-", "\\-"));
            }
            for (String code :
                    command.getCommandSpec().usageMessage().exitCodeList().keySet()) {
                assertThat(page).contains("\\fB" + code.strip() + "\\fR");
            }
            assertThat(page.lines().filter(line -> line.startsWith(".")))
                    .allSatisfy(line -> assertThat(MACROS).contains(line.split(" ", 2)[0]));
        }
    }
}
