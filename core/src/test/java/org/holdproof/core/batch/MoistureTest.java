package org.holdproof.core.batch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.OptionalDouble;
import org.holdproof.core.input.UnreadableInputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a record says of the surface in the smoker, and of an approval. */
class MoistureTest {

    @Test
    void lastsThroughoutOrBetweenItsOwnTimes() throws Exception {
        BatchRecord throughout =
                SampleBatch.read(SampleBatch.with("/stages/0/moisture", "{\"means\": \"sealed oven\"}"));
        BatchRecord between = SampleBatch.read(SampleBatch.with(
                "/stages/0/moisture",
                "{\"means\": \"steam\", \"from\": \"2031-04-12T14:00-05:00\", \"to\": \"2031-04-12T17:30-05:00\"}"));

        assertThat(throughout.stages().get(0).moisture())
                .contains(new Moisture(Moisture.Means.SEALED_OVEN, OptionalDouble.empty()));
        assertThat(between.stages().get(0).moisture())
                .contains(new Moisture(Moisture.Means.STEAM, OptionalDouble.of(210)));
    }

    @Test
    void anApprovalIsKept() throws Exception {
        assertThat(SampleBatch.read(SampleBatch.with("/approval", "\"HD-31-7\""))
                        .approval())
                .isEqualTo("HD-31-7");
        assertThat(SampleBatch.read(SampleBatch.tree()).approval()).isEmpty();
    }

    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
        /stages/2/moisture | {"means": "steam"}       | /stages/2/moisture       | asked of a smoker only
        /stages/0/moisture | {"means": "fog"}         | /stages/0/moisture/means | 'steam'
        /stages/0/moisture | {}                       | /stages/0/moisture/means | 'means'
        /stages/0/moisture | {"means": "steam", "from": "2031-04-12T15:00", "to": "2031-04-12T15:00"} | /stages/0/moisture/to | an end after the beginning
        """)
    void refusesWhatItCannotMean(String pointer, String value, String at, String says) {
        assertThatThrownBy(() -> SampleBatch.read(SampleBatch.with(pointer, value)))
                .isInstanceOfSatisfying(UnreadableInputException.class, refused -> {
                    assertThat(refused.place().pointer().orElse("")).isEqualTo(at);
                    assertThat(refused).hasMessageContaining(says);
                });
    }
}
