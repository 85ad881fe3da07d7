package org.holdproof.report.seal;

import static org.assertj.core.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.abort;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** A program of the operating system that a test asks for a second opinion. */
public record OutsideTool(String command, String debianPackage) {
    public static final OutsideTool PDFSIG = new OutsideTool("pdfsig", "poppler-utils");
    public static final OutsideTool QPDF = new OutsideTool("qpdf", "qpdf");
    /** Takes a PDF apart into text. */
    public static final OutsideTool PDFTOTEXT = new OutsideTool("pdftotext", "poppler-utils");

    public static final OutsideTool OPENSSL = new OutsideTool("openssl", "openssl");

    /** What it said, and the status it ended with. */
    public record Answer(int status, String text) {}

    /**
     * Runs it. Where it is not installed the test fails in CI, and elsewhere is skipped with the reason.
     *
     * @param arguments what comes after the command
     */
    public Answer run(Path folder, String... arguments) throws IOException, InterruptedException {
        if (!installed()) {
            String reason = command + " is not installed: apt-get install " + debianPackage;
            if (System.getenv("CI") != null) {
                fail(reason);
            }
            abort(reason);
        }
        List<String> line = new ArrayList<>(List.of(command));
        line.addAll(Arrays.asList(arguments));
        Path output = Files.createTempFile(folder, command, ".txt");
        Process process = new ProcessBuilder(line)
                .directory(folder.toFile())
                .redirectErrorStream(true)
                .redirectOutput(output.toFile())
                .start();
        int status = process.waitFor();
        return new Answer(status, new String(Files.readAllBytes(output), StandardCharsets.UTF_8));
    }

    private boolean installed() {
        String path = System.getenv("PATH");
        return path != null
                && Arrays.stream(path.split(File.pathSeparator))
                        .anyMatch(folder -> Files.isExecutable(Path.of(folder, command)));
    }
}
