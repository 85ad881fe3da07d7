package org.holdproof.core.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import org.assertj.core.data.Offset;
import org.holdproof.core.batch.Product.Form;
import org.holdproof.core.batch.Product.Species;
import org.holdproof.core.input.CsvRow;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.Comparison;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.CoolingRule.Clock;
import org.holdproof.core.rules.CoolingRule.Start;
import org.holdproof.core.rules.Source.How;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The built-in rules and profiles, against the documents they come from. */
class RuleLibraryTest {
    private static final RuleLibrary LIBRARY = RuleLibrary.builtIn();

    private static final Boundary F135 = new Boundary(135, TemperatureUnit.FAHRENHEIT);
    private static final Boundary F41 = new Boundary(41, TemperatureUnit.FAHRENHEIT);

    /** FDA Food Code 3-501.14(A): 135 to 70 °F within 2 h, to 41 °F within 6 h in all. */
    @Test
    void carriesUnusedCoolingTimeOverUnderTheFoodCode() {
        CoolingRule rule =
                LIBRARY.rules(CoolingRule.class).find("US-FDA-COOL-A").orElseThrow();

        assertThat(rule.stages()).hasSize(2);
        CoolingRule.Stage first = rule.stages().get(0);
        CoolingRule.Stage second = rule.stages().get(1);
        assertThat(first.start()).isEqualTo(Start.FALLS_THROUGH);
        assertThat(first.from()).contains(F135);
        assertThat(first.to()).contains(new Boundary(70, TemperatureUnit.FAHRENHEIT));
        assertThat(first.maxMinutes()).hasValue(120);
        assertThat(first.comparison()).isEqualTo(Comparison.AT_MOST);
        assertThat(second.start()).isEqualTo(Start.SAME_AS_FIRST);
        assertThat(second.from()).contains(F135);
        assertThat(second.to()).contains(F41);
        assertThat(second.maxMinutes()).hasValue(360);
        assertThat(second.clock()).isEqualTo(Clock.ELAPSED);
    }

    /** 3 CCR 910.15(a)(1): the same figures as 120 and 240 min, each on its own. */
    @Test
    void keepsStagesApartUnderCaliforniasMeatRule() {
        CoolingRule rule = LIBRARY.rules(CoolingRule.class).find("US-CA-910A").orElseThrow();

        assertThat(rule.stages()).extracting(CoolingRule.Stage::clock).containsOnly(Clock.DWELL);
        assertThat(rule.stages())
                .extracting(CoolingRule.Stage::maxMinutes)
                .containsExactly(OptionalDouble.of(120), OptionalDouble.of(240));
        assertThat(rule.stages().get(1).start()).isEqualTo(Start.AFTER_PREVIOUS);
    }

    /** FDA Food Code 3-501.14(A), 3-501.16(A)(1), 3-403.11(A): both scales are printed, and are two rules. */
    @Test
    void holdsBothPrintedBoundarySets() {
        assertThat(LIBRARY.rules(CoolingRule.class)
                        .find("US-FDA-COOL-A-C")
                        .orElseThrow()
                        .stages()
                        .get(0)
                        .from())
                .contains(new Boundary(57, TemperatureUnit.CELSIUS));
        assertThat(LIBRARY.rules(CoolingRule.class)
                        .find("US-FDA-COOL-A-C")
                        .orElseThrow()
                        .stages()
                        .get(1)
                        .to())
                .contains(new Boundary(5, TemperatureUnit.CELSIUS));
        assertThat(LIBRARY.rules(HoldingRule.class)
                        .find("US-FDA-HOT")
                        .orElseThrow()
                        .limit())
                .contains(F135);
        assertThat(LIBRARY.rules(HoldingRule.class)
                        .find("US-FDA-HOT-C")
                        .orElseThrow()
                        .limit())
                .contains(new Boundary(57, TemperatureUnit.CELSIUS));
        assertThat(LIBRARY.rules(HoldingRule.class)
                        .find("US-FDA-HOT-ROAST")
                        .orElseThrow()
                        .limit())
                .contains(new Boundary(130, TemperatureUnit.FAHRENHEIT));
        assertThat(LIBRARY.rules(HoldingRule.class)
                        .find("US-FDA-HOT-ROAST-C")
                        .orElseThrow()
                        .limit())
                .contains(new Boundary(54, TemperatureUnit.CELSIUS));
        assertThat(LIBRARY.rules(ReheatingRule.class)
                        .find("US-FDA-REH-A")
                        .orElseThrow()
                        .target())
                .contains(new Boundary(165, TemperatureUnit.FAHRENHEIT));
        assertThat(LIBRARY.rules(ReheatingRule.class)
                        .find("US-FDA-REH-A-C")
                        .orElseThrow()
                        .target())
                .contains(new Boundary(74, TemperatureUnit.CELSIUS));
    }

