package org.holdproof.core.log.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import org.holdproof.core.log.GapLimit;
import org.holdproof.core.log.LogFault;
import org.holdproof.core.log.LogFault.Kind;
import org.holdproof.core.log.ProbeLog;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is wrong with a log that can be read is reported with its lines, and never becomes a reading. */
class FaultsTest {
    private static final Instant START = Instant.parse("2031-05-17T08:00:00Z");

    /** A log of one row a minute from 08:00Z, one string of cells a row. */
    private static ProbeLog minutes(String headings, String... rows) {
        StringBuilder text = new StringBuilder("time,").append(headings).append('\n');
        for (int i = 0; i < rows.length; i++) {
            text.append(START.plusSeconds(60L * i)).append(',').append(rows[i]).append('\n');
        }
        return Logs.read(text.toString(), Logs.NONE);
    }

    private static void assertFault(ProbeLog log, Kind kind, String channel, long first, long last) {
        List<LogFault> faults = Logs.faults(log, kind);
        assertThat(faults).as("faults %s", log.faults()).hasSize(1);
        assertThat(faults.get(0).channel()).isEqualTo(channel);
        assertThat(faults.get(0).firstLine()).isEqualTo(first);
        assertThat(faults.get(0).lastLine()).isEqualTo(last);
        assertThat(faults.get(0).detail()).isNotBlank();
    }

    @Test
    void aCleanLogHasNoFault() {
        assertThat(minutes("core °C", "54.4", "54.5", "54.6").faults()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "-",
                "---",
                "--.-",
                "---.-",
                "NaN",
                "N/A",
                "n/a",
                "#N/A",
                "error",
                "Err 7",
                "open",
                "OL",
                "O.L",
                "Inf",
                "-Inf",
                "1.#INF",
                "-1.#IND",
                "null",
                "lid open",
                "?",
                "***",
                "no probe",
                "HI",
                "—"
            })
    void aCellWithoutAFigureIsMissingNeverZero(String cell) {
        ProbeLog log = minutes("core °C,bath °C", "54.4,56", cell + ",56", cell + ",56", "54.6,56");
        assertThat(Logs.readings(log, 0)).containsExactly(54.4, Double.NaN, Double.NaN, 54.6);
        assertFault(log, Kind.MISSING_READING, "core", 3, 4);
        assertThat(log.trace(0).size()).isEqualTo(2);
    }

    @ParameterizedTest
    @ValueSource(strings = {"-61", "651", "999.9", "9999", "-999", "3276.7", "6553.5", "850", "1e400", "999"})
    void anImpossibleFigureIsMissing(String figure) {
        ProbeLog log = minutes("core °C,bath °C", "54.4,56", figure + ",56", "54.6,56");
        assertThat(Logs.readings(log, 0)).containsExactly(54.4, Double.NaN, 54.6);
        assertFault(log, Kind.IMPOSSIBLE_READING, "core", 3, 3);
    }

    @ParameterizedTest
    @ValueSource(strings = {"999.9", "9999", "-196.6", "1562"})
    void anImpossibleFigureIsMissingInFahrenheitToo(String figure) {
        ProbeLog log = minutes("core °F", "129.92", figure, "130.28");
        assertThat(log.celsius(0, 0)).isCloseTo(54.4, within(1e-9));
        assertThat(log.celsius(0, 1)).isNaN();
        assertFault(log, Kind.IMPOSSIBLE_READING, "core", 3, 3);
    }

    @Test
    void aJumpIsKept() {
        ProbeLog log = minutes("core °C", "54.4", "54.5", "74.6", "74.6");
        assertThat(log.celsius(0, 2)).isEqualTo(74.6);
        assertFault(log, Kind.JUMP, "core", 3, 4);
        assertThat(minutes("core °C", "54.4", "54.5", "74.5", "74.5").faults()).isEmpty();
    }

    @Test
    void thePowerOnFigureIsAJump() {
        ProbeLog log = minutes("core °C", "70.0", "85.0", "70.1", "70.2");
        assertFault(log, Kind.JUMP, "core", 2, 3);
        assertThat(log.celsius(0, 1)).isEqualTo(85.0);
        ProbeLog through = minutes("core °C", "84.0", "85.0", "86.0", "87.0");
        assertThat(through.faults()).isEmpty();
    }

    @Test
    void aFigureThatStandsStillWhileAnotherMovesIsStuck() {
        String[] rows = new String[100];
        for (int i = 0; i < rows.length; i++) {
            double core = i < 10 ? 40 + i : i < 80 ? 50 : 51;
            rows[i] = String.format(Locale.ROOT, "%.1f,%.1f", core, 40 + i * 0.1);
        }
        assertFault(minutes("core °C,bath °C", rows), Kind.STUCK, "core", 12, 81);
    }

