package org.holdproof.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import org.holdproof.cli.terminal.Answer;
import org.holdproof.cli.terminal.Terminal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The demo's simulated batches, handed in before they were over. */
class StatusCommandTest {
    private static final String SMOKED = "1-smoked-then-bagged";
    private static final String LATE = "3-late-chill";
    private static final int PREAMBLE_AND_MORE = 20;

    @TempDir
    private Path folder = Path.of("");

    private static List<String> lines(String batch) throws IOException {
        return Files.readAllLines(Path.of(DemoRun.file(batch + ".csv")), StandardCharsets.UTF_8);
    }

    private static String record(String batch) {
        return DemoRun.file(batch + ".batch.json");
    }

    /** The first so many lines of a log, the last one with its end. */
    private Path begun(String batch, int count) throws IOException {
        return Files.writeString(
                folder.resolve("growing log.csv"),
                String.join("\n", lines(batch).subList(0, count)) + "\n");
    }

    @ParameterizedTest(name = "{0}, {1} lines: {2}")
    @CsvSource(
            delimiter = '|',
            value = {
                "1-smoked-then-bagged | 100  | 2 | smoke under way   | Come-up: ",
                "1-smoked-then-bagged | 290  | 2 | smoke under way   | Needed   Core pasteurized: Core reads",
                "2-low-bath           | 300  | 2 | bath under way    | Nor will it be: the set point is",
                "1-smoked-then-bagged | 1200 | 0 | bath under way    | So far   Core pasteurized: ",
                "1-smoked-then-bagged | 1270 | 2 | chill under way   | By when  Cooling stage 1: ",
                "1-smoked-then-bagged | 1480 | 0 | store under way   | Proven ",
                "2-low-bath           | 1300 | 1 | bath under way    | Lost     Come-up fast enough: ",
                "3-late-chill         | 560  | 1 | chill under way   | Lost     Cooled in time, stage 1"
            })
    void oneScreenSaysWhereItStands(String batch, int count, int exitCode, String stage, String says)
            throws IOException {
        Desk desk = Desk.run("status", begun(batch, count).toString(), "--batch", record(batch));
        assertThat(desk.exitCode()).as(desk.toString()).isEqualTo(exitCode);
        assertThat(desk.err()).isEmpty();
        assertThat(desk.out()).contains(stage).contains(says);
        assertThat(desk.outLines())
                .hasSizeLessThanOrEqualTo(Terminal.HEIGHT)
                .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(Terminal.WIDTH))
                .containsSubsequence(Answer.SAFETY);
    }

    @Test
    void whatTheDocumentAllowsIsCited() throws IOException {
        Desk desk = Desk.run("status", begun(LATE, 560).toString(), "--batch", record(LATE));
        assertThat(desk.out()).contains("Allowed", "reheat to 165 °F/15 s", "By when  Cooling stage 2");
    }

    @ParameterizedTest
    @ValueSource(strings = {"UTF-8", "UTF-16LE", "UTF-16BE"})
    void aLastLineCutShortIsLeftOut(String encoding) throws IOException {
        List<String> whole = lines(SMOKED).subList(0, 290);
        String text = (encoding.equals("UTF-8") ? "" : "\ufeff") + String.join("\r\n", whole) + "\r\n";
        String cut = lines(SMOKED).get(290).substring(0, lines(SMOKED).get(290).length() - 2);
        Charset charset = Charset.forName(encoding);
        Path clean = Files.writeString(folder.resolve("clean.csv"), text, charset);
        Path torn = Files.writeString(folder.resolve("torn.csv"), text + cut, charset);
        Desk desk = Desk.run("status", torn.toString(), "--batch", record(SMOKED));
        assertThat(desk.exitCode()).as(desk.err()).isEqualTo(2);
        assertThat(desk.out())
                .isEqualTo(Desk.run("status", clean.toString(), "--batch", record(SMOKED))
                        .out());
    }

    /** The log grows while it is followed: by some lines, by half a line, by the rest. */
    @Test
    @Timeout(120)
    void aGrowingLogIsFollowedToTheEndOfItsLastStage() throws Exception {
        List<String> lines = lines(SMOKED);
        Path log = folder.resolve("growing log.csv");
        Files.writeString(log, String.join("\n", lines.subList(0, 2)) + "\n");
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        Terminal terminal = new Terminal(
                new PrintWriter(out, true), new PrintWriter(err, true), true, false, false, Optional.empty(), Map.of());
        CompletableFuture<Integer> command = CompletableFuture.supplyAsync(() -> Holdproof.run(
                terminal, "status", log.toString(), "--batch", record(SMOKED), "--follow", "--every", "1 s"));

        await(() -> err.toString().contains("Waiting for more"));
        append(log, lines.subList(2, 700), lines.get(700).substring(0, PREAMBLE_AND_MORE));
        await(() -> out.toString().contains("bath under way"));
        String rest = lines.get(700).substring(PREAMBLE_AND_MORE);
        append(
                log,
                Stream.concat(Stream.of(rest), lines.subList(701, 1300).stream())
                        .toList(),
                "");
        await(() -> out.toString().contains("chill under way"));
        append(log, lines.subList(1300, lines.size()), "");

        assertThat(command.get(60, TimeUnit.SECONDS)).isZero();
        assertThat(out.toString()).contains("the last stage is over").contains("✔ MET: the record proves every limit");
        assertThat(out.toString()).doesNotContain("\u001b");
        assertThat(err.toString().lines()).allSatisfy(line -> assertThat(line).contains("Waiting for more"));
    }

    private static void append(Path log, List<String> lines, String begun) throws IOException {
        Files.writeString(log, String.join("\n", lines) + "\n" + begun, StandardOpenOption.APPEND);
    }

    private static void await(BooleanSupplier condition) throws InterruptedException {
        while (!condition.getAsBoolean()) {
            Thread.sleep(50);
        }
    }

    @Test
    @Timeout(60)
    void aTerminalIsRedrawn() {
        StringWriter out = new StringWriter();
        Terminal terminal = new Terminal(
                new PrintWriter(out),
                new PrintWriter(new StringWriter()),
                true,
                true,
                false,
                Optional.empty(),
                Map.of());
        int exitCode =
                Holdproof.run(terminal, "status", DemoRun.file(SMOKED + ".csv"), "--batch", record(SMOKED), "--follow");
        terminal.out().flush();
        assertThat(exitCode).isZero();
        assertThat(out.toString()).startsWith("\u001b[H\u001b[2J");
    }

    @Test
    void whatCannotBeDoneIsRefused() throws IOException {
        String log = begun(SMOKED, 700).toString();
        refused(64, "--follow", "status", log, "--batch", record(SMOKED), "--every", "30 s");
        for (String time : List.of("30", "0 s", "2 h", "61 min", "-5 s", "soon")) {
            refused(64, "--every " + time, "status", log, "--batch", record(SMOKED), "--follow", "--every=" + time);
        }
        refused(64, "atlantis", "status", log, "--batch", record(SMOKED), "--authority", "atlantis");
        refused(64, "--batch", "status", log);
        refused(65, "no such file", "status", folder.resolve("none.csv").toString(), "--batch", record(SMOKED));
        refused(
                65,
                "no such file",
                "status",
                log,
                "--batch",
                folder.resolve("none.json").toString(),
                "--follow");
        refused(65, "expected", "status", begun(SMOKED, 1).toString(), "--batch", record(SMOKED));
    }

    private static void refused(int exitCode, String says, String... arguments) {
        Desk desk = Desk.run(arguments);
        assertThat(desk.exitCode()).as(desk.toString()).isEqualTo(exitCode);
        assertThat(desk.out()).isEmpty();
        assertThat(desk.err()).startsWith("holdproof: ").contains(says).doesNotContain("Exception");
    }
}