    @ParameterizedTest(name = "{0}, stage {1}: {2} from {3} to {4} °C in {5} min, {6} {7}")
    @CsvSource({
        // Arrêté of 21 December 2009: less than two hours
        "FR-ARR-2009, 1, FALLS_THROUGH, 63, 10, 120, BELOW, ELAPSED",
        // Gaze, Shaw and Archer 1998: 2.5, 6 and 1.5 h from the end of cooking
        "UK-CCFRA-MAX, 1, END_OF_COOKING, , 50, 150, AT_MOST, ELAPSED",
        "UK-CCFRA-MAX, 3, AFTER_PREVIOUS, 12, 5, 90, AT_MOST, ELAPSED",
        // AS 4696: 1.6 h for the last stage
        "AU-AS4696-UNCURED, 3, AFTER_PREVIOUS, 12, 5, 96, AT_MOST, ELAPSED",
        // CFIA, archived manual 4.5
        "CA-CFIA-INTACT, 1, START_OF_CHILLING, , 4, 450, AT_MOST, ELAPSED",
        "CA-CFIA-INTACT, 2, FALLS_THROUGH, 50, 20, 120, AT_MOST, DWELL",
        // Department of Health 1989: 30 min to the chiller, then 90 min
        "UK-DH-1989, 1, END_OF_COOKING, , , 30, AT_MOST, ELAPSED",
        "UK-DH-1989, 2, START_OF_CHILLING, , 3, 90, AT_MOST, ELAPSED",
        // provincial guidance: 60 to 20 °C in 2 h, to 4 °C in 4 h more
        "CA-PROV-COOL, 1, FALLS_THROUGH, 60, 20, 120, AT_MOST, ELAPSED",
        "CA-PROV-COOL, 2, AFTER_PREVIOUS, 20, 4, 240, AT_MOST, ELAPSED",
    })
    void readsTheStage(
            String id, int number, Start start, Double from, Double to, double minutes, Comparison op, Clock clock) {
        CoolingRule.Stage stage =
                LIBRARY.rules(CoolingRule.class).find(id).orElseThrow().stages().get(number - 1);

        assertThat(stage.start()).isEqualTo(start);
        assertThat(stage.from().map(Boundary::value).orElse(null)).isEqualTo(from);
        assertThat(stage.to().map(Boundary::value).orElse(null)).isEqualTo(to);
        assertThat(stage.maxMinutes()).hasValue(minutes);
        assertThat(stage.comparison()).isEqualTo(op);
        assertThat(stage.clock()).isEqualTo(clock);
    }

    /** FSIS Appendix B: 120 °F to 55 °F within 6 h, at most 1 h of it above 80 °F, chilling begun within 90 min. */
    @Test
    void readsTheSchedulesOfLargePiecesAndCuredProducts() {
        CoolingRule large = LIBRARY.rules(CoolingRule.class).find("US-FSIS-B2").orElseThrow();
        assertThat(large.condition().intactOnly()).isTrue();
        assertThat(large.stages())
                .extracting(stage -> stage.maxMinutes().orElseThrow())
                .containsExactly(90.0, 60.0, 300.0, 360.0);
        assertThat(large.stages().get(0).to()).isEmpty();
        assertThat(large.stages().get(3).start()).isEqualTo(Start.FALLS_THROUGH);

        CoolingRule cured = LIBRARY.rules(CoolingRule.class).find("US-FSIS-B3").orElseThrow();
        assertThat(cured.condition().nitritePpmAtLeast()).hasValue(100);
        assertThat(cured.stages())
                .extracting(stage -> stage.maxMinutes().orElseThrow())
                .containsExactly(300.0, 600.0);

        // 3 CCR 910.15(b): 120 ppm with 3.5 % brine, or 40 ppm with 6 %
        assertThat(LIBRARY.rules(CoolingRule.class)
                        .find("US-FSIS-B4")
                        .orElseThrow()
                        .condition()
                        .brinePercentAtLeast())
                .hasValue(3.5);
        assertThat(LIBRARY.rules(CoolingRule.class)
                        .find("US-FSIS-B4-BRINE-6")
                        .orElseThrow()
                        .condition()
                        .nitritePpmAtLeast())
                .hasValue(40);
    }

