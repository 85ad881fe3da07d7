package org.holdproof.core.assess;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.kinetics.Traces;
import org.holdproof.core.verdict.Caution;
import org.junit.jupiter.api.Test;

/**
 * Food Code 3-502.12(D)(2)(e)(i): the 30 days are open only to a bag that reached 34 °F within 48 h of 41 °F. Invented
 * logs.
 */
class UseByTest {
    private static final double DAY = 1440;

    private static List<Caution> useBy(double storedFahrenheit) {
        BatchRecord batch = Cooks.batch(
                "us-food-code-2022",
                Cooks.BRISKET,
                Cooks.stage(Stage.Kind.BAG, 0, 0),
                Cooks.stage(Stage.Kind.BATH, 0, 600),
                Cooks.stage(Stage.Kind.CHILL, 600, 900),
                Cooks.stage(Stage.Kind.STORE, 900, 2 * DAY));
        Evidence evidence = Cooks.evidence(
                batch,
                0,
                Traces.fahrenheit(
                        0,
                        40,
                        300,
                        150,
                        600,
                        150,
                        700,
                        70,
                        900,
                        40,
                        1500,
                        storedFahrenheit,
                        2 * DAY,
                        storedFahrenheit));
        return new ShelfLifeChecks(evidence).useBy();
    }

    @Test
    void thirtyDaysWhereTheColdWasReachedInTime() {
        assertThat(useBy(33)).extracting(Caution::text).anySatisfy(text -> assertThat(text)
                .startsWith("Use by 31 January 1970")
                .contains("3-502.12(D)(2)(e)(i)"));
    }

    @Test
    void sevenDaysOnlyWhereItWasNot() {
        assertThat(useBy(38))
                .extracting(Caution::text)
                .anySatisfy(text -> assertThat(text).startsWith("Use by 7 January 1970"))
                .anySatisfy(text -> assertThat(text).startsWith("The 30 days are not open to this batch"));
    }
}
