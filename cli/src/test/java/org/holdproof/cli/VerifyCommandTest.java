package org.holdproof.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.holdproof.cli.terminal.Answer;
import org.holdproof.cli.terminal.Terminal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The main job from the command line to its files, on the demo's simulated batches. */
class VerifyCommandTest {
    private static final String LOG = DemoRun.file("1-smoked-then-bagged.csv");
    private static final String BATCH = DemoRun.file("1-smoked-then-bagged.batch.json");
    private static final String KEY = DemoRun.file("demo-key.p12");
    private static final String PASSPHRASE = DemoRun.file("demo-key.passphrase.txt");

    @TempDir
    private Path folder = Path.of("");

    @ParameterizedTest(name = "{0} ends with {1}")
    @CsvSource({
        "1-smoked-then-bagged, 0, ✔ MET",
        "2-low-bath, 1, ✘ NOT MET",
        "3-late-chill, 1, ✘ NOT MET",
        "4-probe-gap, 2, ? NOT PROVEN"
    })
    void theExitCodeIsTheVerdictAndTheAnswerFitsOneScreen(String batch, int exitCode, String verdict) {
        Desk desk = Desk.run("verify", DemoRun.file(batch + ".csv"), "--batch", DemoRun.file(batch + ".batch.json"));
        assertThat(desk.exitCode()).isEqualTo(exitCode);
        assertThat(desk.err()).isEmpty();
        assertThat(desk.outLines())
                .hasSizeLessThanOrEqualTo(Terminal.HEIGHT)
                .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(Terminal.WIDTH))
                .containsSubsequence(Answer.SAFETY);
        assertThat(desk.outLines().get(1)).startsWith(verdict + ":");
    }

    @Test
    void aSealedReportRechecksAndOneChangedByteDoesNot() throws IOException {
        String pdf = folder.resolve("a report.pdf").toString();
        String json = folder.resolve("figures.json").toString();
        Desk desk = Desk.run(
                "verify",
                LOG,
                "--batch",
                BATCH,
                "--pdf",
                pdf,
                "--json",
                json,
                "--key",
                KEY,
                "--passphrase-file",
                PASSPHRASE);
        assertThat(desk.exitCode()).as(desk.err()).isZero();
        assertThat(desk.out()).contains("Report: " + pdf).contains("Figures: " + json);
        assertThat(Path.of(json)).content().contains("\"verdict\": \"MET\"");
        assertThat(folder.toFile().list()).containsExactlyInAnyOrder("a report.pdf", "figures.json");

        Desk intact = Desk.run("recheck", pdf);
        assertThat(intact.exitCode()).as(intact.out()).isZero();
        assertThat(intact.out()).contains("INTACT").contains("all come out as printed");

        byte[] bytes = Files.readAllBytes(Path.of(pdf));
        bytes[bytes.length / 2] ^= 1;
        Path changed = Files.write(folder.resolve("changed.pdf"), bytes);
        Desk broken = Desk.run("recheck", changed.toString());
        assertThat(broken.exitCode()).isEqualTo(1);
        assertThat(broken.out()).contains("BROKEN");
    }

    @Test
    void anUnsealedReportSaysSo() {
        String pdf = folder.resolve("report.pdf").toString();
        Desk desk = Desk.run("verify", LOG, "--batch", BATCH, "--pdf", pdf);
        assertThat(desk.exitCode()).isZero();
        assertThat(desk.out()).contains("UNSEALED");
        Desk recheck = Desk.run("recheck", pdf);
        assertThat(recheck.exitCode()).isEqualTo(1);
        assertThat(recheck.out()).contains("UNSEALED").contains("all come out as printed");
    }

    @Test
    void thePassphraseMayComeFromTheEnvironment() throws IOException {
        String secret = Files.readAllLines(Path.of(PASSPHRASE)).get(0);
        String[] arguments = {
            "verify", LOG, "--batch", BATCH, "--pdf", folder.resolve("r.pdf").toString(), "--key", KEY
        };
        assertThat(Desk.run(Map.of("HOLDPROOF_PASSPHRASE", secret), arguments).exitCode())
                .isZero();
        complaint(Desk.run(Map.of("HOLDPROOF_PASSPHRASE", "not this one"), arguments), 65, "passphrase is wrong");
        complaint(Desk.run(arguments), 64, "--passphrase-file");
    }

    @Test
    void answersFromTheCommandLineRideInTheReport() throws IOException {
        Path log = folder.resolve("no unit.csv");
        Files.writeString(log, Files.readString(Path.of(LOG)).replace(" (°F)", ""));
        String pdf = folder.resolve("report.pdf").toString();
        complaint(Desk.run("verify", log.toString(), "--batch", BATCH), 65, "--unit");

        Desk desk = Desk.run(
                "verify",
                log.toString(),
                "--batch",
                BATCH,
                "--unit",
                "F",
                "--authority",
                "us-food-code-2022",
                "--pdf",
                pdf,
                "--key",
                KEY,
                "--passphrase-file",
                PASSPHRASE);
        assertThat(desk.exitCode()).as(desk.out() + desk.err()).isIn(0, 1, 2);
        assertThat(desk.out()).contains("us-food-code-2022");
        assertThat(Desk.run("recheck", pdf).exitCode()).isZero();
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void bytesThatAreNoLogAreRefusedInOneMessage(long seed) throws IOException {
        byte[] noise = new byte[(int) (seed * 700)];
        new Random(seed).nextBytes(noise);
        Path log = Files.write(folder.resolve("noise.csv"), noise);
        complaint(Desk.run("verify", log.toString(), "--batch", BATCH), 65, "noise.csv");
        Path batch = Files.write(folder.resolve("noise.json"), noise);
        complaint(Desk.run("verify", LOG, "--batch", batch.toString()), 65, "noise.json");
    }

    @Test
    void inputsThatCannotBeReadAreNamed() throws IOException {
        String empty = Files.writeString(folder.resolve("empty.csv"), "").toString();
        complaint(Desk.run("verify", folder.resolve("none.csv").toString(), "--batch", BATCH), 65, "no such file");
        complaint(Desk.run("verify", LOG, "--batch", folder.resolve("none.json").toString()), 65, "no such file");
        complaint(Desk.run("verify", folder.toString(), "--batch", BATCH), 65, "a folder");
        complaint(Desk.run("verify", LOG, "--batch", folder.toString()), 65, "a folder");
        complaint(Desk.run("verify", empty, "--batch", BATCH), 65, "empty.csv");
        complaint(Desk.run("verify", LOG, "--batch", empty), 65, "empty.csv");
        complaint(Desk.run("verify", BATCH, "--batch", LOG), 65, "1-smoked-then-bagged.csv");
        complaint(Desk.run("verify", LOG, "--batch", BATCH, "--tables", empty), 65, "a folder with rule tables");
        String pdf = folder.resolve("r.pdf").toString();
        complaint(Desk.run("verify", LOG, "--batch", BATCH, "--pdf", pdf, "--key", empty), 64, "--passphrase-file");
        complaint(
                Desk.run("verify", LOG, "--batch", BATCH, "--pdf", pdf, "--key", LOG, "--passphrase-file", PASSPHRASE),
                65,
                "PKCS#12");
        assertThat(Path.of(pdf)).doesNotExist();
    }

    @Test
    void aColumnTheLogDoesNotHaveIsNamed() throws IOException {
        Path batch = Files.writeString(
                folder.resolve("b.json"), Files.readString(Path.of(BATCH)).replace("[\"Core\"]", "[\"Spike\"]"));
        complaint(Desk.run("verify", LOG, "--batch", batch.toString()), 65, "Spike");
    }

    @Test
    void anAuthorityNobodyKnowsIsNamed() throws IOException {
        complaint(Desk.run("verify", LOG, "--batch", BATCH, "--authority", "atlantis"), 64, "us-fsis-2021");
        Path batch = Files.writeString(
                folder.resolve("b.json"),
                Files.readString(Path.of(BATCH)).replace("us-fsis-2021", "atlantis"),
                StandardCharsets.UTF_8);
        complaint(Desk.run("verify", LOG, "--batch", batch.toString()), 65, "/authority");
    }

    @Test
    void whatCannotBeDoneIsAUsageError() {
        String out = folder.resolve("r.pdf").toString();
        complaint(Desk.run("verify"), 64, "--batch");
        complaint(Desk.run("verify", LOG, "--batch", BATCH, "--unit", "K"), 64, "--unit");
        complaint(Desk.run("verify", LOG, "--batch", BATCH, "--dates", "yyy"), 64, "--dates");
        complaint(Desk.run("verify", LOG, "--batch", BATCH, "--colour"), 64, "--colour");
        complaint(Desk.run("verify", LOG, "--batch", BATCH, "--pdf", folder.toString()), 64, "is a folder");
        complaint(Desk.run("verify", LOG, "--batch", BATCH, "--pdf", out + "/deep/r.pdf"), 64, "does not exist");
        complaint(Desk.run("verify", LOG, "--batch", BATCH, "--pdf", LOG), 64, "is an input");
        complaint(Desk.run("verify", LOG, "--batch", BATCH, "--json", BATCH), 64, "is an input");
        complaint(Desk.run("verify", LOG, "--batch", BATCH, "--key", KEY), 64, "--pdf");
        complaint(Desk.run("verify", LOG, "--batch", BATCH, "--pdf", out, "--timestamp", "http://x"), 64, "--key");
        assertThat(Path.of(out)).doesNotExist();
        assertThat(Path.of(LOG)).content().contains("Timestamp");
    }

    /** One message on {@code err}, no verdict on {@code out}, no stack trace. */
    private static void complaint(Desk desk, int exitCode, String says) {
        assertThat(desk.exitCode()).as(desk.toString()).isEqualTo(exitCode);
        assertThat(desk.out()).isEmpty();
        assertThat(desk.err()).startsWith("holdproof: ").contains(says).doesNotContain("\tat ", "Exception");
        assertThat(desk.err().lines().filter(line -> line.startsWith("holdproof: ")))
                .hasSize(1);
    }

    /** The demo's first cook as two loggers would have written it, the second with its clock 7 min ahead. */
    @Test
    void aCookLoggedByTwoInstrumentsIsJudgedSealedAndRechecked() throws IOException {
        List<String> lines = Files.readAllLines(Path.of(LOG));
        ObjectNode record =
                (ObjectNode) new ObjectMapper().readTree(Path.of(BATCH).toFile());
        int heading = 0;
        while (!lines.get(heading).matches("20\\d\\d-.*")) {
            heading++;
        }
        int middle = (heading + lines.size()) / 2;
        Path first = Files.write(folder.resolve("first.csv"), lines.subList(0, middle));
        List<String> later = new ArrayList<>(lines.subList(0, heading));
        lines.subList(middle, lines.size()).stream()
                .map(line ->
                        LocalDateTime.parse(line.substring(0, line.indexOf(',')).replace(' ', 'T'))
                                        .plusMinutes(7)
                                + line.substring(line.indexOf(',')))
                .forEach(later::add);
        Path second = Files.write(folder.resolve("second.csv"), later);
        ArrayNode logs = record.putArray("logs");
        for (String file : List.of("first.csv", "second.csv")) {
            ObjectNode log = logs.addObject().put("file", file);
            log.set("instrument", record.get("instrument"));
            log.set("columns", record.get("columns"));
            if (record.has("log")) {
                record.get("log").properties().forEach(member -> log.set(member.getKey(), member.getValue()));
            }
            if (file.startsWith("second")) {
                log.putObject("clock").put("ahead", "7 min");
            }
        }
        record.remove(List.of("instrument", "columns", "log"));
        String batch = Files.writeString(folder.resolve("cook.json"), record.toString())
                .toString();
        String pdf = folder.resolve("cook.pdf").toString();
        Desk desk = Desk.run(
                "verify",
                second.toString(),
                first.toString(),
                "--batch",
                batch,
                "--pdf",
                pdf,
                "--key",
                KEY,
                "--passphrase-file",
                PASSPHRASE);
        assertThat(desk.exitCode()).as(desk.err()).isZero();
        Desk recheck = Desk.run("recheck", pdf);
        assertThat(recheck.exitCode()).as(recheck.out()).isZero();
        assertThat(recheck.out()).contains("INTACT").contains("all come out as printed");

        Desk oneOnly = Desk.run("verify", first.toString(), "--batch", batch);
        assertThat(oneOnly.exitCode()).isEqualTo(ExitCode.UNREADABLE);
        assertThat(oneOnly.err()).contains("second.csv").contains("Hand it in");
    }
}
