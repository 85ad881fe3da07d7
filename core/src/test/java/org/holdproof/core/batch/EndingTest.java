package org.holdproof.core.batch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import org.holdproof.core.input.UnreadableInputException;
import org.junit.jupiter.api.Test;

class EndingTest {
    @Test
    void theRecordSaysHowTheBatchEnded() throws Exception {
        BatchRecord record =
                SampleBatch.read(SampleBatch.with("/end", "{\"how\": \"in store\", \"at\": \"2099-01-02T08:00Z\"}"));

        assertThat(record.ending()).contains(new Ending(Ending.How.IN_STORE, Instant.parse("2099-01-02T08:00:00Z")));
    }

    @Test
    void servingLastIsAnEnd() throws Exception {
        ObjectNode tree = SampleBatch.without("/end");
        ArrayNode stages = (ArrayNode) tree.at("/stages");
        while (!stages.get(stages.size() - 1).at("/stage").asText().equals("serve")) {
            stages.remove(stages.size() - 1);
        }

        assertThat(SampleBatch.read(tree).ending()).map(Ending::how).contains(Ending.How.SERVED);
        stages.remove(stages.size() - 1);
        assertThat(SampleBatch.read(tree).ending()).isEmpty();
    }

    @Test
    void anEndBeforeTheLastStageIsRefused() {
        assertThatThrownBy(() -> SampleBatch.read(
                        SampleBatch.with("/end", "{\"how\": \"served\", \"at\": \"1999-01-02T08:00Z\"}")))
                .isInstanceOf(UnreadableInputException.class)
                .hasMessageContaining("an end after the last stage");
    }
}
