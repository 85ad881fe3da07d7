package org.holdproof.cli;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import org.holdproof.cli.terminal.Terminal;
import picocli.CommandLine.Option;

/** Where a key's passphrase comes from: a file, the environment, or the keyboard; never the command line. */
final class PassphraseOption {
    static final String VARIABLE = "HOLDPROOF_PASSPHRASE";

    private static final int LONGEST_FILE = 4096;

    @Option(
            names = "--passphrase-file",
            paramLabel = "FILE",
            description = "Read the key's passphrase from the first line of FILE. Without it the environment variable "
                    + VARIABLE + " is used, or you are asked.")
    private Optional<Path> file = Optional.empty();

    Optional<Path> file() {
        return file;
    }

    /** The passphrase of a key that exists. */
    char[] read(Terminal terminal, Path key) throws Refusal {
        Optional<char[]> given = given(terminal);
        return given.isPresent() ? given.get() : typed(terminal, "Passphrase of " + key + ": ");
    }

    /** The passphrase of a key about to be made; typed twice where it is typed. */
    char[] readNew(Terminal terminal, Path key) throws Refusal {
        Optional<char[]> given = given(terminal);
        if (given.isPresent()) {
            return given.get();
        }
        char[] first = typed(terminal, "New passphrase for " + key + ": ");
        char[] second = typed(terminal, "The same again: ");
        if (!Arrays.equals(first, second)) {
            throw Refusal.usage("the two passphrases differ; no key was made");
        }
        return first;
    }

    private Optional<char[]> given(Terminal terminal) throws Refusal {
        if (file.isPresent()) {
            return Optional.of(firstLine(file.get()));
        }
        return terminal.variable(VARIABLE).map(String::toCharArray);
    }

    private static char[] typed(Terminal terminal, String prompt) throws Refusal {
        if (terminal.keyboard().isEmpty()) {
            throw Refusal.usage("the key needs its passphrase, and there is no keyboard to ask at: name a file with"
                    + " --passphrase-file, or set " + VARIABLE);
        }
        char[] typed = terminal.keyboard().get().readPassword("%s", prompt);
        if (typed == null || typed.length == 0) {
            throw Refusal.usage("no passphrase was typed");
        }
        return typed;
    }

    private static char[] firstLine(Path file) throws Refusal {
        try {
            if (Files.size(file) > LONGEST_FILE) {
                throw Refusal.unreadable(file + " is too long to be a passphrase");
            }
            CharBuffer text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(Files.readAllBytes(file)));
            int end = 0;
            while (end < text.length() && text.charAt(end) != '\n' && text.charAt(end) != '\r') {
                end++;
            }
            if (end == 0) {
                throw Refusal.unreadable(file + ": the first line is empty; the passphrase was expected there");
            }
            char[] line = new char[end];
            text.get(line);
            return line;
        } catch (CharacterCodingException notText) {
            throw Refusal.unreadable(file + ": not text in UTF-8; a passphrase was expected");
        } catch (IOException failed) {
            throw Refusal.unreadable(ErrorMessages.words(failed) + "; the key's passphrase was expected there");
        }
    }
}
