package org.holdproof.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** The demo, run once for all tests that need its files. */
final class DemoRun {
    private DemoRun() {}

    static final Path FOLDER = make();

    static String file(String name) {
        return FOLDER.resolve(name).toString();
    }

    private static Path make() {
        try {
            Path folder = Files.createTempDirectory("holdproof demo ").resolve("of tests");
            Desk demo = Desk.run("demo", folder.toString());
            if (demo.exitCode() != 0) {
                throw new IllegalStateException(demo.toString());
            }
            return folder;
        } catch (IOException failed) {
            throw new IllegalStateException(failed);
        }
    }
}