    @ParameterizedTest(name = "{0}: {1} {2}")
    @CsvSource({
        // SI 2006/31 (W) Sch 4 para 6: the offence is below 63 °C; Scotland 2006 Sch 4 para 2: above 63 °C
        "UK-EWNI-HOT, AT_LEAST, 63, CELSIUS",
        "UK-SCO-HOT, ABOVE, 63, CELSIUS",
        "UK-EWNI-CHILL, AT_MOST, 8, CELSIUS",
        // FDA Food Code 3-501.16(A)(2); provincial guidance; 10 NYCRR 14-1.40(a)
        "US-FDA-COLD, AT_MOST, 41, FAHRENHEIT",
        "CA-PROV-COLD, AT_MOST, 4, CELSIUS",
        "US-NY-COLD, AT_MOST, 45, FAHRENHEIT",
    })
    void readsTheHoldingLimit(String id, Comparison comparison, double value, TemperatureUnit unit) {
        HoldingRule rule = LIBRARY.rules(HoldingRule.class).find(id).orElseThrow();

        assertThat(rule.limit()).contains(new Boundary(value, unit));
        assertThat(rule.comparison()).isEqualTo(comparison);
    }

    /** FSIS Cooking Guideline 2021, page 24: 50 to 130 °F in 6 h in all. */
    @Test
    void readsTheComeUpLimit() {
        HoldingRule rule = LIBRARY.rules(HoldingRule.class).find("US-FSIS-CUT").orElseThrow();

        assertThat(rule.from()).contains(new Boundary(50, TemperatureUnit.FAHRENHEIT));
        assertThat(rule.limit()).contains(new Boundary(130, TemperatureUnit.FAHRENHEIT));
        assertThat(rule.maxMinutes()).hasValue(360);
        assertThat(rule.timeComparison()).isEqualTo(Comparison.AT_MOST);
    }

    /** SI 2006/31 (W) Sch 4 para 7(2): less than two hours. FDA Food Code 3-501.19(B): 4 h; 3-502.12(D)(2)(d): seal at
     * 135 °F or above. */
    @Test
    void keepsStrictAndInclusiveTimesApart() {
        assertThat(LIBRARY.rules(HoldingRule.class)
                        .find("UK-EWNI-HOT-2H")
                        .orElseThrow()
                        .timeComparison())
                .isEqualTo(Comparison.BELOW);
        TimeLimit fourHours = LIBRARY.rules(TimeLimit.class).find("US-TPHC-4H").orElseThrow();
        assertThat(fourHours.timeComparison()).isEqualTo(Comparison.AT_MOST);
        assertThat(fourHours.maxMinutes()).isEqualTo(240);
        WrittenRule seal = LIBRARY.rules(WrittenRule.class).find("US-ROP-D2D").orElseThrow();
        assertThat(seal.comparison()).contains(Comparison.AT_LEAST);
        assertThat(seal.value()).hasValue(135);
        assertThat(seal.unit()).isEqualTo("F");
    }

