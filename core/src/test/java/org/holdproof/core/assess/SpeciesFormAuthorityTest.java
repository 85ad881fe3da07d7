package org.holdproof.core.assess;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.Stream;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.batch.Product.Form;
import org.holdproof.core.batch.Product.Species;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.course.Accounts;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.kinetics.Traces;
import org.holdproof.core.rules.AuthorityProfile;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Every food under every authority: hot enough is MET where a rule was read, and never where none was. */
class SpeciesFormAuthorityTest {

    static Stream<Arguments> foods() {
        return RuleLibrary.builtIn().profiles().stream().flatMap(profile -> Stream.of(Species.values())
                .flatMap(species -> Stream.of(Form.values()).map(form -> Arguments.of(profile.id(), species, form))));
    }

    @ParameterizedTest(name = "{0}: {2} {1}")
    @MethodSource("foods")
    void hotEnoughIsMetOnlyWhereARuleWasRead(String authority, Species species, Form form) {
        AuthorityProfile profile = RuleLibrary.builtIn().profile(authority).orElseThrow();
        boolean served = profile.lethalityFor(species, form).isPresent();

        Check hot = lethality(authority, species, form, 95, 60);
        Check low = lethality(authority, species, form, 50, 2880);

        assertThat(hot.verdict()).isEqualTo(served ? Verdict.MET : Verdict.NOT_PROVEN);
        assertThat(low.verdict()).isEqualTo(served ? Verdict.NOT_MET : Verdict.NOT_PROVEN);
        assertThat(hot.citation().isPresent()).isEqualTo(served);
        assertThat(hot.why()).isNotBlank();
        if (!served) {
            assertThat(hot.next().orElse("")).as("whom to ask").contains("Ask the authority");
            assertThat(profile.left())
                    .as("what the authority leaves open is said in words")
                    .isNotEmpty();
        }
    }

    private static Check lethality(String authority, Species species, Form form, double celsius, double minutes) {
        BatchRecord batch =
                Cooks.batch(authority, Cooks.product(species, form), Cooks.stage(Stage.Kind.BATH, 0, minutes));
        Evidence evidence = Cooks.evidence(batch, 0.5, Traces.held(celsius, minutes));
        return new LethalityCheck(evidence, Accounts.of(evidence)).check();
    }
}
