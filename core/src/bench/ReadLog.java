import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import org.holdproof.core.log.reading.LogReader;
import org.holdproof.core.log.LogSettings;
import org.holdproof.core.log.ProbeLog;

/**
 * Reading a log against counting its line breaks in a stream, in one process and in processor time of the
 * reading thread; the median of five rounds. Run by read-log.sh. The data are made up:
 * one row a second from 2031-05-17, a slow rise with a ripple.
 */
public final class ReadLog {
    private static final int ROUNDS = 5;

    public static void main(String[] arguments) throws Exception {
        int rows = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 10_000_000;
        LogSettings settings = new LogSettings(
                Optional.empty(), Optional.empty(), Optional.of(ZoneId.of("Europe/Oslo")), Optional.empty());
        compare("ISO 8601 with Z, one channel", rows, 1, "yyyy-MM-dd'T'HH:mm:ss'Z'", ',', '.', settings);
        compare("17/05/2031 10:00:00, semicolon, decimal comma", rows, 1, "dd/MM/yyyy HH:mm:ss", ';', ',', settings);
        compare("ISO 8601 with Z, four channels", rows / 4, 4, "yyyy-MM-dd'T'HH:mm:ss'Z'", ',', '.', settings);
    }

    private static void compare(
            String what, int rows, int channels, String pattern, char separator, char mark, LogSettings settings)
            throws Exception {
        Path file = Files.createTempFile("read-log", ".csv");
        try {
            write(file, rows, channels, pattern, separator, mark);
            double[] counting = new double[ROUNDS];
            double[] reading = new double[ROUNDS];
            for (int round = 0; round < ROUNDS; round++) {
                long start = cpuNanos();
                long breaks = countBreaks(file);
                counting[round] = (cpuNanos() - start) / 1e9;
                start = cpuNanos();
                ProbeLog log = LogReader.read(file, settings);
                reading[round] = (cpuNanos() - start) / 1e9;
                if (log.rows() != rows || breaks != rows + 1L) {
                    throw new IllegalStateException("read " + log.rows() + " of " + rows + " rows");
                }
            }
            Arrays.sort(counting);
            Arrays.sort(reading);
            System.out.printf(
                    Locale.ROOT,
                    "%s: %,d rows, %,d MB: counting line breaks %.2f s, reading %.2f s, ratio %.1f, %.1f million"
                            + " readings/s%n",
                    what,
                    rows,
                    Files.size(file) / 1_000_000,
                    counting[ROUNDS / 2],
                    reading[ROUNDS / 2],
                    reading[ROUNDS / 2] / counting[ROUNDS / 2],
                    (double) rows * channels / reading[ROUNDS / 2] / 1e6);
        } finally {
            Files.delete(file);
        }
    }

    /** Processor time of this thread, so that other work on the machine does not count. */
    private static long cpuNanos() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }

    private static long countBreaks(Path file) throws IOException {
        long breaks = 0;
        byte[] buffer = new byte[1 << 16];
        try (InputStream bytes = Files.newInputStream(file)) {
            for (int count = bytes.read(buffer); count >= 0; count = bytes.read(buffer)) {
                for (int i = 0; i < count; i++) {
                    if (buffer[i] == '\n') {
                        breaks++;
                    }
                }
            }
        }
        return breaks;
    }

    private static void write(Path file, int rows, int channels, String pattern, char separator, char mark)
            throws IOException {
        DateTimeFormatter time = DateTimeFormatter.ofPattern(pattern, Locale.ROOT);
        long start = Instant.parse("2031-05-17T08:00:00Z").getEpochSecond();
        try (OutputStream bytes = new BufferedOutputStream(Files.newOutputStream(file), 1 << 20)) {
            StringBuilder line = new StringBuilder("time");
            for (int channel = 1; channel <= channels; channel++) {
                line.append(separator).append("core ").append(channel).append(" °C");
            }
            bytes.write(line.append('\n').toString().getBytes(StandardCharsets.UTF_8));
            for (int row = 0; row < rows; row++) {
                line.setLength(0);
                time.formatTo(LocalDateTime.ofEpochSecond(start + row, 0, ZoneOffset.UTC), line);
                for (int channel = 1; channel <= channels; channel++) {
                    int tenths = 540 + channel * 10 + (row / 60) % 40;
                    line.append(separator).append(tenths / 10).append(mark).append(tenths % 10);
                }
                bytes.write(line.append('\n').toString().getBytes(StandardCharsets.UTF_8));
            }
        }
    }
}
