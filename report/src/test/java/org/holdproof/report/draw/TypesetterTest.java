package org.holdproof.report.draw;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.holdproof.report.font.ReportFonts;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TypesetterTest {
    private static final Lettering TEXT = Lettering.plain(8);
    private final Typesetter type = new Typesetter(ReportFonts.load());

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void noLineIsTooWideAndNoCharacterIsLost(long seed) {
        Random random = new Random(seed);
        StringBuilder text = new StringBuilder();
        for (int word = 0; word < 60; word++) {
            int length = 1 + random.nextInt(random.nextInt(10) == 0 ? 120 : 9);
            for (int i = 0; i < length; i++) {
                text.append((char) ('!' + random.nextInt(90)));
            }
            text.append(' ');
        }
        double width = 30 + random.nextInt(200);
        List<String> lines = type.wrap(TEXT, text.toString(), width);
        assertThat(lines).allSatisfy(line -> assertThat(type.width(TEXT, line)).isLessThanOrEqualTo(width));
        assertThat(String.join("", lines).replace(" ", ""))
                .isEqualTo(text.toString().replace(" ", ""));
    }

    @Test
    void anEmptyTextHasNoLines() {
        assertThat(type.wrap(TEXT, "  ", 100)).isEmpty();
    }

    @Test
    void aTextThatFitsIsNotCut() {
        assertThat(type.shorten(TEXT, "brisket", 200)).isEqualTo("brisket");
        String cut = type.shorten(TEXT, "brisket with a very long name", 60);
        assertThat(cut).startsWith("brisk").endsWith("…");
        assertThat(type.width(TEXT, cut)).isLessThanOrEqualTo(60);
    }
}
