package org.holdproof.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.concurrent.Callable;
import org.holdproof.cli.terminal.Progress;
import org.holdproof.cli.terminal.Terminal;
import org.holdproof.report.seal.NewSigningKey;
import org.holdproof.report.seal.SigningKey;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code holdproof key new}. */
@Command(
        name = "new",
        header = "Make a new signing key.",
        description = {
            "",
            "Writes a PKCS#12 file that only you can read, and prints the fingerprint to give to your inspector: it is "
                    + "how a report's seal is known to be yours.",
            ""
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        exitCodeListHeading = "%nExit code:%n",
        exitCodeList = {
            " 0:The key was made.",
            "64:Usage: the file exists already, cannot be written there, or a value does not fit.",
            "70:Internal: a fault of the program or of the disk under it."
        },
        footerHeading = "%n",
        footer = "A lost passphrase cannot be recovered; reports sealed with the key stay checkable.")
final class KeyNewCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Option(
            names = "--name",
            required = true,
            paramLabel = "NAME",
            description = "The kitchen's name, as it should stand in the seal.")
    private String name = "";

    @Option(
            names = "--out",
            paramLabel = "FILE",
            defaultValue = "holdproof-key.p12",
            description = "Where to write the key (default: ${DEFAULT-VALUE}). Never overwrites a file.")
    private Path out = Path.of("");

    @Option(
            names = "--years",
            paramLabel = "N",
            defaultValue = "5",
            description = "How long it can seal reports, in years (default: ${DEFAULT-VALUE}).")
    private int years;

    @Mixin
    private PassphraseOption passphrase = new PassphraseOption();

    KeyNewCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws Exception {
        OutputFile.secretAt(out);
        if (years < 1 || years > NewSigningKey.MOST_YEARS) {
            throw Refusal.usage("--years " + years + ": from 1 to " + NewSigningKey.MOST_YEARS);
        }
        char[] secret = passphrase.readNew(terminal, out);
        SigningKey key;
        try (Progress progress = new Progress(terminal)) {
            if (secret.length < NewSigningKey.SHORTEST_PASSPHRASE) {
                throw Refusal.usage("the passphrase has " + secret.length + " characters; at least "
                        + NewSigningKey.SHORTEST_PASSPHRASE + " are needed");
            }
            progress.now("making the key");
            key = NewSigningKey.create(out, secret, name, Instant.now(), years);
        } finally {
            Arrays.fill(secret, '\0');
        }
        PrintWriter to = terminal.out();
        to.println("Key: " + out + " (readable by you alone; keep a copy where a fire does not reach)");
        to.println("Name in the seal: " + key.signer());
        to.println("Valid until: " + key.notAfter());
        to.println("Fingerprint, for your inspector (SHA-256):");
        to.println("  " + key.fingerprint().hex());
        to.flush();
        return 0;
    }
}