    @Test
    void marksRulesFromMemory() {
        assertThat(LIBRARY.rules(ReheatingRule.class)
                        .find("CA-PROV-REH")
                        .orElseThrow()
                        .citation()
                        .how())
                .isEqualTo(How.MEMORY);
        assertThat(LIBRARY.rules(CoolingRule.class)
                        .find("CODEX-39")
                        .orElseThrow()
                        .citation()
                        .how())
                .isEqualTo(How.MEMORY);
        assertThat(LIBRARY.rules(HoldingRule.class)
                        .find("UK-DH-STORE")
                        .orElseThrow()
                        .citation()
                        .how())
                .isEqualTo(How.MEMORY);
        assertThat(LIBRARY.rules(WrittenRule.class)
                        .find("US-ROP-D1")
                        .orElseThrow()
                        .citation()
                        .text())
                .endsWith("(from memory, unconfirmed)");
        // the 1999 text was seen in a forum copy only
        assertThat(LIBRARY.rules(CoolingRule.class)
                        .find("US-FSIS-B1")
                        .orElseThrow()
                        .citation()
                        .how())
                .isEqualTo(How.QUOTED);
    }

    @Test
    void citesAKnownSourceEverywhere() {
        Set<Source> cited = new HashSet<>();
        LIBRARY.rules(CoolingRule.class)
                .all()
                .forEach(rule -> cited.add(rule.citation().source()));
        LIBRARY.rules(HoldingRule.class)
                .all()
                .forEach(rule -> cited.add(rule.citation().source()));
        LIBRARY.rules(ReheatingRule.class)
                .all()
                .forEach(rule -> cited.add(rule.citation().source()));
        LIBRARY.rules(ThermalDeath.class)
                .all()
                .forEach(rule -> cited.add(rule.citation().source()));
        LIBRARY.rules(GrowthLimit.class)
                .all()
                .forEach(rule -> cited.add(rule.citation().source()));
        LIBRARY.rules(BathTime.class)
                .all()
                .forEach(rule -> cited.add(rule.citation().source()));
        LIBRARY.rules(BoilingPoint.class)
                .all()
                .forEach(rule -> cited.add(rule.citation().source()));
        LIBRARY.rules(HumidityOption.class)
                .all()
                .forEach(rule -> cited.add(rule.citation().source()));
        LIBRARY.rules(TimeLimit.class)
                .all()
                .forEach(rule -> cited.add(rule.citation().source()));
        LIBRARY.rules(ShelfLifeRule.class)
                .all()
                .forEach(rule -> cited.add(rule.citation().source()));
        Set<String> ids = new HashSet<>();
        for (String group : RuleLibrary.WRITTEN_GROUPS) {
            assertThat(LIBRARY.writtenRules(group)).isNotEmpty().allSatisfy(rule -> {
                cited.add(rule.citation().source());
                assertThat(ids.add(rule.id())).as("id %s is its own", rule.id()).isTrue();
                assertThat(rule.group()).isEqualTo(group);
            });
        }

        assertThat(LIBRARY.sources()).containsAll(cited);
    }

    /** IAPWS-IF97 region 4: 99.974 °C at 101.325 kPa, and lower the higher the place. */
    @Test
    void waterBoilsLowerTheThinnerTheAir() {
        List<BoilingPoint> points = LIBRARY.rules(BoilingPoint.class).all().stream()
                .sorted((a, b) -> Double.compare(a.kilopascals(), b.kilopascals()))
                .toList();
        assertThat(points).hasSizeGreaterThan(30);
        for (int i = 1; i < points.size(); i++) {
            // the printed table of feet and the derived one of metres agree within 0.17 °F
            assertThat(points.get(i).at().celsius())
                    .as(points.get(i).id())
                    .isGreaterThan(points.get(i - 1).at().celsius() - 0.1);
        }
        assertThat(LIBRARY.rules(WrittenRule.class)
                        .find("BPP-101.325KPA")
                        .orElseThrow()
                        .value())
                .hasValue(99.974);
    }

    @Test
    void refusesAnUnknownGroup() {
        assertThatIllegalArgumentException().isThrownBy(() -> LIBRARY.writtenRules("recipes"));
    }