    @Test
    void aProbeInASteadyBathIsNotStuck() {
        String[] rows = new String[200];
        for (int i = 0; i < rows.length; i++) {
            rows[i] = String.format(Locale.ROOT, "56.0,%.1f", 56 + i % 3 * 0.1);
        }
        assertThat(minutes("core °C,bath °C", rows).faults()).isEmpty();
    }

    @Test
    void aSpellWithoutReadingsIsAGapOfItsChannel() {
        String[] rows = new String[20];
        for (int i = 0; i < rows.length; i++) {
            rows[i] = (i >= 5 && i <= 10 ? "" : "54.4") + ",56.0";
        }
        assertFault(minutes("core °C,bath °C", rows), Kind.GAP, "core", 6, 13);
        rows[7] = "54.4,56.0";
        assertThat(Logs.faults(minutes("core °C,bath °C", rows), Kind.GAP)).isEmpty();
    }

    @Test
    void aSlowLoggerHasALongerGap() {
        StringBuilder text = new StringBuilder("time,core °C\n");
        for (int i = 0; i < 20; i++) {
            text.append(START.plusSeconds(240L * i + (i < 10 ? 0 : 481))).append(",54.4\n");
        }
        ProbeLog log = Logs.read(text.toString(), Logs.NONE);
        assertFault(log, Kind.GAP, "core", 11, 12);
        assertThat(GapLimit.around(log.trace(0), 9)).isEqualTo(12);
    }

    @Test
    void aRepeatedRowIsLeftOut() {
        ProbeLog log = Logs.read(
                """
                time,core °C,bath °C
                2031-05-17T08:00:00Z,54.4,56
                2031-05-17T08:01:00Z,54.5,56
                2031-05-17T08:01:00Z,54.5,56
                2031-05-17T08:01:00Z,54.5,
                2031-05-17T08:02:00Z,54.6,56
                """,
                Logs.NONE);
        assertThat(log.rows()).isEqualTo(3);
        assertThat(log.line(2)).isEqualTo(6);
        assertFault(log, Kind.REPEATED_CLOCK, "", 4, 5);
    }

    @Test
    void twoReadingsAtOneTimeAreNone() {
        ProbeLog log = Logs.read(
                """
                time,core °C,bath °C
                2031-05-17T08:00:00Z,54.4,56
                2031-05-17T08:01:00Z,54.5,56
                2031-05-17T08:01:00Z,55.5,56
                2031-05-17T08:02:00Z,54.6,56
                2031-05-17T08:03:00Z,54.6,56
                """,
                Logs.NONE);
        assertThat(Logs.readings(log, 0)).containsExactly(54.4, Double.NaN, 54.6, 54.6);
        assertThat(Logs.readings(log, 1)).containsExactly(56, 56, 56, 56);
        assertFault(log, Kind.CONFLICTING_DUPLICATE, "", 3, 4);
    }

    @Test
    void aThirdReadingDoesNotSettleAConflict() {
        ProbeLog log = Logs.read(
                """
                time,core °C
                2031-05-17T08:00:00Z,54.4
                2031-05-17T08:01:00Z,54.5
                2031-05-17T08:01:00Z,55.5
                2031-05-17T08:01:00Z,54.5
                2031-05-17T08:02:00Z,54.6
                2031-05-17T08:03:00Z,54.6
                """,
                Logs.NONE);
        assertThat(log.celsius(0, 1)).isNaN();
    }

    @Test
    void anOlderRowIsLeftOut() {
        ProbeLog log = Logs.read(
                """
                time,core °C
                2031-05-17T08:00:00Z,54.4
                2031-05-17T08:02:00Z,54.5
                2031-05-17T08:01:00Z,99.0
                2031-05-17T08:01:30Z,99.0
                2031-05-17T08:03:00Z,54.6
                """,
                Logs.NONE);
        assertThat(Logs.readings(log, 0)).containsExactly(54.4, 54.5, 54.6);
        assertFault(log, Kind.BACKWARD_CLOCK, "", 4, 5);
    }

    @Test
    void anOverlappingSecondDownloadIsLeftOut() {
        ProbeLog log = Logs.read(
                """
                time,core °C
                2031-05-17T08:00:00Z,54.4
                2031-05-17T08:01:00Z,54.5
                2031-05-17T08:02:00Z,54.6
                2031-05-17T08:03:00Z,54.7
                time,core °C
                2031-05-17T08:01:00Z,54.5
                2031-05-17T08:02:00Z,59.9
                2031-05-17T08:04:00Z,54.8
                """,
                Logs.NONE);
        assertThat(Logs.readings(log, 0)).containsExactly(54.4, 54.5, Double.NaN, 54.7, 54.8);
        assertFault(log, Kind.CONFLICTING_DUPLICATE, "", 4, 8);
        assertFault(log, Kind.REPEATED_CLOCK, "", 7, 7);
        assertFault(log, Kind.SHORT_ROW, "", 6, 6);
    }

