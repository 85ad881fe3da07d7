package org.holdproof.cli;

import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.holdproof.cli.terminal.Terminal;
import org.holdproof.report.seal.SigningKey;
import org.holdproof.report.seal.TimestampService;
import org.holdproof.report.seal.UnusableKeyException;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What a report is sealed with. */
final class KeyOptions {
    private static final Duration PATIENCE = Duration.ofSeconds(20);

    @Option(
            names = "--key",
            paramLabel = "P12",
            description = "Seal the report with the private key in this PKCS#12 file (make one: holdproof key new). "
                    + "Without it the report is unsealed and says so.")
    private Optional<Path> key = Optional.empty();

    @Mixin
    private PassphraseOption passphrase = new PassphraseOption();

    @Option(
            names = "--timestamp",
            paramLabel = "URL",
            description = "Have the seal's time witnessed by the RFC 3161 timestamp authority at URL.")
    private Optional<URI> timestamp = Optional.empty();

    Optional<Path> file() {
        return key;
    }

    /** Every file it names: none of them may be written over. */
    List<Path> files() {
        return Stream.of(key, passphrase.file()).flatMap(Optional::stream).toList();
    }

    /** The key, opened; empty where none was named. */
    Optional<SigningKey> open(Terminal terminal, Instant now) throws Refusal, UnusableKeyException {
        if (key.isEmpty()) {
            return Optional.empty();
        }
        InputFile.checkReadable(key.get());
        char[] typed = passphrase.read(terminal, key.get());
        try {
            return Optional.of(SigningKey.open(key.get(), typed, now));
        } finally {
            Arrays.fill(typed, '\0');
        }
    }

    Optional<TimestampService> timestamps() throws Refusal {
        if (timestamp.isPresent() && key.isEmpty()) {
            throw Refusal.usage("--timestamp needs --key: only a seal's time can be witnessed");
        }
        try {
            return timestamp.map(address -> new TimestampService(address, PATIENCE));
        } catch (IllegalArgumentException unfit) {
            throw Refusal.usage("--timestamp: " + timestamp.orElseThrow() + " is no http or https address");
        }
    }
}
