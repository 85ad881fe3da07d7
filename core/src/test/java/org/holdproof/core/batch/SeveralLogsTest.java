package org.holdproof.core.batch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.List;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.quantity.TemperatureUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A cook logged by several instruments, or by a probe that was moved. Invented data. */
class SeveralLogsTest {
    private static final String TWO =
            """
            [{"file": "smoker.csv", "unit": "F", "instrument": {"id": "A", "tolerance": "1 °C"},
              "columns": {"core": [{"column": "Meat", "probe": "Core"}], "air": ["Pit"]},
              "clock": {"ahead": "7 min", "within": "1 min"}},
             {"file": "bath.csv", "units": {"T2": "C"}, "instrument": {"id": "B", "tolerance": "0.3 °C"},
              "columns": {"core": ["Core"], "bath": ["T2"]}}]
            """;

    private static BatchRecord read(String logs) throws UnreadableInputException {
        ObjectNode record = SampleBatch.with("/logs", logs);
        record.remove(List.of("instrument", "columns", "log"));
        return SampleBatch.read(record);
    }

    @Test
    void eachLogHasItsOwnInstrumentClockAndColumns() throws Exception {
        BatchRecord record = read(TWO);
        assertThat(record.logs()).extracting(log -> log.file().orElseThrow()).containsExactly("smoker.csv", "bath.csv");
        assertThat(record.logs().get(0).clock()).isEqualTo(new ClockError(420_000, 60_000));
        assertThat(record.logs().get(1).clock()).isEqualTo(ClockError.NONE);
        assertThat(record.logs().get(0).settings().unit()).contains(TemperatureUnit.FAHRENHEIT);
        assertThat(record.logs().get(1).settings().units()).containsEntry("T2", TemperatureUnit.CELSIUS);
        assertThat(record.instruments())
                .extracting(Instrument::toleranceCelsius)
                .containsExactly(1.0, 0.3);
        assertThat(record.columns()).isEqualTo(new ColumnRoles(List.of("Core"), List.of("T2"), List.of("Pit")));
    }

    @Test
    void aProbeThatWasMovedHasANameForEachPlace() throws Exception {
        ObjectNode moved = SampleBatch.with("/columns", "{\"core\": [\"T1\"]}");
        SampleBatch.put(
                moved, "/columns/air", SampleBatch.json("[{\"column\": \"T2\", \"to\": \"2031-04-12T20:05\"}]"));
        SampleBatch.put(
                moved, "/columns/bath", SampleBatch.json("[{\"column\": \"T2\", \"from\": \"2031-04-12T20:15\"}]"));
        BatchRecord record = SampleBatch.read(moved);
        assertThat(record.columns().air()).containsExactly("T2 (air)");
        assertThat(record.columns().bath()).containsExactly("T2 (bath)");
        ColumnUse air = record.logs().get(0).columns().get(2);
        assertThat(air.holdsAt(Instant.parse("2031-04-13T01:04:00Z").toEpochMilli()))
                .isTrue();
        assertThat(air.holdsAt(Instant.parse("2031-04-13T01:06:00Z").toEpochMilli()))
                .isFalse();
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
        [{"file": "a.csv", "instrument": {"id": "A", "tolerance": "1 K"}, "columns": {"air": ["Pit"]}}] | no core column
        [{"file": "a.csv", "instrument": {"id": "A", "tolerance": "1 K"}, "columns": {"core": ["Core"]}}, {"file": "A.CSV", "instrument": {"id": "A", "tolerance": "1 K"}, "columns": {"core": ["Core"]}}] | a second time
        """)
    void whatCannotBeIsRefused(String logs, String found) {
        assertThatThrownBy(() -> read(logs))
                .isInstanceOf(UnreadableInputException.class)
                .hasMessageContaining(found);
    }

    @Test
    void whatBelongsToALogStandsInIt() {
        assertThatThrownBy(() -> SampleBatch.read(SampleBatch.with("/logs", TWO)))
                .hasMessageContaining("'instrument' beside 'logs'");
    }
}
