package org.holdproof.core.assess;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.batch.Product.Form;
import org.holdproof.core.batch.Product.Species;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.course.Accounts;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.kinetics.Traces;
import org.holdproof.core.rules.LethalityChoice;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.verdict.Caution;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;
import org.junit.jupiter.api.Test;

/** What is told beside a verdict on the table it was reached by. */
class TableCautionsTest {
    private static Evidence evidence(String authority, double celsius, double minutes) {
        BatchRecord batch = Cooks.batch(
                authority, Cooks.product(Species.BEEF, Form.INTACT), Cooks.stage(Stage.Kind.BATH, 0, minutes));
        return Cooks.evidence(batch, 0.2, Traces.held(celsius, minutes));
    }

    private static Optional<Caution> lowRow(double celsius, double minutes) {
        Evidence evidence = evidence("us-fsis-2021", celsius, minutes);
        LethalityChoice choice =
                evidence.authority().lethalityFor(evidence.batch().product()).orElseThrow();
        Check check = new LethalityCheck(evidence, Accounts.of(evidence)).check();
        assertThat(check.verdict()).isEqualTo(Verdict.MET);
        return LowRow.caution(
                evidence, check, choice.rowsFor(evidence.batch().product().fatPercent()), RuleLibrary.builtIn());
    }

    /** Meat and Muscle Biology (2018): the 6.5-log times held at 60 °C and above, not at 54.4 °C. */
    @Test
    void aCookThatMeetsLowRowsOnlyIsTold() {
        assertThat(lowRow(56, 240).map(Caution::text).orElse(""))
                .contains("did not reproduce the 6.5-log time", "54.4 °C", "Meat and Muscle Biology (2018)");
        assertThat(lowRow(62, 240)).isEmpty();
    }

    /** FDA Food Code 3-401.11(D): never proven, and what is asked instead is told. */
    @Test
    void foodServedUndercookedOnRequestIsNeverProven() {
        Evidence rare = evidence("us-food-code-2022", 50, 120);
        Check check = new LethalityCheck(rare, Accounts.of(rare)).check();

        assertThat(check.verdict()).isEqualTo(Verdict.NOT_MET);
        assertThat(Undercooked.caution(rare, check).map(Caution::text).orElse(""))
                .contains("never proven pasteurized", "consumer advisory", "3-401.11(D)");
        Evidence done = evidence("us-food-code-2022", 62, 240);
        assertThat(Undercooked.caution(done, new LethalityCheck(done, Accounts.of(done)).check()))
                .isEmpty();
    }
}