    @Test
    void namesTheAuthorities() {
        assertThat(LIBRARY.profiles())
                .extracting(AuthorityProfile::id)
                .containsExactlyInAnyOrder(
                        "us-food-code-2022",
                        "us-fsis-2021",
                        "us-new-york",
                        "canada-cfia",
                        "canada-bc",
                        "uk-england-wales-ni",
                        "uk-scotland",
                        "ireland-fsai",
                        "australia",
                        "new-zealand",
                        "hong-kong-cfs",
                        "eu-hygiene",
                        "france",
                        "germany",
                        "netherlands",
                        "spain",
                        "denmark",
                        "japan",
                        "korea",
                        "south-africa",
                        "canada-ontario",
                        "canada-new-brunswick");
        assertThat(LIBRARY.profile("atlantis")).isEmpty();
    }

    @ParameterizedTest(name = "{0}: {1}, {2}: {3}")
    @CsvSource({
        // FDA Food Code 2017, 3-401.11: (B) whole roasts, (A)(2) tenderised and comminuted, (A)(3) poultry and wild
        // game
        "us-food-code-2022, beef, intact, us-food-code-roasts",
        "us-food-code-2022, pork, non-intact, us-food-code-a2",
        "us-food-code-2022, lamb, comminuted, us-food-code-a2",
        "us-food-code-2022, fish, intact, us-food-code-a1",
        "us-food-code-2022, fish, comminuted, us-food-code-a2",
        "us-food-code-2022, game, intact, us-food-code-a3",
        "us-food-code-2022, other-poultry, comminuted, us-food-code-a3",
        // FSIS Cooking Guideline 2021, pages 35 to 39
        "us-fsis-2021, veal, comminuted, fsis-2021-meat-6.5-log",
        "us-fsis-2021, chicken, intact, fsis-2021-chicken-7-log",
        "us-fsis-2021, turkey, comminuted, fsis-2021-turkey-7-log",
        "us-fsis-2021, other-poultry, intact, fsis-2021-other-poultry-7-log",
        "us-fsis-2021, game, intact, ",
        // pages 18 to 19: uncured patties must meet 9 CFR 318.23
        "us-fsis-2021, beef, patties, us-9-cfr-318.23-patties",
        // Food Code 2017, 3-401.11(A)(1) to (3): game under inspection, shellfish, eggs, stuffed food; 3-401.13 plants
        "us-food-code-2022, farmed-game, intact, us-food-code-a1",
        "us-food-code-2022, farmed-game, comminuted, us-food-code-a2",
        "us-food-code-2022, shellfish, intact, us-food-code-a1",
        "us-food-code-2022, egg-dish, intact, us-food-code-a2",
        "us-food-code-2022, plant-food, intact, us-food-code-plant-food",
        "us-food-code-2022, beef, patties, us-food-code-a2",
        "us-food-code-2022, beef, stuffed, us-food-code-a3",
        // CFIA Tables 1 and 2; turkey's own Table 3 was not read
        "canada-cfia, beef, intact, ca-cfia-table-1-6.5-log",
        "canada-cfia, chicken, intact, ca-cfia-table-2-poultry-7-log",
        "canada-cfia, turkey, intact, ",
        // Toronto Public Health: hamburgers by the ministry's tables, 112 min at 54.4 °C
        "canada-ontario, beef, patties, ca-cfia-table-1-6.5-log",
        // New Brunswick Regulation 2009-138
        "canada-new-brunswick, pork, intact, ca-nb-roasts",
        "canada-new-brunswick, pork, comminuted, ca-nb-ground",
        "canada-new-brunswick, chicken, intact, ca-nb-whole-poultry",
        // FSANZ fact sheet: poultry and mince; nothing for whole cuts
        "australia, chicken, intact, au-fsanz-75",
        "australia, beef, comminuted, au-fsanz-75",
        "australia, beef, intact, ",
        // Japan: one intact piece; pork and others by 63 °C for 30 min; poultry by the manual
        "japan, beef, intact, jp-specified-heated",
        "japan, pork, intact, jp-heated-63c-30min",
        "japan, chicken, intact, jp-75c-1min",
        "japan, shellfish, intact, jp-shellfish",
        // AESAN 2021
        "spain, fish, intact, es-aesan-fish",
        "spain, beef, stuffed, es-aesan-stuffed",
        "germany, egg-dish, intact, de-72c-2min",
        "france, beef, intact, ",
        // UK FSA for caterers; ACMSF 2007 for minced beef
        "uk-england-wales-ni, beef, comminuted, uk-acmsf-2007-burgers",
        "uk-england-wales-ni, beef, intact, uk-rounded",
        "uk-england-wales-ni, chicken, intact, uk-rounded",
    })
    void choosesTheTable(String profile, String species, String form, String table) {
        assertThat(LIBRARY.profile(profile)
                        .orElseThrow()
                        .lethalityFor(constant(Species.values(), species), constant(Form.values(), form))
                        .map(LethalityChoice::tables)
                        .orElse(List.of()))
                .extracting(LethalityTable::id)
                .isEqualTo(table == null ? List.of() : List.of(table));
    }

