package org.holdproof.core.log.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.log.LogFault.Kind;
import org.holdproof.core.log.ProbeLog;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Local clocks where summer time starts and ends. In 2030 it starts in Oslo on 31 March, 02:00 local time, and ends on
 * 27 October, 03:00 (the rule of the European Union's directive 2000/84/EC: last Sunday of March and of October, 01:00
 * UTC); in Chicago it ends on 3 November, 02:00 (Energy Policy Act of 2005, section 110: first Sunday of November).
 */
class DaylightSavingTest {
    private static final DateTimeFormatter LOCAL = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss");

    private static String log(ZoneId zone, Instant from, int stepSeconds, int rows) {
        StringBuilder text = new StringBuilder("time,core °C\n");
        for (int i = 0; i < rows; i++) {
            LocalDateTime local = LocalDateTime.ofInstant(from.plusSeconds((long) i * stepSeconds), zone);
            text.append(LOCAL.format(local))
                    .append(',')
                    .append(54 + i % 10 * 0.1)
                    .append('\n');
        }
        return text.toString();
    }

    @ParameterizedTest(name = "{0} from {1}, a row each {2} s")
    @CsvSource({
        "Europe/Oslo, 2030-10-26T22:00:00Z, 60",
        "Europe/Oslo, 2030-10-26T22:00:00Z, 10",
        "Europe/Oslo, 2030-10-26T22:00:00Z, 1700",
        "Europe/Oslo, 2030-10-27T00:20:00Z, 60",
        "Europe/Oslo, 2030-03-30T22:00:00Z, 60",
        "America/Chicago, 2030-11-03T05:00:00Z, 60",
        "Australia/Lord_Howe, 2030-04-06T12:00:00Z, 60",
        "UTC, 2030-10-26T22:00:00Z, 60"
    })
    void aLogAcrossAChangeKeepsItsInstants(String zone, Instant from, int stepSeconds) {
        int rows = 6 * 3600 / stepSeconds;
        ProbeLog log = Logs.read(log(ZoneId.of(zone), from, stepSeconds, rows), Logs.zone(zone));
        assertThat(log.rows()).isEqualTo(rows);
        for (int row = 0; row < rows; row++) {
            assertThat(log.millis(row))
                    .isEqualTo(from.plusSeconds((long) row * stepSeconds).toEpochMilli());
        }
        assertThat(Logs.faults(log, Kind.CLOCK_CHANGE)).hasSize(zone.equals("UTC") ? 0 : 1);
        assertThat(Logs.faults(log, Kind.GAP)).isEmpty();
    }

    @Test
    void aLogNewestFirstAcrossAChangeKeepsItsInstants() {
        Instant from = Instant.parse("2030-10-26T22:00:00Z");
        List<String> lines = new ArrayList<>(
                log(ZoneId.of("Europe/Oslo"), from, 60, 300).lines().toList());
        Collections.reverse(lines.subList(1, lines.size()));
        ProbeLog log = Logs.read(String.join("\n", lines) + "\n", Logs.OSLO);
        assertThat(log.rows()).isEqualTo(300);
        assertThat(log.millis(299)).isEqualTo(from.plusSeconds(299 * 60).toEpochMilli());
        assertThat(Logs.faults(log, Kind.NEWEST_FIRST)).hasSize(1);
    }

    @Test
    void aLogThatStartsInTheRepeatedHourAndDoesNotStepBackIsRefused() {
        String text = log(ZoneId.of("Europe/Oslo"), Instant.parse("2030-10-27T01:10:00Z"), 60, 120);
        UnreadableInputException refusal = Logs.refused(text, Logs.OSLO);
        assertThat(refusal.getMessage()).contains("came twice").contains("offset from UTC");
    }

    @Test
    void aLogThatEndsInTheRepeatedHourWasInItsFirstPass() {
        Instant from = Instant.parse("2030-10-26T23:30:00Z");
        ProbeLog log = Logs.read(log(ZoneId.of("Europe/Oslo"), from, 60, 60), Logs.OSLO);
        assertThat(log.millis(59)).isEqualTo(from.plusSeconds(59 * 60).toEpochMilli());
    }

    @Test
    void anEntryIntoTheRepeatedHourAfterALongGapIsRefused() {
        String text =
                """
                time,core °C
                2030-10-27 00:00,54.4
                2030-10-27 02:30,54.5
                2030-10-27 02:31,54.5
                """;
        assertThat(Logs.refused(text, Logs.OSLO).remedy()).contains("offset from UTC");
    }

    @Test
    void aTimeThatNeverWasIsRefused() {
        String text =
                """
                time,core °C
                2030-03-31 01:59,54.4
                2030-03-31 02:00,54.5
                2030-03-31 02:01,54.5
                """;
        UnreadableInputException refusal = Logs.refused(text, Logs.OSLO);
        assertThat(refusal.place().line().orElse(0)).isEqualTo(3);
        assertThat(refusal.remedy()).contains("\"kitchen.timeZone\"");
    }

    @Test
    void aClockThatIsSetRightBySecondsInTheRepeatedHourDidNotChange() {
        String text =
                """
                time,core °C
                2030-10-27 01:59:50,54.4
                2030-10-27 02:00:00,54.5
                2030-10-27 02:00:10,54.5
                2030-10-27 02:00:07,54.5
                2030-10-27 02:00:17,54.6
                """;
        ProbeLog log = Logs.read(text, Logs.OSLO);
        assertThat(Logs.instant(log, 3)).isEqualTo("2030-10-27T00:00:17Z");
        assertThat(Logs.faults(log, Kind.BACKWARD_CLOCK)).hasSize(1);
    }

    @Test
    void aClockThatNeverStepsBackLeavesAnHourWithoutReadings() {
        StringBuilder text = new StringBuilder("time,core °C\n");
        LocalDateTime local = LocalDateTime.parse("2030-10-27T01:00:00");
        for (int i = 0; i < 180; i++) {
            text.append(LOCAL.format(local.plusMinutes(i))).append(",54.4\n");
        }
        ProbeLog log = Logs.read(text.toString(), Logs.OSLO);
        assertThat(Logs.faults(log, Kind.GAP)).hasSize(1);
        assertThat(Logs.faults(log, Kind.CLOCK_CHANGE)).isNotEmpty();
    }
}
