package org.holdproof.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The launcher in a house of cardboard: its script is the real one, Java and Maven are stand-ins that say what they were
 * asked. Every path has a blank in it.
 */
class LauncherTest {
    private static final String JAVA =
            """
            #!/bin/sh
            for argument in "$@"; do printf '<%s>\\n' "$argument"; done
            exit 102
            """;
    private static final String MAVEN =
            """
            #!/bin/sh
            echo '[INFO] Building Holdproof core 0.1.0 [1/2]'
            echo run >> maven-runs
            mkdir -p cli/target
            echo jar > cli/target/holdproof.jar
            """;

    @TempDir
    private Path temporary = Path.of("");

    private Path house = Path.of("");
    private Path tools = Path.of("");

    private record Outcome(int exitCode, String out, String err) {}

    @BeforeEach
    void build() throws IOException {
        house = temporary.resolve("a house");
        Path cli = Files.createDirectories(house.resolve("cli"));
        Files.copy(Path.of("holdproof"), cli.resolve("holdproof"));
        Files.createDirectories(house.resolve("core/src/main"));
        for (String file : List.of("pom.xml", "core/pom.xml", "core/src/main/Some.java")) {
            Files.writeString(house.resolve(file), "source");
        }
        tools = Files.createDirectories(temporary.resolve("all tools/bin"));
        for (String tool : List.of("find", "head", "tail", "sed", "readlink", "mkdir", "rm", "cat", "sleep")) {
            tool(tool, "#!/bin/sh\nPATH=/usr/bin:/bin exec " + tool + " \"$@\"\n");
        }
        tool("java", JAVA);
        tool("javac", "#!/bin/sh\n");
        tool("mvn", MAVEN);
        java("17.0.15");
    }

    @Test
    void buildsOnFirstUseSaysSoAndHandsOverEveryArgument() throws Exception {
        Outcome outcome = start(temporary, house.resolve("cli/holdproof"), "verify", "two words", "", "*");

        assertThat(outcome.exitCode()).as("the command's own exit code").isEqualTo(2);
        assertThat(outcome.err())
                .contains("first use: building")
                .contains("Holdproof core")
                .contains("built");
        assertThat(outcome.out())
                .contains(
                        "<-jar>\n<" + house.resolve("cli/target/holdproof.jar") + ">\n<verify>\n<two words>\n<>\n<*>\n")
                .contains("<-XX:SharedArchiveFile=" + house.resolve("cli/target/holdproof.jsa") + ">")
                .contains("<-Dholdproof.tty=>");
        assertThat(house.resolve("cli/target/build.log")).content().contains("[INFO] Building");
    }

    @Test
    void buildsAgainOnlyWhenASourceIsNewer() throws Exception {
        start(temporary, house.resolve("cli/holdproof"));
        Outcome second = start(temporary, house.resolve("cli/holdproof"));
        assertThat(second.err()).isEmpty();
        assertThat(runs()).isEqualTo(1);

        Files.setLastModifiedTime(
                house.resolve("core/src/main/Some.java"),
                FileTime.from(Instant.now().plusSeconds(5)));
        Outcome third = start(temporary, house.resolve("cli/holdproof"));
        assertThat(third.err()).contains("building again");
        assertThat(runs()).isEqualTo(2);
    }

    @Test
    void findsItsHouseThroughLinksAndFromAnyFolder() throws Exception {
        Path link = temporary.resolve("a link");
        Path relative = Files.createDirectories(temporary.resolve("b")).resolve("relative");
        Files.createSymbolicLink(link, house.resolve("cli/holdproof"));
        Files.createSymbolicLink(relative, Path.of("../a link"));

        Outcome outcome = start(house.resolve("core"), relative, "tables");

        assertThat(outcome.out()).contains("<" + house.resolve("cli/target/holdproof.jar") + ">\n<tables>");
    }

    @Test
    void saysHowToGetJavaAndMaven() throws Exception {
        Files.delete(tools.resolve("mvn"));
        Outcome noMaven = start(temporary, house.resolve("cli/holdproof"));
        assertThat(noMaven.exitCode()).isEqualTo(70);
        assertThat(noMaven.err()).contains("Maven is not installed").contains("apt-get install");

        Files.delete(tools.resolve("java"));
        Outcome noJava = start(temporary, house.resolve("cli/holdproof"));
        assertThat(noJava.exitCode()).isEqualTo(70);
        assertThat(noJava.err()).contains("Java is not installed").contains("apt-get install");
    }

    @Test
    void refusesAnOldJavaBeforeItCanEndWithAVerdict() throws Exception {
        for (String old : List.of("11.0.23", "1.8.0_402")) {
            java(old);
            Outcome outcome = start(temporary, house.resolve("cli/holdproof"));
            assertThat(outcome.exitCode()).as(old).isEqualTo(70);
            assertThat(outcome.err()).contains("Java 17 or later is needed");
        }
        java("25");
        assertThat(start(temporary, house.resolve("cli/holdproof")).exitCode()).isEqualTo(2);
    }

    @Test
    void showsTheEndOfAFailedBuild() throws Exception {
        tool("mvn", "#!/bin/sh\necho '[ERROR] the reason'\nexit 1\n");
        Outcome outcome = start(temporary, house.resolve("cli/holdproof"), "demo");
        assertThat(outcome.exitCode()).isEqualTo(70);
        assertThat(outcome.err()).contains("the build failed").contains("[ERROR] the reason");
        assertThat(outcome.out()).isEmpty();
    }

