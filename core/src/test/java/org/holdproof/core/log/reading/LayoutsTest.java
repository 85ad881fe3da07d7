package org.holdproof.core.log.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.stream.Stream;
import org.holdproof.core.log.Channel;
import org.holdproof.core.log.DateOrder;
import org.holdproof.core.log.LogSettings;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.quantity.TemperatureUnit;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The same three rows in many layouts: 10:00, 10:01 and 10:02 on 17 May 2031 in Oslo (08:00 UTC), core 54.4, 54.5 and
 * 54.6 °C. All layouts are of our own making.
 */
class LayoutsTest {
    private static final Instant START = Instant.parse("2031-05-17T08:00:00Z");
    private static final double[] CORE = {54.4, 54.5, 54.6};

    static Stream<Arguments> layouts() {
        LogSettings none = Logs.NONE;
        LogSettings oslo = Logs.OSLO;
        LogSettings start = Logs.with(none, START);
        return Stream.of(
                layout(
                        "ISO with Z, comma",
                        none,
                        "core",
                        """
                        time,core °C
                        2031-05-17T08:00:00Z,54.4
                        2031-05-17T08:01:00Z,54.5
                        2031-05-17T08:02:00Z,54.6
                        """),
                layout(
                        "ISO with offset and fractions, quoted",
                        none,
                        "Core",
                        """
                        "Timestamp","Core (°C)","Humidity (%)"
                        "2031-05-17T10:00:00.000+02:00","54.4","41"
                        "2031-05-17T10:01:00.000+02:00","54.5","42"
                        "2031-05-17T10:02:00.000+02:00","54.6","43"
                        """),
                layout(
                        "ISO with offset without colon, no seconds",
                        none,
                        "Core",
                        """
                        Timestamp,Core [C]
                        2031-05-17 10:00 +0200,54.4
                        2031-05-17 10:01 +0200,54.5
                        2031-05-17 10:02 +0200,54.6
                        """),
                layout(
                        "compact ISO",
                        none,
                        "core",
                        """
                        when|core degC
                        20310517T080000Z|54.4
                        20310517T080100Z|54.5
                        20310517T080200Z|54.6
                        """),
                layout(
                        "semicolon, decimal comma, dots, settled by the 17th",
                        oslo,
                        "Kerntemperatur",
                        """
                        Datum Uhrzeit;Kerntemperatur °C;Bemerkung
                        17.05.2031 10:00:00;54,4;
                        17.05.2031 10:01:00;54,5;Beutel, neu
                        17.05.2031 10:02:00;54,6;
                        """),
                layout(
                        "comma with quoted decimal comma",
                        oslo,
                        "Core",
                        """
                        Time,Core °C
                        2031-05-17 10:00,"54,4"
                        2031-05-17 10:01,"54,5"
                        2031-05-17 10:02,"54,6"
                        """),
                layout(
                        "tab, split date and time, index in front",
                        oslo,
                        "T1",
                        """
                        No.\tDate\tTime\tT1 (°C)\tBatt. (V)
                        1\t17/05/2031\t10:00:00\t54.4\t3.01
                        2\t17/05/2031\t10:01:00\t54.5\t3.01
                        3\t17/05/2031\t10:02:00\t54.6\t3.01
                        """),
                layout(
                        "12-hour clock, month first, °F in underscores",
                        oslo,
                        "core_temp",
                        """
                        logged_at,core_temp_F,lid_open
                        5/17/2031 10:00:00 AM,129.92,0
                        5/17/2031 10:01:00 AM,130.1,0
                        5/17/2031 10:02:00 AM,130.28,1
                        """),
                layout(
                        "month's name, two-digit year settled by the 17th before a 2031 that is no day",
                        oslo,
                        "Probe 1",
                        """
                        Date/Time;Probe 1 (Deg C)
                        17-May-31 10:00;54,4
                        17-May-31 10:01;54,5
                        17-May-31 10:02;54,6
                        """,
                        DateOrder.DAY_MONTH_YEAR),
                layout(
                        "month's name in words, weekday",
                        oslo,
                        "Temperature",
                        """
                        When,Temperature in Celsius
                        "Saturday, May 17, 2031 10:00:00 a.m.",54.4
                        "Saturday, May 17, 2031 10:01:00 a.m.",54.5
                        "Saturday, May 17, 2031 10:02:00 a.m.",54.6
                        """),
                layout(
                        "epoch seconds",
                        none,
                        "core",
                        """
                        epoch;core_celsius
                        1936771200;54.4
                        1936771260;54.5
                        1936771320;54.6
                        """),
                layout(
                        "epoch milliseconds, unit in the cells",
                        none,
                        "Core temp",
                        """
                        ts,Core temp
                        1936771200000,54.4 °C
                        1936771260000,54.5 °C
                        1936771320000,54.6 °C
                        """),
                layout(
                        "elapsed seconds",
                        start,
                        "Core",
                        """
                        Elapsed (s),Core °C
                        0,54.4
                        60,54.5
                        120,54.6
                        """),
                layout(
                        "elapsed minutes, decimal comma",
                        start,
                        "Core",
                        """
                        Zeit [min];Core / °C
                        0,0;54,4
                        1,0;54,5
                        2,0;54,6
                        """),
                layout(
                        "elapsed decimal hours",
                        start,
                        "Core",
                        """
                        hours\tCore ºC
                        0.00000\t54.4
                        0.016666667\t54.5
                        0.033333333\t54.6
                        """),
                layout(
                        "elapsed h:mm:ss",
                        start,
                        "Core",
                        """
                        Elapsed time,Core °C
                        0:00:00,54.4
                        0:01:00,54.5
                        0:02:00,54.6
                        """),
                layout(
                        "elapsed mm:ss, as the heading says",
                        start,
                        "Core",
                        """
                        Run time (mm:ss),Core °C
                        00:00,54.4
                        01:00,54.5
                        02:00,54.6
                        """),
                layout(
                        "time from zero with a start settled",
                        start,
                        "Core",
                        """
                        Time,Core °C
                        00:00:00,54.4
                        00:01:00,54.5
                        00:02:00,54.6
                        """),
                layout(
                        "preamble with serial number, unit and zone",
                        none,
                        "Core",
                        """
                        Serial: 00012345
                        Interval,60 s
                        Unit: C
                        Time zone: UTC+02:00

                        Time,Core
                        2031-05-17 10:00:00,54.4
                        2031-05-17 10:01:00,54.5
                        2031-05-17 10:02:00,54.6
                        """),
                layout(
                        "remarks, and a heading that says UTC",
                        none,
                        "Core",
                        """
                        # written by a logger of our own making
                        # unit=C
                        Time (UTC),Core
                        2031-05-17 08:00:00,54.4
                        # probe moved
                        2031-05-17 08:01:00,54.5
                        2031-05-17 08:02:00,54.6
                        """),
                layout(
                        "heading written as a remark",
                        none,
                        "core",
                        """
                        # time_utc, core_C
                        2031-05-17 08:00:00, 54.4
                        2031-05-17 08:01:00, 54.5
                        2031-05-17 08:02:00, 54.6
                        """),
                layout(
                        "row of units below the headings",
                        oslo,
                        "Core",
                        """
                        Date;Time;Core;Humidity
                        dd.mm.yyyy;hh:mm:ss;°C;%RH
                        17.05.2031;10:00:00;54,4;50
                        17.05.2031;10:01:00;54,5;50
                        17.05.2031;10:02:00;54,6;50
                        """),
                layout(
                        "separator named in the first line, trailing separators",
                        oslo,
                        "Core",
                        """
                        sep=;
                        Time;Core (C);
                        2031/05/17 10:00;54.4;
                        2031/05/17 10:01;54.5;
                        2031/05/17 10:02;54.6;
                        """),
                layout(
                        "no headings, unit in the cells",
                        none,
                        "column 2",
                        """
                        2031-05-17T08:00:00Z,54.4°C
                        2031-05-17T08:01:00Z,54.5°C
                        2031-05-17T08:02:00Z,54.6°C
                        """),
                layout(
                        "spreadsheet's own row numbers under no heading",
                        none,
                        "Core",
                        """
                        ,Time,Core (°C)
                        0,2031-05-17T08:00:00Z,54.4
                        1,2031-05-17T08:01:00Z,54.5
                        2,2031-05-17T08:02:00Z,54.6
                        """),
                layout(
                        "temperature first, clock last, newest first",
                        none,
                        "Core",
                        """
                        Core °C,Time
                        54.6,2031-05-17T08:02:00Z
                        54.5,2031-05-17T08:01:00Z
                        54.4,2031-05-17T08:00:00Z
                        """),
                layout(
                        "times divided by dots behind a date",
                        oslo,
                        "Core",
                        """
                        Aika time;Core (°C)
                        17.5.2031 10.00.00;54,4
                        17.5.2031 10.01.00;54,5
                        17.5.2031 10.02.00;54,6
                        """),
                layout(
                        "footer below the readings",
                        none,
                        "Core",
                        """
                        Time,Core °C,Note
                        2031-05-17T08:00:00Z,54.4,
                        2031-05-17T08:01:00Z,54.5,"two
                        lines"
                        2031-05-17T08:02:00Z,54.6,
                        End of log
                        """),
                layout(
                        "upload time beside",
                        none,
                        "Core",
                        """
                        Uploaded at,Measured at,Core °C
                        2031-05-17T09:00:00Z,2031-05-17T08:00:00Z,54.4
                        2031-05-17T09:00:00Z,2031-05-17T08:01:00Z,54.5
                        2031-05-17T09:00:00Z,2031-05-17T08:02:00Z,54.6
                        """));
    }

