package org.holdproof.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import org.holdproof.core.rules.RuleLibrary;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A kitchen that doubles the two hours of the demo's late chill (invented) and seals the report with its own key. */
class SiteTablesTest {
    @TempDir
    static Path folder = Path.of("");

    private static Path report;
    private static Desk verified;

    @BeforeAll
    static void sealWithSoftenedTables() throws IOException {
        Path tables = Files.createDirectory(folder.resolve("tables"));
        try (InputStream in = RuleLibrary.class.getResourceAsStream("/org/holdproof/tables/cooling.csv")) {
            String published = new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
            String softened = published.replaceAll("(?m)^(US-FDA-COOL-A,.*,F,)120(,at-most.*)$", "$1240$2");
            assertThat(softened).isNotEqualTo(published);
            Files.writeString(tables.resolve("cooling.csv"), softened);
        }
        report = folder.resolve("late.pdf");
        verified = Desk.run(
                "verify",
                DemoRun.file("3-late-chill.csv"),
                "--batch",
                DemoRun.file("3-late-chill.batch.json"),
                "--tables",
                tables.toString(),
                "--pdf",
                report.toString(),
                "--key",
                DemoRun.file("demo-key.p12"),
                "--passphrase-file",
                DemoRun.file("demo-key.passphrase.txt"));
    }

    @Test
    void theKitchenIsToldThatTheTablesAreItsOwn() {
        assertThat(verified.exitCode()).as(verified.toString()).isZero();
        assertThat(verified.out()).contains("Site's own limits");
    }

    @Test
    void recheckNamesTheFigureAndJudgesByThePublishedOne() {
        Desk desk = Desk.run("recheck", report.toString());
        assertThat(desk.exitCode()).as(desk.toString()).isEqualTo(1);
        assertThat(desk.outLines().get(0)).startsWith("OTHER RULES");
        assertThat(desk.out())
                .contains("published 120, here 240")
                .contains("NOT MET by the published tables")
                .contains("all come out as printed")
                .doesNotContain("INTACT");
    }

    @Test
    void whoeverAcceptsTheSitesTablesSaysSo() {
        assertThat(Desk.run("recheck", report.toString(), "--accept-site-tables")
                        .exitCode())
                .isZero();
    }

    @Test
    void anotherSignerIsCalledThat() {
        Desk desk = Desk.run("recheck", DemoRun.file("1-smoked-then-bagged.pdf"), "--fingerprint", "ab".repeat(32));
        assertThat(desk.exitCode()).isEqualTo(1);
        assertThat(desk.outLines().get(0)).startsWith("ANOTHER SIGNER");
        assertThat(desk.out()).doesNotContain("not as it was sealed");
    }
}
