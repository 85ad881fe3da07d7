package org.holdproof.core.log.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.LongStream;
import org.holdproof.core.input.SourceFile;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.log.LogFault;
import org.holdproof.core.log.LogSettings;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.quantity.TemperatureUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A value stays in its column, or the file is refused. Invented data. */
class NeverMisreadTest {
    private static final String DAY = "2031-05-17T";

    private static double at(ProbeLog log, String channel, int row) {
        return log.celsius(log.channelNamed(channel).orElseThrow(), row);
    }

    @Test
    void aSecondRowOfHeadingsOpensASectionWhoseColumnsAreJoinedByName() {
        ProbeLog log = Logs.read(
                "time,Core °C,Bath °C\n" + DAY + "08:00:00Z,54.0,60.1\n" + DAY + "08:01:00Z,54.1,60.2\n"
                        + "Logger: restarted\n"
                        + "time,Bath °F,Core °C,Air °C\n" + DAY + "08:02:00Z,140.0,54.2,90\n" + DAY
                        + "08:03:00Z,140.9,54.3,91\n",
                Logs.NONE);
        assertThat(Logs.names(log)).containsExactly("Core", "Bath", "Air");
        assertThat(Logs.readings(log, 0)).containsExactly(new double[] {54.0, 54.1, 54.2, 54.3}, within(1e-9));
        assertThat(Logs.readings(log, 1)).containsExactly(new double[] {60.1, 60.2, 60.0, 60.5}, within(1e-9));
        assertThat(at(log, "Air", 0)).isNaN();
        assertThat(at(log, "Air", 2)).isEqualTo(90);
    }

    @Test
    void aLoggerRestartedWithAProbeFewerGivesNoReadingForTheColumnsThatCannotBeToldApart() {
        ProbeLog log = Logs.read(
                "time,Core °C,Bath °C\n" + DAY + "08:00:00Z,20.0,60.1\n" + DAY + "08:01:00Z,20.1,60.2\n" + DAY
                        + "08:02:00Z,60.3\n" + DAY + "08:03:00Z,60.4\n",
                Logs.NONE);
        assertThat(at(log, "Core", 2)).isNaN();
        assertThat(at(log, "Bath", 2)).isNaN();
        assertThat(Logs.faults(log, LogFault.Kind.SHORT_ROW)).hasSize(1);
    }

    @Test
    void aRowWithoutItsTrailingNoteKeepsItsReadings() {
        ProbeLog log = Logs.read(
                "time,Core °C,Bath °C,Note\n" + DAY + "08:00:00Z,20.0,60.1,begun\n" + DAY + "08:01:00Z,20.1,60.2\n",
                Logs.NONE);
        assertThat(at(log, "Core", 1)).isEqualTo(20.1);
        assertThat(at(log, "Bath", 1)).isEqualTo(60.2);
    }

    @Test
    void whatStandsLeftOfTheClockCannotHaveMoved() {
        ProbeLog log = Logs.read(
                "Core °C,time,Bath °C\n20.0," + DAY + "08:00:00Z,60.1\n20.1," + DAY + "08:01:00Z\n", Logs.NONE);
        assertThat(at(log, "Core", 1)).isEqualTo(20.1);
        assertThat(at(log, "Bath", 1)).isNaN();
    }

    @ParameterizedTest
    @ValueSource(strings = {";", "\t", "|"})
    void twoFilesInOneWithOtherSeparatorsAreTwoSections(String other) {
        ProbeLog log = Logs.read(
                "time,Core °C,Bath °C\n" + DAY + "08:00:00Z,20.0,60.1\n" + DAY + "08:01:00Z,20.1,60.2\n"
                        + ("time;Core °C;Bath °C\n" + DAY + "08:02:00Z;20.2;60.3\n" + DAY + "08:03:00Z;20.3;60.4\n"
                                        + DAY + "08:04:00Z;20.4;60.4\n" + DAY + "08:05:00Z;20.5;60.4\n")
                                .replace(";", other),
                Logs.NONE);
        assertThat(log.rows()).isEqualTo(6);
        assertThat(at(log, "Core", 0)).isEqualTo(20.0);
        assertThat(at(log, "Core", 5)).isEqualTo(20.5);
        assertThat(at(log, "Bath", 1)).isEqualTo(60.2);
    }

