package org.holdproof.cli.terminal;

import java.io.BufferedWriter;
import java.io.Console;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;

/**
 * The terminal a command speaks to.
 *
 * @param out where answers go
 * @param err where messages and progress go
 * @param unicode whether it shows more than ASCII
 * @param colour whether answers may be coloured
 * @param progress whether somebody watches {@code err}
 * @param keyboard where a passphrase can be typed unseen
 * @param environment the environment's variables
 */
public record Terminal(
        PrintWriter out,
        PrintWriter err,
        boolean unicode,
        boolean colour,
        boolean progress,
        Optional<Console> keyboard,
        Map<String, String> environment) {

    /** Columns an answer keeps to where the terminal's are not known. */
    public static final int WIDTH = 80;

    private static final int NARROWEST = 60;
    private static final int WIDEST = 200;

    /** Lines of the screen an answer keeps to, the shell's next prompt left aside. */
    public static final int HEIGHT = 23;

    /** The launcher names here which of the streams 1 and 2 are terminals: Java 17 cannot tell them apart. */
    private static final String TTY_PROPERTY = "holdproof.tty";

    /** The launcher names here how wide the terminal is, where the answer goes to one. */
    private static final String COLUMNS_PROPERTY = "holdproof.columns";

    /** Whatever is printed to it passes one door that lets no text from a file steer the screen. */
    public Terminal {
        out = new PrintWriter(new PrintableWriter(out), true);
        err = new PrintWriter(new PrintableWriter(err), true);
        environment = Map.copyOf(environment);
    }

    /** The terminal this process was started from. */
    public static Terminal ofProcess() {
        Map<String, String> environment = System.getenv();
        Optional<Console> console = Optional.ofNullable(System.console());
        String ttys = System.getProperty(TTY_PROPERTY, console.isPresent() ? "12" : "");
        Charset charset = charset();
        boolean unicode = charset.equals(StandardCharsets.UTF_8);
        boolean dumb = environment.getOrDefault("TERM", "dumb").equals("dumb");
        boolean plain = !environment.getOrDefault("NO_COLOR", "").isEmpty() || dumb;
        return new Terminal(
                writer(FileDescriptor.out, charset, unicode),
                writer(FileDescriptor.err, charset, unicode),
                unicode,
                ttys.contains("1") && !plain,
                ttys.contains("2") && !dumb,
                console,
                environment);
    }

    /**
     * Columns an answer is laid out for: the terminal's own, from {@value #NARROWEST} to {@value #WIDEST};
     * {@value #WIDTH} where they are not known.
     */
    public int width() {
        String columns = System.getProperty(COLUMNS_PROPERTY, "");
        if (!columns.matches("[0-9]{1,4}")) {
            columns = variable("COLUMNS").orElse("");
        }
        return columns.matches("[0-9]{1,4}") ? Math.max(NARROWEST, Math.min(WIDEST, Integer.parseInt(columns))) : WIDTH;
    }

    /** A variable of the environment that is set and not empty. */
    public Optional<String> variable(String name) {
        return Optional.ofNullable(environment.get(name)).filter(value -> !value.isEmpty());
    }

    private static Charset charset() {
        try {
            return Charset.forName(System.getProperty("native.encoding", "US-ASCII"));
        } catch (IllegalArgumentException unknown) {
            return StandardCharsets.US_ASCII;
        }
    }

    /** Not the process's own streams: those swallow a full disk. */
    private static PrintWriter writer(FileDescriptor stream, Charset charset, boolean unicode) {
        PrintWriter direct = new PrintWriter(
                new BufferedWriter(new OutputStreamWriter(new FileOutputStream(stream), charset)), true);
        return unicode ? direct : new PrintWriter(new PlainWriter(direct), true);
    }
}
