package org.holdproof.cli.manual;

import java.nio.file.Path;
import org.holdproof.cli.Holdproof;

/**
 * Goes through the commands once, so that the classes they load can be kept ready in a sharing archive; called by the
 * build.
 */
public final class ClassLoadingRun {
    private ClassLoadingRun() {}

    /** Runs the demo in the folder named by the first argument, and the everyday commands on what it wrote. */
    public static void main(String[] arguments) {
        Path folder = Path.of(arguments[0]);
        String batch = folder.resolve("1-smoked-then-bagged").toString();
        must(0, "demo", folder.toString());
        must(
                0,
                "verify",
                batch + ".csv",
                "--batch",
                batch + ".batch.json",
                "--pdf",
                folder.resolve("again.pdf").toString(),
                "--json",
                folder.resolve("again.json").toString(),
                "--key",
                folder.resolve("demo-key.p12").toString(),
                "--passphrase-file",
                folder.resolve("demo-key.passphrase.txt").toString());
        must(0, "recheck", folder.resolve("again.pdf").toString());
        must(0, "tables");
        must(0, "help", "verify");
    }

    private static void must(int exitCode, String... arguments) {
        int found = Holdproof.run(arguments);
        if (found != exitCode) {
            System.exit(found == 0 ? 1 : found);
        }
    }
}