    @Test
    void rowsDividedOtherwiseWithoutHeadingsOfTheirOwnAreRefused() {
        UnreadableInputException refusal = Logs.refused(
                "time,Core °C,Bath °C\n" + DAY + "08:00:00Z,20.0,60.1\n" + DAY + "08:01:00Z,20.1,60.2\n" + DAY
                        + "08:02:00Z;20.2;60.3\n" + DAY + "08:03:00Z;20.3;60.4\n",
                Logs.NONE);
        assertThat(refusal.place().line()).hasValue(4);
        Logs.refused(
                "no,time,Core °C\n1," + DAY + "08:00:00Z,20.0\n2," + DAY + "08:01:00Z,20.1\n3;" + DAY
                        + "08:02:00Z;20.2\n4;" + DAY + "08:03:00Z;20.3\n",
                Logs.NONE);
    }

    @Test
    void oneProbeInBothScalesIsHeldAgainstItself() {
        ProbeLog log = Logs.read(
                "time,T1(C),T1(F)\n" + DAY + "08:00:00Z,20.0,68.0\n" + DAY + "08:01:00Z,30.0,86.0\n", Logs.NONE);
        assertThat(Logs.names(log)).containsExactly("T1", "T1 (°F)");
        assertThat(at(log, "T1(F)", 1)).isCloseTo(30.0, within(1e-9));
        assertThat(Logs.refused(
                                "time,T1(C),T1(F)\n" + DAY + "08:00:00Z,20.0,68.0\n" + DAY + "08:01:00Z,30.0,96.0\n",
                                Logs.NONE)
                        .found())
                .contains("not the same temperature");
    }

    @Test
    void aUnitOfTheRecordNeverOverrulesAColumnsOwn() {
        LogSettings fahrenheit = Logs.with(Logs.NONE, TemperatureUnit.FAHRENHEIT);
        ProbeLog log = Logs.read(
                "time,Core °C,Bath\n" + DAY + "08:00:00Z,20.0,140\n" + DAY + "08:01:00Z,20.1,140\n", fahrenheit);
        assertThat(at(log, "Core", 0)).isEqualTo(20.0);
        assertThat(at(log, "Bath", 0)).isCloseTo(60, within(1e-9));
        LogSettings single = new LogSettings(
                Optional.empty(),
                Map.of("Bath", TemperatureUnit.FAHRENHEIT),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
        ProbeLog both =
                Logs.read("time,Core °C,Bath\n" + DAY + "08:00:00Z,20.0,140\n" + DAY + "08:01:00Z,20.1,140\n", single);
        assertThat(at(both, "Bath", 1)).isCloseTo(60, within(1e-9));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"Core (K)", "Core [K]", "Core Kelvin", "Core °K", "Core (0.1 °C)", "Core °C x10", "Core 1/10 °C"
            })
    void otherScalesAreRefused(String heading) {
        assertThat(Logs.refused(
                                "time," + heading + "\n" + DAY + "08:00:00Z,330\n" + DAY + "08:01:00Z,331\n",
                                Logs.with(Logs.NONE, TemperatureUnit.CELSIUS))
                        .remedy())
                .contains("Export the log in °C or °F");
        Logs.refused(
                "Unit: K\ntime,Core\n" + DAY + "08:00:00Z,330\n" + DAY + "08:01:00Z,331\n",
                Logs.with(Logs.NONE, TemperatureUnit.CELSIUS));
    }

