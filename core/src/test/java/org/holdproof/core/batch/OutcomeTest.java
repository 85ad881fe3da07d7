package org.holdproof.core.batch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a kitchen weighed and how it ate; the weights are invented. */
class OutcomeTest {
    @Test
    void whatNobodyWeighedOrSaidIsUnsaid() throws Exception {
        BatchRecord record = SampleBatch.read(
                """
            {"batch": "1", "authority": "a", "kitchen": {"name": "k", "timeZone": "Europe/Dublin"},
             "product": {"name": "p", "species": "beef", "form": "intact", "shape": "roast"},
             "instrument": {"id": "i", "tolerance": "1 °F"}, "columns": {"core": ["T"]},
             "stages": [{"stage": "bath", "from": "2031-01-01T00:00"}], "roles": {"operator": "o"}}""");

        assertThat(record.outcome()).isEqualTo(Outcome.UNSAID);
    }

    @Test
    void aWeighingLeftOutIsNotZeroAndPoundsAreRead() throws Exception {
        WeighIns weights = SampleBatch.read(
                        SampleBatch.with("/weights", "{\"raw\": \"12 lb\", \"served\": \"7.5 lb\"}"))
                .outcome()
                .weights()
                .orElseThrow();

        assertThat(weights.raw()).isCloseTo(12 * 0.45359237, within(1e-12));
        assertThat(weights.afterSmoke()).isEmpty();
        assertThat(weights.outOfBag()).isEmpty();
        assertThat(weights.served()).hasValue(7.5 * 0.45359237);
    }

    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource(
            quoteCharacter = '`',
            delimiter = '|',
            value = {
                "/weights|{\"raw\": \"4 kg\", \"outOfBag\": \"4.1 kg\"}|no more than it weighed before that",
                "/weights|{\"raw\": \"4 kg\", \"afterSmoke\": \"3 kg\", \"served\": \"3.5 kg\"}|gains no weight",
                "/weights|{\"outOfBag\": \"4.1 kg\"}|Add the member 'raw'",
                "/weights|{\"raw\": \"4\"}|Add the unit",
                "/weights|{\"raw\": \"4 kg\", \"bagged\": \"3 kg\"}|unknown member 'bagged'",
                "/tenderness|\"chewy\"|one of 'tough', 'tender', 'falling apart'",
                "/tenderness|5|one of 'tough', 'tender', 'falling apart'"
            })
    void whatCannotBeIsRefusedAtItsPlace(String pointer, String value, String message) {
        assertThatThrownBy(() -> SampleBatch.read(SampleBatch.with(pointer, value)))
                .hasMessageContaining(message)
                .hasMessageContaining(pointer.substring(1));
    }
}
