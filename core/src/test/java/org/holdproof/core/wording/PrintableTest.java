package org.holdproof.core.wording;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PrintableTest {
    @ParameterizedTest
    @ValueSource(strings = {"\u001B[2J", "\r", "\n", "\u0000", "\u009B2J", "\u202E", "\u2066", "\u200F", "\u2028"})
    void whatATerminalOrAnEyeWouldObeyIsReplaced(String hostile) {
        assertThat(Printable.line("a" + hostile + "b"))
                .startsWith("a\uFFFD")
                .endsWith("b")
                .doesNotContain(hostile);
    }

    @Test
    void plainTextIsLeftAsItIs() {
        String text = "130 °F, Käse, 熟, \uD83C\uDF56";
        assertThat(Printable.line(text)).isSameAs(text);
    }

    @Test
    void halfAPairIsReplaced() {
        assertThat(Printable.line("a\uD83Cb")).isEqualTo("a\uFFFDb");
    }
}
