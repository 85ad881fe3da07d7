package org.holdproof.core.log.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.log.DateOrder;
import org.holdproof.core.log.LogSettings;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.quantity.TemperatureUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What cannot be read, or leaves something open, is refused with a message that says where and what to do. */
@SuppressWarnings("StringConcatToTextBlock") // one case a few lines
class RefusalsTest {
    private static final String ROWS = "2031-05-17T08:00:00Z,54.4\n2031-05-17T08:01:00Z,54.5\n";

    static Stream<Arguments> refusals() {
        LogSettings none = Logs.NONE;
        LogSettings oslo = Logs.OSLO;
        return Stream.of(
                Arguments.of("empty file", "", none, 0, 0, "Export the log again"),
                Arguments.of("blank lines", "\n\n \n", none, 0, 0, "row of headings"),
                Arguments.of("PDF", "%PDF-1.7\n...", none, 0, 0, "as CSV"),
                Arguments.of("spreadsheet", "PK\u0003\u0004abc", none, 0, 0, "as CSV"),
                Arguments.of("binary", "a\u0000b,c", none, 0, 0, "byte-order mark"),
                Arguments.of("prose", "Dear inspector,\nthe roast was fine.\n", none, 0, 0, "row of headings"),
                Arguments.of("no unit", "time,core\n" + ROWS, none, 2, 2, "--unit C or F"),
                Arguments.of("no unit under temperature", "time,temperature\n" + ROWS, none, 2, 2, "\"log.unit\""),
                Arguments.of("no headings, no unit", ROWS, none, 1, 2, "\"log.unit\""),
                Arguments.of("unit against heading", "time,core °F\n" + ROWS, celsius(), 1, 2, "\"log.unit\""),
                Arguments.of("unit against preamble", "Unit: F\ntime,core\n" + ROWS, celsius(), 2, 0, "--unit"),
                Arguments.of("preamble against itself", "Unit: F\nUnit: C\ntime,core\n" + ROWS, none, 2, 0, "Remove"),
                Arguments.of("both units in one heading", "time,temp (°C/°F)\n" + ROWS, none, 2, 2, "\"log.unit\""),
                Arguments.of(
                        "letters of probes are no units",
                        "time,Probe A,Probe C\n2031-05-17T08:00:00Z,54,55\n2031-05-17T08:01:00Z,54,55\n",
                        none,
                        1,
                        2,
                        "--unit"),
                Arguments.of(
                        "unit of one cell against the column",
                        "time,core °C\n2031-05-17T08:00:00Z,54.4\n2031-05-17T08:01:00Z,130 F\n",
                        none,
                        3,
                        2,
                        "Correct the unit"),
                Arguments.of(
                        "figure without unit among cells with units",
                        "time,core\n2031-05-17T08:00:00Z,54.4 C\n2031-05-17T08:01:00Z,54.4\n",
                        none,
                        3,
                        2,
                        "\"log.unit\""),
                Arguments.of(
                        "no zone",
                        "time,core °C\n2031-05-17 08:00,54.4\n2031-05-17 08:01,54.5\n",
                        none,
                        2,
                        1,
                        "\"kitchen.timeZone\""),
                Arguments.of(
                        "day or month",
                        "time,core °C\n03/04/2031 08:00,54.4\n03/04/2031 08:01,54.5\n",
                        oslo,
                        2,
                        1,
                        "--dates dmy, mdy or ymd"),
                Arguments.of(
                        "two-digit year, day or year",
                        "time,core °C\n25.11.26 08:00,54.4\n25.11.26 08:01,54.5\n",
                        oslo,
                        2,
                        1,
                        "\"log.dates\""),
                Arguments.of(
                        "dates that contradict each other",
                        "time,core °C\n17/05/2031 08:00,54.4\n05/18/2031 08:01,54.5\n",
                        oslo,
                        3,
                        1,
                        "Correct or remove the row"),
                Arguments.of(
                        "dates against the settings",
                        "time,core °C\n01/05/2031 08:00,54.4\n17/05/2031 08:01,54.5\n",
                        Logs.with(oslo, DateOrder.MONTH_DAY_YEAR),
                        3,
                        1,
                        "\"log.dates\""),
                Arguments.of(
                        "ISO dates against the settings",
                        "time,core °C\n" + ROWS,
                        Logs.with(oslo, DateOrder.DAY_MONTH_YEAR),
                        2,
                        1,
                        "\"log.dates\""),
                Arguments.of("no start", "Elapsed (s),core °C\n0,54.4\n60,54.5\n", none, 2, 1, "\"log.start\""),
                Arguments.of("no unit of time", "Time,core °C\n0,54.4\n60,54.5\n", start(), 1, 1, "\"Elapsed (s)\""),
                Arguments.of(
                        "mm:ss or h:mm", "Elapsed,core °C\n00:00,54.4\n01:00,54.5\n", start(), 1, 1, "\"(mm:ss)\""),
                Arguments.of(
                        "time of day alone",
                        "Time,core °C\n10:00:00,54.4\n10:01:00,54.5\n",
                        oslo,
                        1,
                        1,
                        "Export with the date"),
                Arguments.of(
                        "two clocks",
                        "Start time,End time,core °C\n2031-05-17 08:00,2031-05-17 08:01,54\n"
                                + "2031-05-17 08:01,2031-05-17 08:02,54\n",
                        oslo,
                        1,
                        2,
                        "Remove the column"),
                Arguments.of("no clock", "core °C,bath °C\n54.4,55\n54.5,55\n", none, 1, 0, "\"Elapsed (s)\""),
                Arguments.of(
                        "no temperature",
                        "time,humidity %\n2031-05-17T08:00:00Z,40\n2031-05-17T08:01:00Z,41\n",
                        none,
                        1,
                        0,
                        "\"core °C\""),
                Arguments.of("single row", "time,core °C\n2031-05-17T08:00:00Z,54.4\n", none, 0, 0, "whole log"),
                Arguments.of(
                        "garbled time in the middle",
                        "time,core °C\n2031-05-17T08:00:00Z,54.4\n2031-05-\u00bf7T08:01:00Z,54.5\n"
                                + "2031-05-17T08:02:00Z,54.6\n",
                        none,
                        3,
                        1,
                        "Correct or remove the row"),
                Arguments.of(
                        "a day that never was",
                        "time,core °C\n2031-02-28T08:00:00Z,54.4\n2031-02-29T08:01:00Z,54.5\n",
                        none,
                        3,
                        1,
                        "Correct or remove the row"),
                Arguments.of(
                        "garbled temperature",
                        "time,core °C\n2031-05-17T08:00:00Z,54.4\n2031-05-17T08:01:00Z,5x4.5\n"
                                + "2031-05-17T08:02:00Z,54.6\n",
                        none,
                        3,
                        2,
                        "Correct the cell"),
                Arguments.of(
                        "decimal comma between commas",
                        "time,core °C\n2031-05-17T08:00:00Z,54,4\n2031-05-17T08:01:00Z,54,5\n",
                        none,
                        2,
                        3,
                        "semicolons"),
                Arguments.of(
                        "two decimal marks",
                        "time;core °C\n2031-05-17T08:00:00Z;54,4\n2031-05-17T08:01:00Z;54.5\n",
                        none,
                        3,
                        2,
                        "one decimal mark"),
                Arguments.of(
                        "offset now and then",
                        "time,core °C\n2031-05-17T08:00:00Z,54.4\n2031-05-17T08:01:00,54.5\n2031-05-17T08:02:00Z,54.5\n",
                        none,
                        3,
                        1,
                        "export the log again"),
                Arguments.of(
                        "never a figure",
                        "time,core °C,bath °C\n2031-05-17T08:00:00Z,ready,54\n2031-05-17T08:01:00Z,ready,54\n",
                        none,
                        2,
                        2,
                        "Remove the column"),
                Arguments.of(
                        "no reading at all",
                        "time,core °C\n2031-05-17T08:00:00Z,---\n2031-05-17T08:01:00Z,---\n",
                        none,
                        0,
                        2,
                        "probes were connected"),
                Arguments.of("minute clock with readings every 20 s", coarse(), oslo, 3, 1, "with seconds"),
                Arguments.of(
                        "no order",
                        "time,core °C\n2031-05-17T08:05:00Z,54\n2031-05-17T08:01:00Z,54\n2031-05-17T08:03:00Z,54\n"
                                + "2031-05-17T08:00:00Z,54\n2031-05-17T08:02:00Z,54\n",
                        none,
                        0,
                        1,
                        "Sort the file by time"),
                Arguments.of(
                        "open quotation mark",
                        "time,core °C,note\n2031-05-17T08:00:00Z,54,\n2031-05-17T08:01:00Z,54,\"oops\n"
                                + "2031-05-17T08:02:00Z,54,\n",
                        none,
                        3,
                        3,
                        "quotation mark"),
                Arguments.of(
                        "text behind a quotation mark",
                        "time,core °C\n2031-05-17T08:00:00Z,54\n2031-05-17T08:01:00Z,\"54\"x\n",
                        none,
                        3,
                        0,
                        "quotation mark"),
                Arguments.of("33 channels", many(33), none, 1, 34, "Leave out the columns"),
                Arguments.of("times missing", timeless(), none, 0, 1, "time of each reading"));
    }

