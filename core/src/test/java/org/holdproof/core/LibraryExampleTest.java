package org.holdproof.core;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import org.holdproof.core.input.SourceFile;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.verdict.AssessmentJson;
import org.holdproof.core.verdict.Verdict;
import org.junit.jupiter.api.Test;

/** The example of DEVELOPERS.md, compiled and run as it stands there. Invented data. */
class LibraryExampleTest {
    private static final byte[] LOG =
            """
            time,Core °C
            2031-05-06T08:00:00Z,54.0
            2031-05-06T08:01:00Z,54.1
            2031-05-06T08:02:00Z,54.2
            """
                    .getBytes(StandardCharsets.UTF_8);
    private static final byte[] RECORD =
            """
            {"batch": "1", "authority": "us-food-code-2022", "kitchen": {"name": "K", "timeZone": "UTC"},
             "product": {"name": "Beef", "species": "beef", "form": "intact", "shape": "slab"},
             "instrument": {"id": "A", "tolerance": "0.5 °C"}, "columns": {"core": ["Core"]},
             "stages": [{"stage": "bath", "from": "2031-05-06T08:00", "to": "2031-05-06T08:02"}],
             "roles": {"operator": "cook"}}
            """
                    .getBytes(StandardCharsets.UTF_8);

    @Test
    void fiveLines() throws Exception {
        byte[] logBytes = LOG;
        byte[] recordBytes = RECORD;
        // begin
        var logs = List.of(SourceFile.of("cook.csv", logBytes));
        var record = SourceFile.of("cook.json", recordBytes);
        var cook = Verification.of(logs, record, RuleLibrary.builtIn());
        Verdict verdict = cook.assessment().verdict();
        byte[] figures = AssessmentJson.write(cook.assessment());
        // end
        assertThat(verdict).isNotEqualTo(Verdict.MET);
        assertThat(new String(figures, StandardCharsets.UTF_8)).contains("\"verdict\"");
    }

    @Test
    void theyStandInTheHandbookAsTheyStandHere() throws Exception {
        Path root = Path.of("").toAbsolutePath();
        while (!Files.exists(root.resolve("DEVELOPERS.md"))) {
            root = Objects.requireNonNull(root.getParent());
        }
        String own = Files.readString(root.resolve("core/src/test/java/org/holdproof/core/LibraryExampleTest.java"));
        String lines = own.substring(own.indexOf("// begin") + 9, own.indexOf("        // end"))
                .replaceAll("(?m)^ {8}", "");
        assertThat(Files.readString(root.resolve("DEVELOPERS.md"))).contains("```java\n" + lines + "```");
    }
}