    @Test
    void aLogNewestFirstIsTurnedRound() {
        ProbeLog log = Logs.read(
                "time,core °C\n2031-05-17T08:02:00Z,54.6\n2031-05-17T08:01:00Z,54.5\n2031-05-17T08:00:00Z,54.4\n",
                Logs.NONE);
        assertThat(Logs.readings(log, 0)).containsExactly(54.4, 54.5, 54.6);
        assertThat(log.line(0)).isEqualTo(4);
        assertFault(log, Kind.NEWEST_FIRST, "", 2, 4);
    }

    @Test
    void aShortRowLacksReadings() {
        ProbeLog log = minutes("core °C,bath °C", "54.4,56", "54.5", "54.6", "54.7,56");
        assertThat(Logs.readings(log, 1)).containsExactly(56, Double.NaN, Double.NaN, 56);
        assertFault(log, Kind.SHORT_ROW, "", 3, 4);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"2031-05-17T08:02:00Z,5", "2031-05-17T08:02:00Z", "2031-05-17T08:0", "2031", "\"2031-05-17T08"})
    void aFileThatEndsInsideARowLosesOnlyThat(String rest) {
        ProbeLog log =
                Logs.read("time,core °C\n2031-05-17T08:00:00Z,54.4\n2031-05-17T08:01:00Z,54.5\n" + rest, Logs.NONE);
        assertThat(log.trace(0).size()).isEqualTo(2);
        assertThat(Logs.faults(log, Kind.SHORT_ROW)).isNotEmpty();
        assertThat(Logs.faults(log, Kind.SHORT_ROW).get(0).firstLine()).isEqualTo(4);
    }

    @Test
    void aWholeLastRowWithoutLineBreakIsRead() {
        ProbeLog log = Logs.read("time,core °C\n2031-05-17T08:00:00Z,54.4\n2031-05-17T08:01:00Z,54.5", Logs.NONE);
        assertThat(Logs.readings(log, 0)).containsExactly(54.4, 54.5);
        assertThat(log.faults()).isEmpty();
    }

    @Test
    void aRowWithoutTimeIsLeftOut() {
        ProbeLog log =
                Logs.read("time,core °C\n2031-05-17T08:00:00Z,54.4\n,99\n2031-05-17T08:01:00Z,54.5\n", Logs.NONE);
        assertThat(Logs.readings(log, 0)).containsExactly(54.4, 54.5);
        assertThat(Logs.faults(log, Kind.SHORT_ROW)).hasSize(1);
    }

    @Test
    void anUnusedSocketIsMissingThroughout() {
        ProbeLog log = minutes("core °C,probe 2 °C", "54.4,---", "54.5,---", "54.6,---");
        assertThat(log.trace(1).isEmpty()).isTrue();
        assertFault(log, Kind.MISSING_READING, "probe 2", 2, 4);
    }

    @Test
    void manyFaultsOfAKindAreCountedNotListed() {
        String[] rows = new String[1000];
        for (int i = 0; i < rows.length; i++) {
            rows[i] = i % 2 == 0 ? "54.4" : "error";
        }
        List<LogFault> missing = Logs.faults(minutes("core °C", rows), Kind.MISSING_READING);
        assertThat(missing).hasSize(FaultLedger.LISTED);
        assertThat(missing.get(0).firstLine()).isEqualTo(3);
        assertThat(missing.get(FaultLedger.LISTED - 1).detail()).contains("400 more of this kind");
    }

    @Test
    void faultsStandInTheOrderOfTheirLines() {
        String[] rows = new String[300];
        for (int i = 0; i < rows.length; i++) {
            rows[i] = i % 7 == 3 ? "error,56" : i % 11 == 5 ? "54.4,9999" : "54.4,56";
        }
        assertThat(minutes("core °C,bath °C", rows).faults())
                .extracting(LogFault::firstLine)
                .isSorted();
    }

    @Test
    void otherColumnsAreLeftOut() {
        ProbeLog log = minutes("battery %,core °C,note,RSSI,brisket", "90,54.4,,-60,x", "90,54.5,fine,-61,y");
        assertThat(Logs.names(log)).containsExactly("core");
        assertThat(log.channels().get(0).column()).isEqualTo(3);
    }

    @Test
    void eachColumnMayHaveItsOwnUnit() {
        ProbeLog log = minutes("core °C,smoker °F", "54.4,212", "54.5,32");
        assertThat(Logs.readings(log, 1)).containsExactly(100, 0);
    }
}
