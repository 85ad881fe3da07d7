package org.holdproof.cli.terminal;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.Map;
import java.util.Optional;
import org.holdproof.core.verdict.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PrintableWriterTest {
    private final StringWriter screen = new StringWriter();
    private final Terminal terminal = new Terminal(
            new PrintWriter(screen), new PrintWriter(screen), true, true, true, Optional.empty(), Map.of());

    /** ECMA-48 controls (C0, C1) and the directional formatting characters of Unicode Standard Annex 9. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "\u001b[2K",
                "\u001b]0;title\u0007",
                "\r",
                "\b",
                "\u0000",
                "\u007f",
                "\u009b2K",
                "\u0085",
                "\u202e",
                "\u202a",
                "\u2066",
                "\u2069",
                "\u200f",
                "\u061c",
                "\u2028"
            })
    void whatWouldSteerTheScreenIsShownAndNotObeyed(String steering) {
        terminal.out().print("a" + steering + "b");
        terminal.err().print(steering);
        terminal.out().flush();
        terminal.err().flush();
        assertThat(screen.toString()).startsWith("a\uFFFD").contains("b");
        assertThat(screen.toString().codePoints())
                .noneMatch(character -> Character.getType(character) == Character.CONTROL
                        || (character >= 0x202A && character <= 0x202E)
                        || (character >= 0x2066 && character <= 0x2069)
                        || character == 0x200F
                        || character == 0x061C
                        || character == 0x2028);
    }

    @Test
    void theProgramsOwnCodesPass() {
        terminal.out().println(VerdictMark.of(Verdict.MET, true, true));
        assertThat(screen.toString()).startsWith("\u001b[1;32m✔ MET\u001b[0m");
    }

    @Test
    void aTextThatImitatesACodeDoesNot() {
        terminal.out().print("\u001b[1;32m✔ MET\u001b[0m");
        terminal.out().flush();
        assertThat(screen.toString()).isEqualTo("\uFFFD[1;32m✔ MET\uFFFD[0m");
    }

    @Test
    void linesAndLettersBeyondTheBasicPlaneStayWhole() {
        terminal.out().print("65 °C\n𝄞\r\nende");
        terminal.out().flush();
        assertThat(screen.toString()).isEqualTo("65 °C\n𝄞\r\nende");
    }
}
