package org.holdproof.core.log.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.log.DateOrder;
import org.holdproof.core.log.LogSettings;
import org.holdproof.core.log.ProbeLog;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Logs with bytes changed, cut, put in or doubled: read or refused, never anything else, and never out of order. */
class BrokenInputTest {
    private static final int CHANGES_A_SEED = 100;
    private static final LogSettings SETTLED = new LogSettings(
            Optional.empty(),
            Optional.of(DateOrder.DAY_MONTH_YEAR),
            Optional.of(ZoneId.of("Europe/Oslo")),
            Optional.of(Instant.parse("2031-05-17T08:00:00Z")));
    private static final LogSettings ZONE = Logs.OSLO;

    static IntStream seeds() {
        return IntStream.range(0, 60);
    }

    private static List<byte[]> whole() {
        StringBuilder iso = new StringBuilder("\ufefftime,core °C,note\n");
        StringBuilder local = new StringBuilder("Serial: 1\n\nDatum;Zeit;Kern °C;Bad °C\n");
        StringBuilder elapsed = new StringBuilder("Elapsed (s)\tcore °F\n");
        StringBuilder quoted = new StringBuilder("\"When\",\"T1\",\"T2\"\r\n");
        StringBuilder fold = new StringBuilder("time,core °C\n");
        for (int i = 0; i < 30; i++) {
            iso.append(String.format(Locale.ROOT, "2031-05-17T08:%02d:00Z,%.1f,\"a, b\"\n", i, 50 + i * 0.3));
            local.append(String.format(Locale.ROOT, "17.05.2031;10:%02d;5%d,5;56,0\r\n", i, i % 10));
            elapsed.append(i * 10).append('\t').append(120 + i).append('\n');
            quoted.append(String.format(
                    Locale.ROOT, "\"May %d, 2031 10:%02d PM\",\"%d °C\",\"---\"\r\n", 1 + i / 20, i, 40 + i));
            fold.append(String.format(Locale.ROOT, "2030-10-27 0%d:%02d,54.4\n", 1 + i / 15, i % 15 * 4));
        }
        return List.of(
                iso.toString().getBytes(StandardCharsets.UTF_8),
                local.toString().getBytes(StandardCharsets.ISO_8859_1),
                elapsed.toString().getBytes(StandardCharsets.UTF_8),
                ("\ufeff" + quoted).getBytes(StandardCharsets.UTF_16LE),
                quoted.toString().getBytes(StandardCharsets.UTF_8),
                fold.toString().getBytes(StandardCharsets.UTF_8));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void isReadOrRefused(int seed) throws IOException {
        Random random = new Random(seed);
        List<byte[]> whole = whole();
        int refused = 0;
        for (int i = 0; i < CHANGES_A_SEED; i++) {
            byte[] broken = whole.get(random.nextInt(whole.size())).clone();
            for (int change = 1 + random.nextInt(3); change > 0; change--) {
                broken = change(random, broken);
            }
            try {
                ProbeLog log = LogReader.read(
                        "log.csv", new ByteArrayInputStream(broken), random.nextBoolean() ? SETTLED : ZONE);
                assertThat(log.rows()).isGreaterThan(1);
                for (int row = 1; row < log.rows(); row++) {
                    assertThat(log.millis(row)).isGreaterThan(log.millis(row - 1));
                }
                for (int channel = 0; channel < log.channels().size(); channel++) {
                    assertThat(log.channels().get(channel).name()).isNotBlank();
                    for (double reading : Logs.readings(log, channel)) {
                        assertThat(Double.isNaN(reading)
                                        || (reading >= ChannelReader.COLDEST && reading <= ChannelReader.HOTTEST))
                                .isTrue();
                    }
                }
                assertThat(log.faults()).allSatisfy(fault -> {
                    assertThat(fault.firstLine()).isPositive().isLessThanOrEqualTo(fault.lastLine());
                    assertThat(fault.detail()).isNotBlank();
                });
            } catch (UnreadableInputException refusal) {
                refused++;
                assertThat(refusal.getMessage()).startsWith("log.csv").doesNotContain("\u0000");
                assertThat(refusal.remedy()).isNotBlank();
            }
        }
        assertThat(refused).isBetween(1, CHANGES_A_SEED);
    }

    private static byte[] change(Random random, byte[] bytes) {
        int at = random.nextInt(bytes.length);
        return switch (random.nextInt(6)) {
            case 0 -> {
                byte[] flipped = bytes.clone();
                flipped[at] ^= (byte) (1 << random.nextInt(8));
                yield flipped;
            }
            case 1 -> Arrays.copyOf(bytes, Math.max(1, at));
            case 2 -> insert(bytes, at, new byte[] {(byte) random.nextInt(256)});
            case 3 ->
                insert(
                        bytes,
                        at,
                        "\",;\n\r\t|#\u00b0-+:.0129eECF \"\"\n\n"
                                .substring(random.nextInt(20))
                                .getBytes(StandardCharsets.UTF_8));
            case 4 -> {
                int end = Math.min(bytes.length, at + 1 + random.nextInt(60));
                yield insert(bytes, random.nextInt(bytes.length), Arrays.copyOfRange(bytes, at, end));
            }
            default -> {
                int end = Math.min(bytes.length, at + 1 + random.nextInt(60));
                byte[] shorter = new byte[Math.max(1, bytes.length - (end - at))];
                System.arraycopy(bytes, 0, shorter, 0, Math.min(at, shorter.length));
                System.arraycopy(bytes, end, shorter, Math.min(at, shorter.length), bytes.length - end);
                yield shorter;
            }
        };
    }

    private static byte[] insert(byte[] bytes, int at, byte[] more) {
        byte[] longer = new byte[bytes.length + more.length];
        System.arraycopy(bytes, 0, longer, 0, at);
        System.arraycopy(more, 0, longer, at, more.length);
        System.arraycopy(bytes, at, longer, at + more.length, bytes.length - at);
        return longer;
    }
}
