package org.holdproof.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.holdproof.cli.terminal.Terminal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LessonCommandTest {
    @TempDir
    private Path folder = Path.of("");

    private static Desk lesson(String... options) {
        return Desk.run(
                Stream.concat(Stream.of("lesson"), Arrays.stream(options)).toArray(String[]::new));
    }

    @ParameterizedTest
    @ValueSource(strings = {"46..62", "40..65", "48,51,53,55", "115..143F", "115 .. 143"})
    void theAnswerFitsOneScreenOrSaysWhatWasExpected(String baths) {
        Desk desk = lesson("--baths", baths);
        if (baths.contains(" ")) {
            assertThat(desk.exitCode()).isEqualTo(64);
            assertThat(desk.err()).contains("46..62");
            return;
        }
        assertThat(desk.exitCode()).as(desk.err()).isZero();
        assertThat(desk.outLines())
                .hasSizeLessThanOrEqualTo(Terminal.HEIGHT)
                .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(Terminal.WIDTH));
        assertThat(desk.out()).contains("not a safety limit", "50 to 53.4 °C", "130 °F (54.4 °C)", "HACCP", "--pdf");
    }

    @Test
    void theListIsReadInOrder() {
        List<String> baths =
                lesson("--cut", "CHICKEN", "--thickness", "2.5 in", "--baths", "48,51.5,53,55,64").outLines().stream()
                        .map(String::strip)
                        .filter(line -> line.contains(" h ") && line.contains("°C  "))
                        .map(line -> line.substring(0, line.indexOf(" °C")))
                        .toList();
        assertThat(baths).containsExactly("48", "51.5", "53", "55", "64");
    }

    @Test
    void writesThePages() throws IOException {
        Path pdf = folder.resolve("lesson.pdf");
        Desk desk = lesson("--paper", "letter", "--pdf", pdf.toString());
        assertThat(desk.exitCode()).as(desk.err()).isZero();
        assertThat(desk.out()).contains(pdf.toString());
        assertThat(new String(Files.readAllBytes(pdf), 0, 8, StandardCharsets.US_ASCII))
                .isEqualTo("%PDF-1.7");
    }

    @Test
    void refusesWithAWordOnWhatIsAllowed() {
        String[][] wrong = {
            {"--baths", "warm", "46..62"},
            {"--baths", "30..60", "40 to 65 °C"},
            {"--baths", "55", "3 to 9 baths"},
            {"--thickness", "70", "Add the unit"},
            {"--thickness", "1 m", "10 to 150 mm"},
            {"--cut", "whale", "whale"},
            {"--pdf", folder.toString(), "is a folder"},
        };
        for (String[] one : wrong) {
            Desk desk = lesson(one[0], one[1]);
            assertThat(desk.exitCode()).as(one[1]).isEqualTo(64);
            assertThat(desk.out()).isEmpty();
            assertThat(desk.err()).contains(one[2]);
        }
    }
}