    @Test
    void aJavaThatDoesNotStartIsNoVerdict() throws Exception {
        for (int code : new int[] {0, 1, 2, 134, 137}) {
            tool("java", "#!/bin/sh\nexit " + code + "\n");
            Outcome outcome = start(temporary, house.resolve("cli/holdproof"), "verify");
            assertThat(outcome.exitCode()).as("Java ended with %d", code).isEqualTo(70);
            assertThat(outcome.err()).contains("Java did not start, or broke off");
        }
        for (int code : new int[] {0, 1, 2, 64, 65, 70}) {
            tool("java", "#!/bin/sh\nexit " + (100 + code) + "\n");
            assertThat(start(temporary, house.resolve("cli/holdproof"), "verify")
                            .exitCode())
                    .isEqualTo(code);
        }
    }

    @Test
    void aSignalReachesJava() throws Exception {
        start(temporary, house.resolve("cli/holdproof"));
        tool(
                "java",
                "#!/bin/sh\ntrap 'echo told; exit 143' TERM\necho ready > \"$0.ready\"\nwhile :; do sleep 0.05; done\n");
        Path out = temporary.resolve("signalled");
        ProcessBuilder builder = new ProcessBuilder(
                        house.resolve("cli/holdproof").toString(), "status")
                .redirectOutput(out.toFile())
                .redirectErrorStream(true);
        builder.environment().clear();
        builder.environment().put("PATH", tools.toString());
        Process launched = builder.start();
        Path ready = tools.resolve("java.ready");
        while (!Files.exists(ready) && launched.isAlive()) {
            Thread.sleep(20);
        }
        launched.destroy();
        assertThat(launched.waitFor()).isEqualTo(143);
        assertThat(out).content().contains("told");
    }

    @Test
    void handsStandardInputOver() throws Exception {
        tool("java", "#!/bin/sh\ncat\nexit 100\n");
        Path in = Files.writeString(temporary.resolve("in"), "a log\n");
        ProcessBuilder builder = new ProcessBuilder(
                        house.resolve("cli/holdproof").toString(), "verify")
                .redirectInput(in.toFile())
                .redirectError(ProcessBuilder.Redirect.DISCARD);
        builder.environment().clear();
        builder.environment().put("PATH", tools.toString());
        Process launched = builder.start();
        assertThat(new String(launched.getInputStream().readAllBytes(), StandardCharsets.UTF_8))
                .isEqualTo("a log\n");
        assertThat(launched.waitFor()).isZero();
    }

    @Test
    void twoFirstUsesBuildOnce() throws Exception {
        tool("mvn", "#!/bin/sh\nsleep 1\n" + MAVEN.substring("#!/bin/sh\n".length()));
        List<Process> both = new ArrayList<>();
        for (int i = 0; i < 2; i++) {
            ProcessBuilder builder = new ProcessBuilder(
                            house.resolve("cli/holdproof").toString())
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .redirectError(temporary.resolve("err" + i).toFile());
            builder.environment().clear();
            builder.environment().put("PATH", tools.toString());
            both.add(builder.start());
        }
        for (Process one : both) {
            assertThat(one.waitFor()).isEqualTo(2);
        }
        assertThat(runs()).isEqualTo(1);
        assertThat(house.resolve("cli/target/build.lock")).doesNotExist();
    }

    @Test
    void aLockWhoseOwnerIsGoneHoldsNobodyUp() throws Exception {
        Path lock = Files.createDirectories(house.resolve("cli/target/build.lock"));
        Process gone = new ProcessBuilder("true").start();
        gone.waitFor();
        Files.writeString(lock.resolve("owner"), gone.pid() + "\n");

        assertThat(start(temporary, house.resolve("cli/holdproof")).exitCode()).isEqualTo(2);
    }

    @Test
    void refusesToBeSourced() throws Exception {
        Path script = Files.writeString(
                temporary.resolve("sourcing"), ". '" + house.resolve("cli/holdproof") + "'; echo still here\n");
        Outcome outcome = start(temporary, Path.of("/bin/bash"), script.toString());
        assertThat(outcome.out()).isEqualTo("still here\n");
        assertThat(outcome.err()).contains("do not source it");
    }

    private void java(String version) throws IOException {
        Files.writeString(tools.resolveSibling("release"), "IMPLEMENTOR=\"x\"\nJAVA_VERSION=\"" + version + "\"\n");
    }

    private void tool(String name, String script) throws IOException {
        Path file = tools.resolve(name);
        Files.deleteIfExists(file);
        Files.writeString(file, script);
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rwxr-xr-x"));
    }

    private int runs() throws IOException {
        return Files.readAllLines(house.resolve("maven-runs")).size();
    }

    private Outcome start(Path folder, Path script, String... arguments) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(script.toString()));
        command.addAll(List.of(arguments));
        Path out = temporary.resolve("out");
        Path err = temporary.resolve("err");
        ProcessBuilder builder = new ProcessBuilder(command)
                .directory(folder.toFile())
                .redirectOutput(out.toFile())
                .redirectError(err.toFile());
        Map<String, String> environment = builder.environment();
        environment.clear();
        environment.put("PATH", tools.toString());
        int exitCode = builder.start().waitFor();
        return new Outcome(
                exitCode, Files.readString(out, StandardCharsets.UTF_8), Files.readString(err, StandardCharsets.UTF_8));
    }
}
