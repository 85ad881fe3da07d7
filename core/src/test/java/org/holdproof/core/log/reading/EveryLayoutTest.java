package org.holdproof.core.log.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.stream.LongStream;
import org.holdproof.core.log.LogSettings;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.quantity.TemperatureUnit;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The same data, written in a layout drawn by lot: separator, encoding, line ends, quotation marks, unit and where it
 * stands, clock, order of the columns, other columns, preamble. They read alike within the printed precision.
 */
class EveryLayoutTest {
    private static final int ROWS = 40;
    private static final ZoneOffset OFFSET = ZoneOffset.ofHours(2);
    private static final String[] NAMES = {"core", "bath", "air"};

    static LongStream seeds() {
        return LongStream.range(0, 400);
    }

    private record Clock(List<String> headings, List<List<String>> cells, LogSettings settings) {}

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void readsAlike(long seed) {
        Random random = new Random(seed);
        int channels = 1 + random.nextInt(NAMES.length);
        Instant start = Instant.parse("2031-05-17T08:00:00Z").plusSeconds(random.nextInt(3000));
        long[] millis = new long[ROWS];
        double[][] celsius = new double[channels][ROWS];
        long now = start.toEpochMilli();
        for (int row = 0; row < ROWS; row++) {
            millis[row] = now;
            now += 1000L * (30 + random.nextInt(60));
            for (int channel = 0; channel < channels; channel++) {
                boolean missing = row > 0 && random.nextInt(12) == 0;
                celsius[channel][row] = missing ? Double.NaN : 20 + random.nextInt(600) / 10.0;
            }
        }

        char separator = ",;\t|".charAt(random.nextInt(4));
        boolean comma = random.nextBoolean();
        boolean quoteAll = random.nextInt(3) == 0 || (comma && separator == ',');
        Clock clock = clock(random, millis);
        Optional<TemperatureUnit> general = Optional.empty();
        int unitPlace = random.nextInt(4);
        TemperatureUnit[] units = new TemperatureUnit[channels];
        TemperatureUnit one = unit(random);
        for (int channel = 0; channel < channels; channel++) {
            units[channel] = unitPlace < 2 ? unit(random) : one;
        }

        List<List<String>> columns = new ArrayList<>();
        for (int i = 0; i < clock.headings().size(); i++) {
            List<String> column = new ArrayList<>();
            column.add(clock.headings().get(i));
            for (List<String> cells : clock.cells()) {
                column.add(cells.get(i));
            }
            columns.add(column);
        }
        String[] missingWords = {"", "---", "NaN", "error"};
        String missingWord = missingWords[random.nextInt(missingWords.length)];
        for (int channel = 0; channel < channels; channel++) {
            List<String> column = new ArrayList<>();
            String symbol = units[channel].symbol();
            String letter = symbol.substring(1);
            String[] inHeading = {" " + symbol, " (" + symbol + ")", " [" + letter + "]", "_deg" + letter, "_" + letter
            };
            column.add(NAMES[channel] + (unitPlace == 0 ? inHeading[random.nextInt(inHeading.length)] : ""));
            for (double reading : celsius[channel]) {
                String figure = String.format(Locale.ROOT, "%.2f", units[channel].fromCelsius(reading));
                if (comma) {
                    figure = figure.replace('.', ',');
                }
                String inCell = unitPlace == 1 ? figure + " " + symbol : figure;
                column.add(Double.isNaN(reading) ? missingWord : inCell);
            }
            columns.add(column);
        }
        if (random.nextBoolean()) {
            columns.add(otherColumn(random));
        }
        Collections.shuffle(columns, random);

        StringBuilder text = new StringBuilder();
        String lineEnd = random.nextBoolean() ? "\r\n" : "\n";
        if (random.nextBoolean()) {
            text.append("Serial number: 4711").append(lineEnd).append(lineEnd);
        }
        if (unitPlace == 2) {
            text.append("Unit: ").append(one.symbol()).append(lineEnd);
        } else if (unitPlace == 3) {
            general = Optional.of(one);
        }
        for (int line = 0; line <= ROWS; line++) {
            for (int column = 0; column < columns.size(); column++) {
                String cell = columns.get(column).get(line);
                text.append(column > 0 ? String.valueOf(separator) : "");
                boolean quote = quoteAll || cell.indexOf(separator) >= 0;
                text.append(quote ? "\"" + cell.replace("\"", "\"\"") + "\"" : cell);
            }
            text.append(line < ROWS || random.nextBoolean() ? lineEnd : "");
        }

        LogSettings settings = new LogSettings(
                general,
                clock.settings().dateOrder(),
                clock.settings().zone(),
                clock.settings().start());
        ProbeLog log = Logs.read(encode(random, text.toString()), settings);

        assertThat(log.rows()).as(text.toString()).isEqualTo(ROWS);
        assertThat(log.channels()).hasSize(channels);
        for (int channel = 0; channel < channels; channel++) {
            int place = log.channelNamed(NAMES[channel]).orElseThrow();
            assertThat(log.channels().get(place).unit()).isEqualTo(units[channel]);
            for (int row = 0; row < ROWS; row++) {
                assertThat(log.millis(row)).isEqualTo(millis[row]);
                if (Double.isNaN(celsius[channel][row])) {
                    assertThat(log.celsius(place, row)).isNaN();
                } else {
                    assertThat(log.celsius(place, row)).isCloseTo(celsius[channel][row], within(0.005 + 1e-9));
                }
            }
        }
    }