    private static String timeless() {
        StringBuilder text = new StringBuilder("time,core °C\n");
        Instant time = Instant.parse("2031-05-17T08:00:00Z");
        for (int i = 0; i < 60; i++) {
            text.append(time.plusSeconds(i)).append(",54.4\n");
        }
        return text.append(",54.4\n".repeat(70)).toString();
    }

    private static LogSettings celsius() {
        return Logs.with(Logs.NONE, TemperatureUnit.CELSIUS);
    }

    private static LogSettings start() {
        return Logs.with(Logs.NONE, Instant.parse("2031-05-17T08:00:00Z"));
    }

    private static String coarse() {
        StringBuilder text = new StringBuilder("time,core °C\n");
        for (int i = 0; i < 30; i++) {
            text.append(
                    "2031-05-17 10:%02d,%.1f%n".formatted(i / 3, 54 + i * 0.1).replace("\r", ""));
        }
        return text.toString();
    }

    private static String many(int channels) {
        StringBuilder text = new StringBuilder("time");
        IntStream.rangeClosed(1, channels)
                .forEach(i -> text.append(",probe ").append(i).append(" °C"));
        for (int row = 0; row < 2; row++) {
            text.append("\n2031-05-17T08:0").append(row).append(":00Z").append(",54.4".repeat(channels));
        }
        return text.append('\n').toString();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("refusals")
    void saysWhereAndWhatToDo(String what, String text, LogSettings settings, long line, int column, String remedy) {
        UnreadableInputException refusal = Logs.refused(text, settings);
        assertThat(refusal.getMessage()).contains(remedy).doesNotContain("Exception");
        assertThat(refusal.place().line().orElse(0)).as(refusal.getMessage()).isEqualTo(line);
        assertThat(refusal.place().column().or(refusal.place()::pointer).orElse(""))
                .as(refusal.getMessage())
                .isEqualTo(column == 0 ? "" : Integer.toString(column));
        assertThat(refusal.found()).isNotBlank();
        assertThat(refusal.expected()).isNotBlank();
    }

    @Test
    void reads32Channels() {
        ProbeLog log = Logs.read(many(32), Logs.NONE);
        assertThat(log.channels()).hasSize(32);
        assertThat(log.celsius(31, 1)).isEqualTo(54.4);
    }

    @Test
    void readsUtf16OnlyWithItsMark() {
        String text = "time,core °C\n" + ROWS;
        assertThat(Logs.refused(text.getBytes(StandardCharsets.UTF_16LE), Logs.NONE)
                        .remedy())
                .contains("byte-order mark");
        assertThat(Logs.read(("\ufeff" + text).getBytes(StandardCharsets.UTF_16LE), Logs.NONE)
                        .rows())
                .isEqualTo(2);
    }

    @Test
    void anAllFiguresDateIsReadWhereAllOrdersMeanTheSameDay() {
        ProbeLog log = Logs.read("time,core °C\n05/05/2031 08:00,54.4\n05/05/2031 08:01,54.5\n", Logs.zone("UTC"));
        assertThat(Logs.instant(log, 1)).isEqualTo("2031-05-05T08:01:00Z");
    }

    @Test
    void anAllFiguresDateIsSettledByALaterOne() {
        StringBuilder text = new StringBuilder("time,core °C\n");
        for (int day = 3; day <= 13; day++) {
            text.append("%02d/04/2031 08:00,54.4%n".formatted(day).replace("\r", ""));
        }
        ProbeLog log = Logs.read(text.toString(), Logs.zone("UTC"));
        assertThat(Logs.instant(log, 0)).isEqualTo("2031-04-03T08:00:00Z");
        assertThat(Logs.instant(log, 10)).isEqualTo("2031-04-13T08:00:00Z");
    }

    @Test
    void anOpenOrderIsSettledByTheSettings() {
        String text = "time,core °C\n03/04/30 08:00,54.4\n03/04/30 08:01,54.5\n";
        assertThat(Logs.instant(Logs.read(text, Logs.with(Logs.zone("UTC"), DateOrder.DAY_MONTH_YEAR)), 0))
                .isEqualTo("2030-04-03T08:00:00Z");
        assertThat(Logs.instant(Logs.read(text, Logs.with(Logs.zone("UTC"), DateOrder.MONTH_DAY_YEAR)), 0))
                .isEqualTo("2030-03-04T08:00:00Z");
        assertThat(Logs.instant(Logs.read(text, Logs.with(Logs.zone("UTC"), DateOrder.YEAR_MONTH_DAY)), 0))
                .isEqualTo("2003-04-30T08:00:00Z");
    }
}
