package org.holdproof.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What stands where a report or its figures are to be written. The reports are the demo's, of an invented kitchen. */
class NothingSealedIsLostTest {
    @TempDir
    private Path folder = Path.of("");

    private Path place;
    private byte[] sealed;

    @BeforeEach
    void aSealedReportStandsThere() throws IOException {
        sealed = Files.readAllBytes(Path.of(DemoRun.file("1-smoked-then-bagged.pdf")));
        place = Files.write(folder.resolve("report.pdf"), sealed);
    }

    @Test
    void anUnsealedReportDoesNotTakeItsPlace() throws IOException {
        Desk desk = verify("1-smoked-then-bagged", "--pdf", place.toString());
        assertThat(desk.exitCode()).isEqualTo(64);
        assertThat(desk.err()).contains("sealed report of batch", "--replace");
        assertThat(Files.readAllBytes(place)).isEqualTo(sealed);
    }

    @Test
    void norDoesAnotherBatchs() throws IOException {
        Desk desk = verify(
                "3-late-chill",
                "--pdf",
                place.toString(),
                "--key",
                DemoRun.file("demo-key.p12"),
                "--passphrase-file",
                DemoRun.file("demo-key.passphrase.txt"));
        assertThat(desk.exitCode()).isEqualTo(64);
        assertThat(Files.readAllBytes(place)).isEqualTo(sealed);
    }

    @Test
    void norDoFigures() throws IOException {
        assertThat(verify("1-smoked-then-bagged", "--json", place.toString()).exitCode())
                .isEqualTo(64);
        assertThat(Files.readAllBytes(place)).isEqualTo(sealed);
    }

    @Test
    void whoeverWantsItSaysSo() throws IOException {
        assertThat(verify("1-smoked-then-bagged", "--pdf", place.toString(), "--replace")
                        .exitCode())
                .isZero();
        assertThat(Files.readAllBytes(place)).isNotEqualTo(sealed);
    }

    @Test
    void twoOutputsAtOnePathAreRefused() {
        String one = folder.resolve("new").toString();
        Desk desk = verify("1-smoked-then-bagged", "--pdf", one, "--json", one);
        assertThat(desk.exitCode()).isEqualTo(64);
        assertThat(desk.err()).contains("another output");
        assertThat(Path.of(one)).doesNotExist();
    }

    @Test
    void thePassphraseFileIsNoPlaceForAReport() throws IOException {
        String secret = Files.copy(Path.of(DemoRun.file("demo-key.passphrase.txt")), folder.resolve("secret.txt"))
                .toString();
        byte[] before = Files.readAllBytes(Path.of(secret));
        Desk desk = verify(
                "1-smoked-then-bagged",
                "--pdf",
                secret,
                "--key",
                DemoRun.file("demo-key.p12"),
                "--passphrase-file",
                secret);
        assertThat(desk.exitCode()).isEqualTo(64);
        assertThat(Files.readAllBytes(Path.of(secret))).isEqualTo(before);
    }

    private static Desk verify(String demo, String... more) {
        String[] arguments = new String[4 + more.length];
        arguments[0] = "verify";
        arguments[1] = DemoRun.file(demo + ".csv");
        arguments[2] = "--batch";
        arguments[3] = DemoRun.file(demo + ".batch.json");
        System.arraycopy(more, 0, arguments, 4, more.length);
        return Desk.run(arguments);
    }
}
