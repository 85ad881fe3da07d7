package org.holdproof.cli.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.HashMap;
import java.util.Map;
import org.holdproof.core.batch.BatchReader;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.log.reading.LogReader;
import org.junit.jupiter.api.Test;

class DemoKitchenTest {
    @Test
    void theSameBatchesComeOutEveryTime() {
        assertThat(DemoKitchen.batches()).isEqualTo(DemoKitchen.batches());
    }

    /** Four layouts, one reader; the first reading is the record's first stage's start, a minute lies between readings. */
    @Test
    void everyLayoutReadsBackToTheMinute() throws Exception {
        Map<String, Integer> rows = new HashMap<>();
        for (DemoBatch batch : DemoKitchen.batches()) {
            BatchRecord record =
                    BatchReader.parse(batch.recordFile(), batch.record().getBytes(StandardCharsets.UTF_8));
            ProbeLog log = LogReader.read(
                    batch.logFile(),
                    new ByteArrayInputStream(batch.log().getBytes(StandardCharsets.UTF_8)),
                    record.log());
            assertThat(log.channels()).as(batch.name()).hasSize(3);
            assertThat(log.millis(0))
                    .as(batch.name())
                    .isEqualTo(record.stages().get(0).from().toEpochMilli());
            assertThat(log.millis(1) - log.millis(0))
                    .isEqualTo(Duration.ofMinutes(1).toMillis());
            rows.put(batch.name(), log.rows());
        }
        assertThat(rows)
                .containsEntry("1-smoked-then-bagged", 1520)
                .containsEntry("2-low-bath", 1625)
                .containsEntry("3-late-chill", 770)
                .containsEntry("4-probe-gap", 393 - 125);
    }
}