    @Test
    void probesListedOneBelowTheOtherAreToldApartByTheirLabel() {
        StringBuilder text = new StringBuilder("time,Sensor,Temperature °C\n");
        for (int minute = 0; minute < 10; minute++) {
            text.append(DAY)
                    .append("08:0")
                    .append(minute)
                    .append(":00Z,A7,")
                    .append(20 + minute)
                    .append('\n');
            text.append(DAY)
                    .append("08:0")
                    .append(minute)
                    .append(":20Z,B2,")
                    .append(60.5)
                    .append('\n');
        }
        ProbeLog log = Logs.read(text.toString(), Logs.NONE);
        assertThat(Logs.names(log)).containsExactly("A7", "B2");
        assertThat(log.trace(0).size()).isEqualTo(10);
        assertThat(log.trace(0).celsius(9)).isEqualTo(29);
        assertThat(log.trace(1).celsius(9)).isEqualTo(60.5);
        assertThat(log.line(1)).isEqualTo(3);
        assertThat(log.channelNamed("Temperature")).isEmpty();
    }

    @Test
    void twoColumnsThatDifferOnlyInTheirNumberAreNeverGuessed() {
        ProbeLog log = Logs.read(
                "time,Temp(C),Temp(C)\n" + DAY + "08:00:00Z,20.0,60.1\n" + DAY + "08:01:00Z,20.1,60.2\n", Logs.NONE);
        assertThat(Logs.names(log)).containsExactly("Temp (column 2)", "Temp (column 3)");
        assertThat(log.channelNamed("Temp")).isEmpty();
        assertThat(log.channelNamed("Temp(C)")).isEmpty();
    }