    private static <E extends Enum<E>> E constant(E[] constants, String word) {
        return Arrays.stream(constants)
                .filter(constant -> CsvRow.word(constant).equals(word))
                .findFirst()
                .orElseThrow();
    }

    /** Whoever is served nothing reads why. */
    @Test
    void saysWhatIsLeftToTheLocalAuthority() {
        for (AuthorityProfile profile : LIBRARY.profiles()) {
            assertThat(profile.left()).as(profile.id()).isNotEmpty();
            for (Species species : Species.values()) {
                boolean served = Arrays.stream(Form.values())
                        .anyMatch(form -> profile.lethalityFor(species, form).isPresent());
                String group = species.isPoultry() ? "poultry" : species.title();
                assertThat(served
                                || profile.left().stream().anyMatch(text -> text.toLowerCase(Locale.ROOT)
                                        .contains(group)))
                        .as("%s, %s", profile.id(), species)
                        .isTrue();
            }
        }
    }

    @Test
    void answersTheFoodCodesQuestions() {
        AuthorityProfile profile = LIBRARY.profile("us-food-code-2022").orElseThrow();

        assertThat(profile.units()).containsExactly(TemperatureUnit.FAHRENHEIT, TemperatureUnit.CELSIUS);
        assertThat(profile.paper()).isEqualTo(AuthorityProfile.Paper.LETTER);
        assertThat(profile.cooling()).extracting(CoolingRule::id).containsExactly("US-FDA-COOL-A");
        assertThat(profile.hotHold().orElseThrow().limit()).contains(F135);
        assertThat(profile.coldHold().orElseThrow().limit()).contains(F41);
        assertThat(profile.reheat().orElseThrow().id()).isEqualTo("US-FDA-REH-A");
        assertThat(profile.comeUp()).as("the code sets none").isEmpty();
        assertThat(profile.comeUpGuidance().orElseThrow().id()).isEqualTo("US-FSIS-CUT");
        assertThat(profile.lethality().get(0).margin())
                .extracting(ThermalDeath::id)
                .containsExactly("salmonella-meat");
        // 4-203.11: a food thermometer scaled in °C, or both, is good to 1 °C
        assertThat(profile.toleranceCelsius()).hasValue(1);
        assertThat(profile.checkEveryDays()).isEmpty();
    }

    /** FSIS Cooking Guideline 2021, Table 2: 112 min at 130 °F; z 10 °F. */
    @Test
    void drawsTheMeatLineThroughItsFirstRow() {
        ThermalDeath line =
                LIBRARY.rules(ThermalDeath.class).find("salmonella-meat").orElseThrow();

        assertThat(line.referenceCelsius()).isEqualTo(TemperatureUnit.FAHRENHEIT.toCelsius(130));
        assertThat(line.zCelsius()).isEqualTo(10 / 1.8);
        assertThat(112 / line.dMinutes()).isCloseTo(6.5, Offset.offset(0.001));
        assertThat(line.floorCelsius()).isEqualTo(TemperatureUnit.FAHRENHEIT.toCelsius(130));
        assertThat(line.capCelsius()).isEqualTo(TemperatureUnit.FAHRENHEIT.toCelsius(160));
    }

