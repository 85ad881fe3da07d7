package org.holdproof.core.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import java.util.OptionalDouble;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.Comparison;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.HotAllowance.Outcome;
import org.holdproof.core.rules.LethalityTable.Counting;
import org.holdproof.core.rules.ReheatingRule.Target;
import org.holdproof.core.rules.Source.How;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The rules on what lies between the cook and the plate, as their documents print them. */
class ConditionRulesTest {
    private static final RuleLibrary LIBRARY = RuleLibrary.builtIn();

    private static AuthorityProfile profile(String id) {
        return LIBRARY.profile(id).orElseThrow();
    }

    @ParameterizedTest(name = "{0}: {1} min under hot: {2} ({3})")
    @CsvSource({
        // Temperature control schedules, para 7(2): less than two hours, one period
        "uk-england-wales-ni, 119.9, ALLOWED, READ",
        "uk-england-wales-ni, 120, MISSED, READ",
        // FSANZ 2-hour/4-hour rule
        "australia, 119.9, ALLOWED, READ",
        "australia, 120, SERVED_NOW, READ",
        "australia, 239.9, SERVED_NOW, READ",
        "australia, 240, MISSED, READ",
        // FDA Food Code 3-501.19(B): four hours by the mark; the 30 min are this program's convention
        "us-food-code-2022, 30, ALLOWED, CONVENTION",
        "us-food-code-2022, 31, MARKED, READ",
        "us-food-code-2022, 240, MARKED, READ",
        "us-food-code-2022, 241, MISSED, READ",
        // 10 NYCRR 14-1.40(a): a service period of up to 120 min
        "us-new-york, 120, SERVED_NOW, READ",
        "us-new-york, 121, MISSED, READ",
        // no figure: this program's convention
        "us-fsis-2021, 30, ALLOWED, CONVENTION",
        "us-fsis-2021, 31, AS_COOLING, CONVENTION",
    })
    void saysWhatFollowsFromATimeUnderHot(String authority, double minutes, Outcome outcome, How how) {
        HotAllowance.Band band = profile(authority).hotAllowance().orElseThrow().band(minutes, 1e-6);

        assertThat(band.outcome()).isEqualTo(outcome);
        assertThat(band.citation().how()).isEqualTo(how);
        assertThat(band.citation().text().contains("convention of this program"))
                .isEqualTo(how == How.CONVENTION);
    }

    @Test
    void everyProfileSaysWhatFollowsFromATimeUnderHot() {
        assertThat(LIBRARY.profiles())
                .allSatisfy(profile ->
                        assertThat(profile.hotAllowance()).as(profile.id()).isPresent());
    }

    @Test
    void refusesBandsOutOfOrder() {
        Citation citation = LIBRARY.rules(HotAllowance.class).all().get(0).citation();
        HotAllowance.Band open =
                new HotAllowance.Band(OptionalDouble.empty(), Comparison.AT_MOST, Outcome.MISSED, citation);
        HotAllowance.Band hour =
                new HotAllowance.Band(OptionalDouble.of(60), Comparison.AT_MOST, Outcome.ALLOWED, citation);

        for (List<HotAllowance.Band> bands :
                List.of(List.<HotAllowance.Band>of(), List.of(hour), List.of(open, open), List.of(hour, hour, open))) {
            assertThatIllegalArgumentException()
                    .isThrownBy(
                            () -> new HotAllowance("x", "x", "x", "x", TimeLimit.Count.EACH_SPELL, bands, citation));
        }
    }

    /** FSIS Cooking Guideline 2021, pages 67 to 68, has the total time; no other document says so. */
    @Test
    void onlyTheFsisGuidelineAddsTimeUp() {
        assertThat(LIBRARY.rules(LethalityTable.class).all())
                .allSatisfy(table -> assertThat(table.counting() == Counting.TOTAL)
                        .as(table.id())
                        .isEqualTo(table.id().startsWith("fsis-2021-")));
    }

    /** UK Food Standards Agency, core temperatures for reheating: any of five. */
    @Test
    void holdsTheAlternativesOfAReheatingRule() {
        ReheatingRule rule = profile("uk-england-wales-ni").reheat().orElseThrow();

        assertThat(rule.targets())
                .containsExactly(target(70, 120), target(75, 30), target(80, 6), target(65, 600), target(60, 2700));
        assertThat(rule.target()).contains(new Boundary(70, TemperatureUnit.CELSIUS));
    }

    private static Target target(double celsius, double seconds) {
        return new Target(new Boundary(celsius, TemperatureUnit.CELSIUS), Comparison.AT_LEAST, seconds);
    }

    /** FDA Food Code 3-403.10 and 3-403.11(A), (E): to order at any temperature, a roast also on its cooking table. */
    @Test
    void tellsReheatingToOrderFromReheatingForHotHolding() {
        AuthorityProfile code = profile("us-food-code-2022");

        assertThat(code.reheat().orElseThrow().target()).contains(new Boundary(165, TemperatureUnit.FAHRENHEIT));
        assertThat(code.reheatToOrder().orElseThrow().asksNoTemperature()).isTrue();
        assertThat(code.reheatRoast().orElseThrow().table().orElseThrow().id()).isEqualTo("us-food-code-roasts");
        assertThat(code.reheatRoast().orElseThrow().asksNoTemperature()).isFalse();
        assertThat(profile("uk-england-wales-ni").reheatToOrder()).isEmpty();
    }

    /** FDA Food Code 3-401.11(B)(1): by weight, 10 lb being 4.53592 kg, and by kind of oven. */
    @Test
    void holdsTheOvensOfTheRoastTable() {
        List<OvenCondition> ovens =
                profile("us-food-code-2022").lethality().get(0).ovens();

        assertThat(ovens.stream().filter(oven -> oven.isFor(2)).map(ConditionRulesTest::text))
                .containsExactly(
                        "STILL_DRY at least 350 °F", "CONVECTION at least 325 °F", "HIGH_HUMIDITY at most 250 °F");
        assertThat(ovens.stream().filter(oven -> oven.isFor(4.53592)).map(ConditionRulesTest::text))
                .containsExactly(
                        "STILL_DRY at least 250 °F", "CONVECTION at least 250 °F", "HIGH_HUMIDITY at most 250 °F");
        assertThat(ovens.get(4).humidityAbovePercent()).hasValue(90);
        assertThat(ovens.get(4).humidityMinutes()).hasValue(60);
    }

    private static String text(OvenCondition oven) {
        return oven.oven() + " " + oven.comparison().words() + " "
                + oven.temperature().text();
    }
}