    @Test
    void anOffsetOverACountOfSecondsIsRefused() {
        assertThat(Logs.refused("Timestamp (UTC+10),Core °C\n1936771200,20\n1936771260,21\n", Logs.NONE)
                        .remedy())
                .contains("take the offset out");
        assertThat(Logs.read("Timestamp (UTC),Core °C\n1936771200,20\n1936771260,21\n", Logs.NONE)
                        .rows())
                .isEqualTo(2);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "Elapsed (s),Core °C\n", "Elapsed (s),Core °C,Bath °C\n"})
    void aCounterThatStartsAgainIsRefused(String between) {
        LogSettings start = Logs.with(Logs.NONE, Instant.parse("2031-05-17T08:00:00Z"));
        String rows = between.contains("Bath") ? "0,30,60\n60,31,60\n" : "0,30\n60,31\n";
        assertThat(Logs.refused("Elapsed (s),Core °C\n0,20\n60,21\n120,22\n" + between + rows, start)
                        .remedy())
                .contains("\"logs\"");
    }

    @Test
    void aHeadingAsPrintedIsAcceptedForTheColumn() {
        ProbeLog log = Logs.read(
                "time,T1(F),Temperature_C,duck C\n" + DAY + "08:00:00Z,68,20,30\n" + DAY + "08:01:00Z,68,20,31\n",
                Logs.with(Logs.NONE, TemperatureUnit.CELSIUS));
        assertThat(log.channelNamed("T1(F)")).contains(0);
        assertThat(log.channelNamed("T1")).contains(0);
        assertThat(log.channelNamed("temperature_c")).contains(1);
        assertThat(log.channelNamed("duck C")).contains(2);
    }

    @Test
    void allQuestionsComeInOneMessage() {
        UnreadableInputException refusal =
                Logs.refused("time,Core\n03/04/2031 08:00,54\n03/04/2031 08:01,55\n", Logs.NONE);
        assertThat(refusal.getMessage())
                .contains("log.unit")
                .contains("log.dates")
                .contains("kitchen.timeZone");
        assertThat(Logs.refused("Elapsed (s),Core\n0,54\n60,55\n", Logs.NONE).getMessage())
                .contains("log.unit")
                .contains("log.start");
    }

    @Test
    void everyRowOfTheFileIsAccountedFor() {
        ProbeLog log = Logs.read(
                "time,Core °C,Note\n" + DAY + "08:00:00Z,20.0,\n" + DAY + "08:01:00Z,20.1,\n" + DAY
                        + "08:01:00Z,20.1,\n,20.2,\n" + DAY + "08:00:30Z,20.0,\nLid opened\n" + DAY
                        + "08:02:00Z,20.2,\n",
                Logs.NONE);
        assertThat(log.contents().get(0).words())
                .isEqualTo("log.csv: 7 rows in the file, 3 read, 4 left out (1 without a time, 1 with words for a time,"
                        + " 1 at a time already read, 1 older than a row before)");
    }

    static LongStream seeds() {
        return LongStream.range(0, 300);
    }

    /** Restarts at random, with columns dropped, added and put in another order, in another unit, divided otherwise. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void restartsNeverMoveAValueToAnotherColumn(long seed) {
        Random random = new Random(seed);
        List<String> all = List.of("Core", "Bath", "Smoker", "Fridge");
        List<Map<String, Double>> truth = new ArrayList<>();
        StringBuilder text = new StringBuilder();
        int minute = 0;
        int sections = 1 + random.nextInt(4);
        for (int section = 0; section < sections; section++) {
            List<String> columns = new ArrayList<>(all);
            Collections.shuffle(columns, random);
            columns = columns.subList(0, 1 + random.nextInt(columns.size()));
            String separator = List.of(",", ";", "\t").get(random.nextInt(3));
            Map<String, Boolean> fahrenheit = new HashMap<>();
            if (section > 0 && random.nextBoolean()) {
                text.append("Logger").append(separator).append("restarted\n");
            }
            text.append("time");
            for (String column : columns) {
                fahrenheit.put(column, random.nextBoolean());
                text.append(separator)
                        .append(column)
                        .append(Boolean.TRUE.equals(fahrenheit.get(column)) ? " °F" : " °C");
            }
            text.append('\n');
            int rows = 2 + random.nextInt(5);
            for (int row = 0; row < rows; row++, minute++) {
                Map<String, Double> readings = new HashMap<>();
                text.append(Instant.parse("2031-05-17T08:00:00Z").plusSeconds(60L * minute));
                int kept = random.nextInt(6) == 0 ? random.nextInt(columns.size()) : columns.size();
                for (int i = 0; i < kept; i++) {
                    String column = columns.get(i);
                    // each column has a range of its own, so that a moved value shows
                    double celsius = 10 + 30 * all.indexOf(column) + random.nextInt(200) / 10.0;
                    double shown = Boolean.TRUE.equals(fahrenheit.get(column)) ? celsius * 1.8 + 32 : celsius;
                    text.append(separator).append(String.format(Locale.ROOT, "%.3f", shown));
                    readings.put(column, celsius);
                }
                text.append('\n');
                truth.add(readings);
            }
        }
        ProbeLog log;
        try {
            log = LogReader.read(SourceFile.of("log.csv", text.toString().getBytes(StandardCharsets.UTF_8)), Logs.NONE);
        } catch (UnreadableInputException refused) {
            assertThat(refused.remedy()).isNotBlank();
            return;
        }
        for (int row = 0; row < log.rows(); row++) {
            int minutes = (int)
                    ((log.millis(row) - Instant.parse("2031-05-17T08:00:00Z").toEpochMilli()) / 60_000);
            for (int channel = 0; channel < log.channels().size(); channel++) {
                double read = log.celsius(channel, row);
                if (!Double.isNaN(read)) {
                    assertThat(truth.get(minutes))
                            .as(
                                    "%s in minute %d of%n%s",
                                    log.channels().get(channel).name(), minutes, text)
                            .hasEntrySatisfying(log.channels().get(channel).name(), value -> assertThat(read)
                                    .isCloseTo(value, within(0.002)));
                }
            }
        }
    }
}