    /** Chilled Food Association 2006: z 9 °C to 90 °C and 10 °C from there give every printed row, rounded. */
    @ParameterizedTest
    @CsvSource({
        "80, 129, 0.5",
        "85, 36, 0.5",
        "88, 17, 0.5",
        "90, 10, 0.5",
        "91, 7.9, 0.05",
        "95, 3.2, 0.05",
        "100, 1, 0.05"
    })
    void drawsTheSporeLinesThroughTheirRows(double celsius, double minutes, double rounding) {
        ThermalDeath line = LIBRARY.rules(ThermalDeath.class)
                .find(celsius <= 90 ? "botulinum-below-90c" : "botulinum-from-90c")
                .orElseThrow();

        double needed = 6 * line.dMinutes() * Math.pow(10, (line.referenceCelsius() - celsius) / line.zCelsius());

        assertThat(needed).isCloseTo(minutes, Offset.offset(rounding));
    }

    /** A figure seen in another text only says where, and every output that cites it says that it is unconfirmed. */
    @Test
    void whatWasSeenElsewhereSaysWhere() {
        List<Citation> quoted = LIBRARY.rules().stream()
                .flatMap(set -> set.all().stream())
                .map(Rule::citation)
                .filter(citation -> citation.how() == How.QUOTED)
                .toList();

        assertThat(quoted).hasSizeGreaterThan(40).allSatisfy(citation -> {
            assertThat(citation.text()).endsWith("(quoted in another text, unconfirmed)");
            assertThat(citation.note()).containsAnyOf("Seen", "seen", "Five secondary", "Older advice", "summary");
        });
    }

    /** No rule rests on memory but these kinds of them: a change of the tables shows here. */
    @Test
    void saysHowManyRulesRestOnMemory() {
        Map<String, Long> recalled = LIBRARY.rules().stream()
                .collect(Collectors.toMap(RuleSet::title, set -> set.all().stream()
                        .filter(rule -> rule.citation().how() == How.MEMORY)
                        .count()));

        recalled.values().removeIf(count -> count == 0);
        assertThat(recalled)
                .isEqualTo(Map.ofEntries(
                        Map.entry("Lethality tables", 2L),
                        Map.entry("Cooling", 8L),
                        Map.entry("Holding and come-up", 4L),
                        Map.entry("Reheating", 1L),
                        Map.entry("Time as a control", 1L),
                        Map.entry("Shelf life", 1L),
                        Map.entry("Rules that are words first", 17L),
                        Map.entry("Growth limits", 51L),
                        Map.entry("Lag before growth", 4L),
                        Map.entry("Measured death times", 5L)));
    }

    /** Every condition food passes through has a rule, or the profile says in words that it has none. */
    @Test
    void everyConditionHasARuleOrASentence() {
        for (AuthorityProfile profile : LIBRARY.profiles()) {
            String left = String.join(" ", profile.left()).toLowerCase(Locale.ROOT);
            answeredOrSaid(profile, "come-up", profile.comeUp().isPresent(), left);
            answeredOrSaid(profile, "hot holding", profile.hotHold().isPresent(), left);
            answeredOrSaid(profile, "cooling", !profile.cooling().isEmpty(), left);
            answeredOrSaid(profile, "cold holding", profile.coldHold().isPresent(), left);
            answeredOrSaid(profile, "days", !profile.shelfLives().isEmpty(), left);
            answeredOrSaid(profile, "reheating", profile.reheat().isPresent(), left);
        }
    }

    private static void answeredOrSaid(AuthorityProfile profile, String condition, boolean answered, String left) {
        assertThat(answered || left.contains(condition))
                .as("%s: %s", profile.id(), condition)
                .isTrue();
    }

    /** A profile may build on another one: what it does not answer itself, the other answers. */
    @Test
    void buildsOnItsBase() {
        AuthorityProfile union = LIBRARY.profile("eu-hygiene").orElseThrow();
        AuthorityProfile spain = LIBRARY.profile("spain").orElseThrow();
        AuthorityProfile germany = LIBRARY.profile("germany").orElseThrow();

        assertThat(germany.parasites()).isEqualTo(union.parasites()).isPresent();
        assertThat(germany.records()).isEqualTo(union.records()).isNotEmpty();
        assertThat(spain.parasites().orElseThrow().id()).isEqualTo("ES-ANISAKIS");
        assertThat(spain.cooling()).extracting(CoolingRule::id).containsExactly("ES-RD1086-COOL");
        assertThat(union.lethality()).isEmpty();
    }
}
