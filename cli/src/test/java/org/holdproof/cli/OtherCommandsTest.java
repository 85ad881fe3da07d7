package org.holdproof.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import org.holdproof.cli.terminal.Terminal;
import org.holdproof.core.rules.AuthorityProfile;
import org.holdproof.core.rules.RuleLibrary;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class OtherCommandsTest {
    @TempDir
    private Path folder = Path.of("");

    @ParameterizedTest
    @ValueSource(strings = {"verify", "status", "plan", "recheck", "tables", "lesson", "demo", "key new"})
    void everyCommandExplainsItselfAndItsExitCodes(String command) {
        List<String> words = List.of((command + " --help").split(" ", -1));
        Desk help = Desk.run(words.toArray(String[]::new));
        assertThat(help.exitCode()).isZero();
        assertThat(help.outLines())
                .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(80))
                .anyMatch(line -> line.startsWith("Exit code:"))
                .anyMatch(line -> line.strip().startsWith("64 "));
    }

    @Test
    void nothingOrNonsenseIsAUsageError() {
        for (String[] arguments : new String[][] {{}, {"prove"}, {"key"}, {"recheck"}, {"--nonsense"}}) {
            Desk desk = Desk.run(arguments);
            assertThat(desk.exitCode()).as(String.join(" ", arguments)).isEqualTo(64);
            assertThat(desk.out()).isEmpty();
            assertThat(desk.err()).startsWith("holdproof: ").contains("--help");
        }
        assertThat(Desk.run("--version").out()).startsWith("holdproof ");
        assertThat(Desk.run("help", "verify").out()).contains("--batch=FILE");
    }

    @Test
    void recheckRefusesWhatIsNoPdf() throws IOException {
        Path text = Files.writeString(folder.resolve("a.pdf"), "not one");
        for (String path : List.of(
                text.toString(), folder.toString(), folder.resolve("none.pdf").toString())) {
            Desk desk = Desk.run("recheck", path);
            assertThat(desk.exitCode()).as(path).isEqualTo(65);
            assertThat(desk.out()).isEmpty();
            assertThat(desk.err()).startsWith("holdproof: " + path);
        }
        Path header = Files.writeString(folder.resolve("b.pdf"), "%PDF-1.7\nand then nothing");
        assertThat(Desk.run("recheck", header.toString()).exitCode()).isEqualTo(1);
    }

    @Test
    void recheckComparesTheFingerprint() {
        String pdf = DemoRun.file("4-probe-gap.pdf");
        Desk recheck = Desk.run("recheck", pdf);
        assertThat(recheck.exitCode()).isZero();
        assertThat(recheck.out()).contains("NOT PROVEN, reckoned again");
        String fingerprint = recheck.outLines().stream()
                .filter(line -> line.startsWith("Fingerprint"))
                .map(line -> line.substring("Fingerprint".length()).strip())
                .findFirst()
                .orElseThrow();
        assertThat(Desk.run("recheck", pdf, "--fingerprint", fingerprint).exitCode())
                .isZero();
        assertThat(Desk.run("recheck", pdf, "--fingerprint", "0".repeat(64)).exitCode())
                .isEqualTo(1);
        assertThat(Desk.run("recheck", pdf, "--fingerprint", "12").exitCode()).isEqualTo(64);
    }

    @Test
    void tablesLeadsWithTheProfilesEachOnOneScreen() {
        Desk list = Desk.run("tables");
        assertThat(list.exitCode()).isZero();
        assertThat(list.outLines()).hasSizeLessThan(60);
        assertThat(list.outLines().get(2)).startsWith("Authority profiles");
        for (AuthorityProfile profile : RuleLibrary.builtIn().profiles()) {
            Desk page = Desk.run("tables", profile.id());
            assertThat(page.outLines())
                    .as(profile.id())
                    .hasSizeLessThanOrEqualTo(26)
                    .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(Terminal.WIDTH))
                    .anySatisfy(line -> assertThat(line).startsWith("Left open"));
            Desk full = Desk.run("tables", profile.id(), "--all");
            assertThat(profile.left())
                    .allSatisfy(point -> assertThat(full.out()).contains(point));
        }
    }

    @Test
    void tablesListsEveryRuleAndShowsEachByItsName() {
        Desk list = Desk.run("tables", "--all");
        assertThat(list.exitCode()).isZero();
        List<String> names = list.outLines().stream()
                .filter(line -> line.startsWith("  "))
                .map(line -> line.strip().split(" ", 2)[0])
                .toList();
        assertThat(names).hasSizeGreaterThan(50).contains("us-fsis-2021");
        for (String name : names) {
            Desk one = Desk.run("tables", name);
            assertThat(one.exitCode()).as(name).isZero();
            assertThat(one.out()).as(name).contains(name);
        }
        assertThat(Desk.run("tables", "no-such-rule").exitCode()).isEqualTo(64);
    }

    @Test
    void aNewKeyIsPrivateAndNeverOverwritten() throws IOException {
        Path key = folder.resolve("kitchen.p12");
        Path secret = Files.writeString(folder.resolve("secret"), "a long passphrase\nand a remark\n");
        String[] command = {
            "key", "new", "--name", "A kitchen", "--out", key.toString(), "--passphrase-file", secret.toString()
        };
        Desk made = Desk.run(command);
        assertThat(made.exitCode()).as(made.err()).isZero();
        assertThat(made.out())
                .contains("A kitchen")
                .containsPattern("[0-9a-f]{64}")
                .doesNotContain("a long passphrase");
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(key)))
                .isEqualTo("rw-------");

        byte[] before = Files.readAllBytes(key);
        assertThat(Desk.run(command).exitCode()).isEqualTo(64);
        assertThat(Files.readAllBytes(key)).isEqualTo(before);
    }

    @Test
    void aKeyNeedsAPassphraseWorthTheName() throws IOException {
        Path secret = Files.writeString(folder.resolve("secret"), "short\n");
        Path key = folder.resolve("k.p12");
        Desk desk = Desk.run(
                "key", "new", "--name", "A kitchen", "--out", key.toString(), "--passphrase-file", secret.toString());
        assertThat(desk.exitCode()).isEqualTo(64);
        assertThat(key).doesNotExist();
    }

    @Test
    void theDemoMakesFourRecheckedReportsAndSaysWhatTheyAre() throws IOException {
        for (String batch : List.of("1-smoked-then-bagged", "2-low-bath", "3-late-chill", "4-probe-gap")) {
            for (String ending : List.of(".csv", ".batch.json", ".json", ".pdf")) {
                assertThat(Path.of(DemoRun.file(batch + ending))).isNotEmptyFile();
            }
        }
        assertThat(Path.of(DemoRun.file("ABOUT-THIS-DEMO.txt"))).content().contains("invented", "simulation");
        Path secret = Path.of(DemoRun.file("demo-key.passphrase.txt"));
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(secret)))
                .isEqualTo("rw-------");
        assertThat(secret).content().contains("demo's key only");
    }

    @Test
    void theDemoLeavesOtherFoldersAlone() throws IOException {
        Path mine = Files.writeString(folder.resolve("mine.txt"), "mine");
        Desk desk = Desk.run("demo", folder.toString());
        assertThat(desk.exitCode()).isEqualTo(64);
        assertThat(desk.err()).contains("something else than a demo");
        assertThat(folder.toFile().list()).containsExactly("mine.txt");
        assertThat(Desk.run("demo", mine.toString()).exitCode()).isEqualTo(64);
    }
}
