package org.holdproof.core.log.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The short ways of reading against the JDK's own. */
class CellsTest {
    static LongStream seeds() {
        return LongStream.range(0, 20);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void figuresAreTheNearestDoubles(long seed) {
        Random random = new Random(seed);
        Figure figure = new Figure();
        for (int i = 0; i < 5_000; i++) {
            StringBuilder text = new StringBuilder(random.nextInt(3) == 0 ? "-" : "");
            int whole = random.nextInt(1, 20);
            for (int digit = 0; digit < whole; digit++) {
                text.append(random.nextInt(10));
            }
            int decimals = random.nextInt(8);
            text.append(decimals > 0 ? "." : "");
            for (int digit = 0; digit < decimals; digit++) {
                text.append(random.nextInt(10));
            }
            text.append(random.nextInt(9) == 0 ? "e" + random.nextInt(-30, 30) : "");
            char[] characters = text.toString().toCharArray();
            assertThat(figure.read(characters, 0, characters.length))
                    .as(text.toString())
                    .isEqualTo(characters.length);
            assertThat(figure.value()).as(text.toString()).isEqualTo(Double.parseDouble(text.toString()));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "-", "+", ".", "x1", "--1", "e5"})
    void whatIsNoFigureIsNone(String text) {
        assertThat(new Figure().read(text.toCharArray(), 0, text.length())).isEqualTo(-1);
    }

    @Test
    void everyDayOfTwoCenturiesIsTheCalendars() {
        for (LocalDate day = LocalDate.of(1970, 1, 1); day.getYear() < 2200; day = day.plusDays(1)) {
            assertThat(CalendarDay.epochDay(day.getYear(), day.getMonthValue(), day.getDayOfMonth()))
                    .isEqualTo(day.toEpochDay());
        }
    }

    @Test
    void daysThatNeverWereAreNone() {
        for (int year = 2023; year < 2033; year++) {
            for (int month = 0; month <= 13; month++) {
                for (int day = 0; day <= 32; day++) {
                    boolean exists = true;
                    try {
                        LocalDate.of(year, month, day);
                    } catch (DateTimeException never) {
                        exists = false;
                    }
                    assertThat(CalendarDay.epochDay(year, month, day) != CalendarDay.NONE)
                            .isEqualTo(exists);
                }
            }
        }
    }

    @ParameterizedTest
    @CsvSource({
        "00:00, 0",
        "23:59:59, 86399000",
        "24:00, 86400000",
        "10:00:00.5, 36000500",
        "'10:00:00,25', 36000250",
        "10:00:00.123456789, 36000123",
        "12:00 AM, 0",
        "12:00:01 a.m., 1000",
        "12:00 PM, 43200000",
        "1:05 pm, 47100000",
        "9:05, 32700000"
    })
    void timesOfDay(String text, int millis) {
        ClockCell cell = new ClockCell();
        assertThat(cell.read(text.toCharArray(), 0, text.length())).isTrue();
        assertThat(cell.form()).isEqualTo(ClockCell.DateForm.NONE);
        assertThat(cell.millisOfDay()).isEqualTo(millis);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "25:00",
                "24:01",
                "10:60",
                "10:00:60",
                "10:555",
                "13:00 PM",
                "0:10 AM",
                "10",
                "2031-05-06T",
                "2031-05",
                "06-05/2031",
                "2031-05-06 10",
                "1,5",
                "10:00:00:00",
                "20310506",
                "May",
                "2031-05-06 10:00 +19:00",
                "6 May",
                "10:00 11:00",
                "2031-05-06 10:00 XYZ",
                "100:00",
                ":",
                "10:00 AM PM",
                "06..05.2031"
            })
    void whatIsNoDateAndTimeIsNone(String text) {
        ClockCell cell = new ClockCell();
        boolean stamp = cell.read(text.toCharArray(), 0, text.length())
                && cell.hasTime()
                && cell.form() != ClockCell.DateForm.NONE;
        boolean time = cell.read(text.toCharArray(), 0, text.length()) && cell.form() == ClockCell.DateForm.NONE;
        assertThat(stamp || time).isFalse();
    }

    /** A stream that gives few bytes at a time, so that characters are cut apart. */
    private static InputStream drop(byte[] bytes, int most) {
        return new FilterInputStream(new ByteArrayInputStream(bytes)) {
            @Override
            public int read(byte[] target, int offset, int length) throws IOException {
                return super.read(target, offset, Math.min(length, most));
            }
        };
    }

    private static String text(byte[] bytes, int most) throws IOException {
        StringBuilder text = new StringBuilder();
        char[] buffer = new char[7];
        try (LogText characters = new LogText(drop(bytes, most))) {
            for (int count = characters.read(buffer); count >= 0; count = characters.read(buffer)) {
                text.append(buffer, 0, count);
            }
        }
        return text.toString();
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 5, 100_000})
    void charactersSurviveEveryCut(int most) throws IOException {
        String text = "°C ºF 30 µm – “quoted” ℃ 𝜗 end of the line\n".repeat(40);
        assertThat(text(text.getBytes(StandardCharsets.UTF_8), most)).isEqualTo(text);
        assertThat(text(("\ufeff" + text).getBytes(StandardCharsets.UTF_8), most))
                .isEqualTo(text);
        assertThat(text(("\ufeff" + text).getBytes(StandardCharsets.UTF_16LE), most))
                .isEqualTo(text);
        assertThat(text(("\ufeff" + text).getBytes(StandardCharsets.UTF_16BE), most))
                .isEqualTo(text);
        String latin = "54.4 °C, 30 µm, trop élevé\n".repeat(40);
        assertThat(text(latin.getBytes(StandardCharsets.ISO_8859_1), most)).isEqualTo(latin);
    }

    @ParameterizedTest
    @ValueSource(strings = {"\u00c0\u00af", "\u00ed\u00a0\u0080", "\u00f5\u0080\u0080\u0080", "\u00e2\u0082", "\u0080"})
    void bytesThatAreNotUtf8AreLatin(String bytes) throws IOException {
        byte[] raw = bytes.getBytes(StandardCharsets.ISO_8859_1);
        assertThat(text(raw, 100)).isEqualTo(new String(raw, java.nio.charset.Charset.forName("windows-1252")));
    }
}
