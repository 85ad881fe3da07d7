package org.holdproof.core.log.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import org.holdproof.core.log.ProbeLog;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Dates and times as loggers and people write them. Invented data. */
class FormsOfTimeTest {
    private static final Instant FIRST = Instant.parse("2031-05-17T08:05:00Z");

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
        2031-05-17 8:5:0                 | 2031-05-17 8:6:0
        2031-05-17-08:05:00              | 2031-05-17-08:06:00
        2031-05-17_08:05:00              | 2031-05-17_08:06:00
        2031-05-17T08:05                 | 2031-05-17T08:06
        20310517080500                   | 20310517080600
        203105170805                     | 203105170806
        2031051708:05:00                 | 2031051708:06:00
        20310517_080500                  | 20310517_080600
        17 May 2031 8:05 a. m.           | 17 May 2031 8:06 a. m.
        17 May 2031 08h05                | 17 May 2031 08h06
        17 May 2031 08h05m00s            | 17 May 2031 08h06m00s
        Sat May 17 2031 10:05:00 GMT+0200 (Central European Summer Time) | Sat May 17 2031 10:06:00 GMT+0200 (Central European Summer Time)
        17. Mai 2031 08:05               | 17. Mai 2031 08:06
        17 mai 2031 08:05                | 17 mai 2031 08:06
        17 de mayo de 2031 08:05         | 17 de mayo de 2031 08:06
        17 maggio 2031 08:05             | 17 maggio 2031 08:06
        17 mei 2031 08:05                | 17 mei 2031 08:06
        17 de maio de 2031 08:05         | 17 de maio de 2031 08:06
        17 maja 2031 08:05               | 17 maja 2031 08:06
        17 maj 2031 08:05                | 17 maj 2031 08:06
        ２０３１-05-17 08:05:00           | ２０３１-05-17 08:06:00
        """)
    void allNameTheSameMinutes(String first, String second) {
        ProbeLog log = Logs.read("Time;Core °C\n" + first + ";54.0\n" + second + ";54.5\n", Logs.zone("UTC"));
        assertThat(Logs.instant(log, 0)).isEqualTo(FIRST.toString());
        assertThat(Logs.instant(log, 1)).isEqualTo(FIRST.plusSeconds(60).toString());
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({"0h 5m,0h 6m", "5m 0s,6m 0s", "0 days 00:05:00,0 days 00:06:00", "0:5:0,0:6:0"})
    void elapsedTimeInWords(String first, String second) {
        ProbeLog log = Logs.read(
                "Elapsed;Core °C\n" + first + ";54.0\n" + second + ";54.5\n",
                Logs.with(Logs.NONE, Instant.parse("2031-05-17T08:00:00Z")));
        assertThat(Logs.instant(log, 0)).isEqualTo(FIRST.toString());
        assertThat(Logs.instant(log, 1)).isEqualTo(FIRST.plusSeconds(60).toString());
    }

    @Test
    void aBlockOfZeroBytesOfAPowerCutIsPassedOver() {
        String text = "Time;Core °C\n2031-05-17T08:05Z;54.0\n" + "\0".repeat(200) + "\n2031-05-17T08:06Z;54.5\n";
        assertThat(Logs.read(text, Logs.NONE).rows()).isEqualTo(2);
        assertThat(Logs.refused("Time;Core\n".getBytes(StandardCharsets.UTF_16LE), Logs.NONE)
                        .found())
                .contains("binary");
    }
}