    private static Arguments layout(String what, LogSettings settings, String name, String text) {
        return Arguments.of(what, settings, name, text);
    }

    private static Arguments layout(String what, LogSettings settings, String name, String text, DateOrder order) {
        return Arguments.of(what, Logs.with(settings, order), name, text);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("layouts")
    void readsAllAlike(String what, LogSettings settings, String name, String text) {
        ProbeLog log = Logs.read(text, settings);
        assertThat(log.rows()).isEqualTo(3);
        assertThat(Logs.names(log)).containsExactly(name);
        for (int row = 0; row < 3; row++) {
            assertThat(Instant.ofEpochMilli(log.millis(row))).isEqualTo(START.plusSeconds(60L * row));
            assertThat(log.celsius(0, row)).isCloseTo(CORE[row], within(1e-9));
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("headings")
    void takesUnitsFromHeadings(String heading, String name, TemperatureUnit unit) {
        ProbeLog log =
                Logs.read("time," + heading + "\n2031-05-17T08:00:00Z,130\n2031-05-17T08:01:00Z,131\n", Logs.NONE);
        Channel channel = log.channels().get(0);
        assertThat(log.channels()).hasSize(1);
        assertThat(channel).isEqualTo(new Channel(name, heading.replace("\"", ""), 2, unit));
    }

    static Stream<Arguments> headings() {
        TemperatureUnit c = TemperatureUnit.CELSIUS;
        TemperatureUnit f = TemperatureUnit.FAHRENHEIT;
        return Stream.of(
                Arguments.of("Core (°C)", "Core", c),
                Arguments.of("Core [°F]", "Core", f),
                Arguments.of("Core °F", "Core", f),
                Arguments.of("\"Core, °F\"", "Core", f),
                Arguments.of("°C", "column 2", c),
                Arguments.of("Temp. (ºC)", "Temp.", c),
                Arguments.of("Temp_F", "Temp", f),
                Arguments.of("TempC", "Temp", c),
                Arguments.of("tempF", "temp", f),
                Arguments.of("temperature_fahrenheit", "temperature", f),
                Arguments.of("Probe 2 [F]", "Probe 2", f),
                Arguments.of("Probe 2 - degF", "Probe 2", f),
                Arguments.of("bath_degC", "bath", c),
                Arguments.of("Bath Deg. C", "Bath", c),
                Arguments.of("Smoker ℉", "Smoker", f),
                Arguments.of("Core (Degrees Celsius)", "Core", c),
                Arguments.of("Core F", "Core", f),
                Arguments.of("Grad C Kern", "Kern", c),
                Arguments.of("Min Temp °C", "Min Temp", c));
    }
}