    private static TemperatureUnit unit(Random random) {
        return random.nextBoolean() ? TemperatureUnit.CELSIUS : TemperatureUnit.FAHRENHEIT;
    }

    private static List<String> otherColumn(Random random) {
        List<String> column = new ArrayList<>();
        boolean humidity = random.nextBoolean();
        column.add(humidity ? "Humidity (%)" : "Note");
        for (int row = 0; row < ROWS; row++) {
            column.add(
                    humidity ? String.valueOf(30 + random.nextInt(60)) : random.nextInt(9) == 0 ? "bag \"two\"" : "");
        }
        return column;
    }

    private static byte[] encode(Random random, String text) {
        return switch (random.nextInt(6)) {
            case 0 -> ("\ufeff" + text).getBytes(StandardCharsets.UTF_8);
            case 1 -> ("\ufeff" + text).getBytes(StandardCharsets.UTF_16LE);
            case 2 -> ("\ufeff" + text).getBytes(StandardCharsets.UTF_16BE);
            case 3 -> text.getBytes(StandardCharsets.ISO_8859_1);
            case 4 -> text.getBytes(Charset.forName("windows-1252"));
            default -> text.getBytes(StandardCharsets.UTF_8);
        };
    }

    private static Clock clock(Random random, long[] millis) {
        LogSettings none = LogSettings.NONE;
        LogSettings zone = Logs.zone("Europe/Oslo");
        LogSettings start = Logs.with(none, Instant.ofEpochMilli(millis[0]));
        String[] offsets = {
            "yyyy-MM-dd'T'HH:mm:ssXXX", "yyyy-MM-dd HH:mm:ss xx", "yyyy-MM-dd'T'HH:mm:ss.SSSXXX", "yyyyMMdd'T'HHmmssX"
        };
        String[] locals = {
            "yyyy-MM-dd HH:mm:ss",
            "yyyy/MM/dd HH:mm:ss",
            "dd.MM.yyyy HH:mm:ss",
            "dd/MM/yyyy HH:mm:ss",
            "M/d/yyyy h:mm:ss a",
            "d MMM yyyy HH:mm:ss",
            "MMMM d, yyyy hh:mm:ss a",
            "HH:mm:ss dd/MM/yyyy",
            "dd-MM-yyyy'T'HH:mm:ss"
        };
        String[] dates = {"yyyy-MM-dd", "dd.MM.yyyy", "MM/dd/yyyy", "d MMM yyyy"};
        String[] times = {"HH:mm:ss", "H:mm:ss", "hh:mm:ss a"};
        return switch (random.nextInt(8)) {
            case 0 -> one("Timestamp", offsets[random.nextInt(offsets.length)], millis, none);
            case 1, 2 -> one("Time", locals[random.nextInt(locals.length)], millis, zone);
            case 3 -> two(dates[random.nextInt(dates.length)], times[random.nextInt(times.length)], millis, zone);
            case 4 -> figures("Epoch", millis, 0, 1000, none);
            case 5 -> figures("Unix time", millis, 0, 1, none);
            case 6 -> figures("Elapsed (s)", millis, millis[0], 1000, start);
            default -> elapsed(millis, start);
        };
    }

    private static String format(long millis, String pattern) {
        return DateTimeFormatter.ofPattern(pattern, Locale.ENGLISH)
                .format(OffsetDateTime.ofInstant(Instant.ofEpochMilli(millis), ZoneId.of(OFFSET.getId())));
    }

    private static Clock one(String heading, String pattern, long[] millis, LogSettings settings) {
        List<List<String>> cells = new ArrayList<>();
        for (long time : millis) {
            cells.add(List.of(format(time, pattern)));
        }
        return new Clock(List.of(heading), cells, settings);
    }

    private static Clock two(String date, String time, long[] millis, LogSettings settings) {
        List<List<String>> cells = new ArrayList<>();
        for (long at : millis) {
            cells.add(List.of(format(at, date), format(at, time)));
        }
        return new Clock(List.of("Date", "Time"), cells, settings);
    }

    private static Clock figures(String heading, long[] millis, long zero, long unit, LogSettings settings) {
        List<List<String>> cells = new ArrayList<>();
        for (long time : millis) {
            cells.add(List.of(String.valueOf((time - zero) / unit)));
        }
        return new Clock(List.of(heading), cells, settings);
    }

    private static Clock elapsed(long[] millis, LogSettings settings) {
        List<List<String>> cells = new ArrayList<>();
        for (long time : millis) {
            long seconds = (time - millis[0]) / 1000;
            cells.add(List.of(
                    String.format(Locale.ROOT, "%d:%02d:%02d", seconds / 3600, seconds / 60 % 60, seconds % 60)));
        }
        return new Clock(List.of("Elapsed"), cells, settings);
    }
}
