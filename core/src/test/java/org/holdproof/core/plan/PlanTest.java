package org.holdproof.core.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.holdproof.core.batch.Product.Form;
import org.holdproof.core.batch.Product.Shape;
import org.holdproof.core.batch.Product.Species;
import org.holdproof.core.heat.smoke.Arrival;
import org.holdproof.core.plan.Pasteurization.RowTime;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.verdict.Caution;
import org.holdproof.core.verdict.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Laws of planning; the cooks are invented, the rules are the tables'. Seeds in the names. */
class PlanTest {
    private static final double F_144 = TemperatureUnit.FAHRENHEIT.toCelsius(144);

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 25);
    }

    private static PlannedCook drawn(SplittableRandom random) {
        Shape[] shapes = Shape.values();
        return PlannedCooks.cook(
                Species.BEEF,
                shapes[random.nextInt(shapes.length)],
                8 + 50 * random.nextDouble(),
                57 + 20 * random.nextDouble(),
                PlannedCooks.authority("us-food-code-2022"));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void aRowIsMetNoSoonerThanItsTimeAfterTheCoreGetsThere(long seed) {
        BathPlan plan = PlannedCooks.plan(drawn(new SplittableRandom(seed)));

        for (RowTime time : plan.rows()) {
            boolean withinReach = time.row().at().celsius() < plan.cook().bathCelsius() - 0.05;
            assertThat(time.metMinute().isPresent())
                    .isEqualTo(time.reachedMinute().isPresent());
            if (withinReach) {
                assertThat(time.metMinute()).isPresent();
            }
            if (time.row().at().celsius() > plan.cook().bathCelsius()) {
                assertThat(time.metMinute()).isEmpty();
            }
            if (time.metMinute().isPresent()) {
                assertThat(time.metMinute().getAsDouble())
                        .isCloseTo(
                                time.reachedMinute().getAsDouble() + time.row().seconds() / 60, within(1e-9));
                assertThat(plan.safeMinute())
                        .isLessThanOrEqualTo(time.metMinute().getAsDouble());
            }
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void thickerIsLaterHotterIsSoonerAndColderFromTheFridgeIsLater(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        PlannedCook cook = drawn(random);
        double thicker = cook.thicknessMillimetres() + 1 + 10 * random.nextDouble();
        double hotter = cook.bathCelsius() + 0.2 + 5 * random.nextDouble();
        BathPlan plan = PlannedCooks.plan(cook);

        BathPlan thick = PlannedCooks.plan(cook.with(thicker, cook.bathCelsius()));
        BathPlan hot = PlannedCooks.plan(cook.with(cook.thicknessMillimetres(), hotter));
        assertThat(thick.safeMinute()).isGreaterThan(plan.safeMinute());
        assertThat(thick.coveringMinute()).isGreaterThan(plan.coveringMinute());
        assertThat(hot.safeMinute()).isLessThan(plan.safeMinute());
        assertThat(hot.coveringMinute()).isLessThan(plan.coveringMinute());
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theCoveringTimeCoversEveryChange(long seed) {
        BathPlan plan = PlannedCooks.plan(drawn(new SplittableRandom(seed)));

        assertThat(plan.variations())
                .extracting(BathPlan.Variation::change)
                .containsExactlyElementsOf(
                        List.of(BathPlan.Change.values()).subList(2, BathPlan.Change.values().length));
        for (BathPlan.Variation variation : plan.variations()) {
            double minute = variation.safeMinute().orElseThrow();
            assertThat(minute).as(variation.change().title()).isLessThanOrEqualTo(plan.coveringMinute());
            boolean quicker =
                    variation.change() == BathPlan.Change.THINNER || variation.change() == BathPlan.Change.FASTER;
            assertThat(Math.signum(minute - plan.safeMinute())).isEqualTo(quicker ? -1.0 : 1.0);
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void aTableCellIsThePlanOfThatCook(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        PlannedCook cook = drawn(random);
        Boundary bath = new Boundary(50 + random.nextInt(30), TemperatureUnit.CELSIUS);
        double thickness = 5 + 150 * random.nextDouble();
        PlanTable table = PlanTable.of(cook, PlannedCooks.heat(cook), List.of(thickness), List.of(bath));

        Plan plan = Plan.of(cook.with(thickness, bath.celsius()), PlannedCooks.heat(cook), RuleLibrary.builtIn());
        if (plan instanceof BathPlan planned) {
            assertThat(table.minutes(0, 0).orElseThrow()).isCloseTo(planned.coveringMinute(), within(1e-6));
        } else {
            assertThat(table.minutes(0, 0)).isEmpty();
        }
    }

    @Test
    void theUsualTableBeginsWhereAPlanIsPossible() {
        PlannedCook cook = PlannedCooks.roast(50, 60);
        List<Boundary> baths = PlanTable.usualBaths(cook);
        PlanTable table = PlanTable.of(cook, PlannedCooks.heat(cook), PlanTable.usualThicknesses(), baths);

        // 130 °F + 1 °C = 131.8 °F
        assertThat(baths.get(0).text()).isEqualTo("132 °F");
        assertThat(table.minutes(0, 0)).isPresent();
        for (int row = 0; row < table.thicknessesMillimetres().size(); row++) {
            for (int column = 1; column < baths.size(); column++) {
                if (table.minutes(row, column - 1).isPresent()) {
                    assertThat(table.minutes(row, column).orElseThrow())
                            .isLessThan(table.minutes(row, column - 1).orElseThrow());
                }
            }
        }
    }

    /** 12 min at 140 °F, Food Code 3-401.11(B)(2); 144 °F asks 5 min but a bath at 144 °F never brings a core to it. */
    @Test
    void aBathAtARowsOwnTemperatureIsJudgedByTheRowsBelow() {
        BathPlan plan = PlannedCooks.plan(PlannedCooks.roast(65, F_144));

        assertThat(plan.rows().stream()
                        .filter(time -> time.row().at().text().equals("144 °F"))
                        .findFirst()
                        .orElseThrow()
                        .metMinute())
                .isEmpty();
        assertThat(plan.firstRow().orElseThrow().row().at().celsius()).isLessThan(F_144);
        assertThat(plan.coveringMinute()).isGreaterThan(plan.safeMinute());
        assertThat(plan.outMinute()).isEqualTo(plan.coveringMinute());
    }

    /** US FSIS Cooking Guideline 2021: no row below 130 °F. */
    @ParameterizedTest
    @CsvSource({"us-food-code-2022, 48", "us-fsis-2021, 50", "us-food-code-2022, 54.4", "uk-england-wales-ni, 58"})
    void aBathBelowTheLowestRowIsNoPlanAndSaysWhy(String authority, double bath) {
        PlannedCook cook = PlannedCooks.cook(Species.BEEF, Shape.ROAST, 50, bath, PlannedCooks.authority(authority));

        Plan plan = Plan.of(cook, PlannedCooks.heat(cook), RuleLibrary.builtIn());

        assertThat(plan).isInstanceOf(NoPlan.class);
        assertThat(((NoPlan) plan).reason()).contains("never reaches", "A longer time does not make up for it");
        assertThat(((NoPlan) plan).remedy()).startsWith("Set the bath to at least ");
        // C. perfringens to 52 °C: FDA Bad Bug Book
        assertThat(((NoPlan) plan).reason().contains("C. perfringens grows up to"))
                .isEqualTo(bath <= 52);
    }

    @ParameterizedTest
    @CsvSource({"us-food-code-2022", "us-fsis-2021", "uk-england-wales-ni", "uk-scotland", "us-new-york"})
    void theRemedyIsAPlan(String authority) {
        PlannedCook low = PlannedCooks.cook(Species.BEEF, Shape.SLAB, 15, 50, PlannedCooks.authority(authority));
        NoPlan refused = (NoPlan) Plan.of(low, PlannedCooks.heat(low), RuleLibrary.builtIn());
        TemperatureUnit unit = low.authority().units().get(0);
        String figure = refused.remedy().replaceAll("^Set the bath to at least ([0-9]+) .*$", "$1");

        Plan remedied = Plan.of(
                low.with(15, unit.toCelsius(Double.parseDouble(figure))),
                PlannedCooks.heat(low),
                RuleLibrary.builtIn());

        assertThat(remedied).isInstanceOf(BathPlan.class);
    }

    @Test
    void aBathThatWouldMissTheRowBySaggingIsNoPlan() {
        PlannedCook cook = PlannedCooks.roast(40, TemperatureUnit.FAHRENHEIT.toCelsius(130.5));
        NoPlan plan = (NoPlan) Plan.of(cook, PlannedCooks.heat(cook), RuleLibrary.builtIn());

        assertThat(plan.reason()).contains("too near 130 °F", "0.9 °F");
        assertThat(plan.remedy()).startsWith("Set the bath to at least 132 °F");
    }

    /** FSIS Cooking Guideline 2021, page 24: at most 6 h between 50 and 130 °F. */
    @Test
    void aPieceThatComesUpTooSlowlyIsNoPlan() {
        PlannedCook cook =
                PlannedCooks.cook(Species.BEEF, Shape.SLAB, 150, 57, PlannedCooks.authority("us-food-code-2022"));
        NoPlan plan = (NoPlan) Plan.of(cook, PlannedCooks.heat(cook), RuleLibrary.builtIn());

        assertThat(plan.reason()).contains("between 50 °F", "at most 6 h");
    }

    @Test
    void noPlanWhereTheAuthorityNamesNothing() {
        PlannedCook cook = PlannedCooks.cook(Species.BEEF, Shape.SLAB, 30, 60, PlannedCooks.authority("canada-bc"));

        assertThat(((NoPlan) Plan.of(cook, PlannedCooks.heat(cook), RuleLibrary.builtIn())).reason())
                .contains("names no time and temperature for intact beef");
    }

    @Test
    void tooShortATimeInTheBathIsNoPlanAndALongOneIsKept() {
        PlannedCook cook = PlannedCooks.roast(50, 60);
        double covering = PlannedCooks.plan(cook).coveringMinute();

        assertThat(Plan.of(PlannedCooks.inBath(cook, covering - 1), PlannedCooks.heat(cook), RuleLibrary.builtIn()))
                .isInstanceOf(NoPlan.class);
        BathPlan day = PlannedCooks.plan(PlannedCooks.inBath(cook, 24 * 60));
        assertThat(day.outMinute()).isEqualTo(24 * 60);
        Instant serve = Instant.parse("2031-05-01T18:00:00Z");
        assertThat(day.startBy(serve)).isEqualTo("2031-04-30T18:00:00Z");
    }

    /** At worst a smoked surface stays wet for ever: that still shortens the bath, and never as much as dry air would. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void smokeShortensTheBathByWhatAWetSurfaceLetsIn(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        PlannedCook cook = PlannedCooks.roast(40 + 60 * random.nextDouble(), 64 + 6 * random.nextDouble());
        double hours = 1 + 3 * random.nextDouble();
        PlannedCook smoking = PlannedCooks.smoked(cook, 95 + 30 * random.nextDouble(), 60 * hours);
        CookSimulation simulation = new CookSimulation(smoking, PlannedCooks.heat(smoking));
        CoreCurve unheated = new CookSimulation(cook, PlannedCooks.heat(cook)).slowest();
        Pasteurization rule = Pasteurization.of(cook.authority(), cook.species(), cook.form(), cook.fatPercent())
                .orElseThrow();

        double worst = rule.safeMinute(simulation.slowest()).orElseThrow();
        double slow = rule.safeMinute(simulation.smokedAt(-1)).orElseThrow();
        double likely = rule.safeMinute(simulation.asPlanned()).orElseThrow();
        double fast = rule.safeMinute(simulation.smokedAt(1)).orElseThrow();

        assertThat(fast).isLessThanOrEqualTo(likely + 0.1);
        assertThat(likely).isLessThanOrEqualTo(slow + 0.1);
        assertThat(slow).isLessThan(worst);
        // 8 mm: a smoked piece may be a tenth thicker, a bathed one 5 mm
        assertThat(worst)
                .isLessThan(60 * hours
                        + rule.safeMinute(new CookSimulation(
                                                cook.with(cook.thicknessMillimetres() + 8, cook.bathCelsius()),
                                                PlannedCooks.heat(cook))
                                        .slowest())
                                .orElseThrow());
        assertThat(rule.safeMinute(unheated)).isPresent();
    }

    /** 100 mm at 114 °C: common practice, no source, says about 8 h to 160 °F. */
    @Test
    void aSmokedBrisketComesTo160FahrenheitInAboutEightHours() {
        PlannedCook brisket = PlannedCooks.smoked(PlannedCooks.roast(100, 68.3), 114, 480);
        BathPlan plan = PlannedCooks.plan(brisket);
        SmokedCore smoked = plan.smoked().orElseThrow();
        Arrival arrival = smoked.coreReaches(71.1);

        assertThat(arrival.likely().orElseThrow() / 60).isCloseTo(8.4, within(0.3));
        assertThat(arrival.earliest().orElseThrow() / 60).isCloseTo(5.6, within(0.3));
        assertThat(arrival.latest().orElseThrow() / 60).isCloseTo(13.4, within(0.3));
        assertThat(smoked.coreCelsius().worst()).isLessThan(smoked.slowCelsius());
        assertThat(smoked.slowCelsius()).isLessThan(smoked.coreCelsius().nominal());
        assertThat(smoked.coreCelsius().nominal()).isCloseTo(70, within(2.0));
        assertThat(smoked.evaporatedPercent().nominal()).isBetween(10.0, 25.0);
        assertThat(plan.cautions()).extracting(Caution::id).contains("smoke");
    }

    @Test
    void aWetBulbReadingMovesTheSmokeAndAnImpossibleOneIsRefused() {
        PlannedCook cook = PlannedCooks.roast(80, 68);
        SmokeStep step = new SmokeStep(110, 240);
        SmokedCore dry = PlannedCooks.plan(PlannedCooks.smoked(cook, step.withWetBulb(40)))
                .smoked()
                .orElseThrow();
        SmokedCore humid = PlannedCooks.plan(PlannedCooks.smoked(cook, step.withWetBulb(65)))
                .smoked()
                .orElseThrow();

        assertThat(humid.coreCelsius().nominal())
                .isGreaterThan(dry.coreCelsius().nominal() + 3);
        // the bound trusts no reading
        assertThat(humid.coreCelsius().worst()).isEqualTo(dry.coreCelsius().worst());
        assertThatThrownBy(() -> step.withWetBulb(20)).hasMessageContaining("the wet bulb is 20 °C; expected");
        assertThatThrownBy(() -> step.withWetBulb(111)).isInstanceOf(UnplannableException.class);
    }

    @Test
    void aLongSmokeLeavesTheComeUpUnprovenAndSaysWhichEndKeepsIt() {
        BathPlan smoked = PlannedCooks.plan(PlannedCooks.smoked(PlannedCooks.roast(65, F_144), 110, 360));

        assertThat(smoked.ranges().get(0).verdict()).isEqualTo(Verdict.NOT_PROVEN);
        assertThat(smoked.ranges().get(0).isKeptAsPlanned()).isTrue();
        assertThat(smoked.isSoundToServing()).isTrue();
        assertThat(smoked.cautions()).extracting(Caution::id).contains("range-at-worst");
    }

    /** What is not said is reckoned at its slow end: a slab, the fattest cut held (brisket, 0.91e-7 m²/s in series). */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void sayingMoreNeverMakesTheCoveringTimeLonger(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        PlannedCook said = PlannedCooks.fat(drawn(random), 26 * random.nextDouble());
        PlannedCook noFat = PlannedCooks.withoutFat(said);
        PlannedCook noShape = PlannedCooks.withoutShape(said);
        double covering = covering(said);

        assertThat(covering(noFat)).isGreaterThanOrEqualTo(covering - 1e-6);
        assertThat(covering(noShape)).isGreaterThanOrEqualTo(covering - 1e-6);
        assertThat(PlannedCooks.heat(noFat).slowDiffusivity()).isLessThanOrEqualTo(0.91e-7 + 1e-12);
    }

    /** Without a limit on the come-up in the way. */
    private static double covering(PlannedCook cook) {
        return Pasteurization.of(cook.authority(), cook.species(), cook.form(), cook.fatPercent())
                .orElseThrow()
                .safeMinute(new CookSimulation(cook, PlannedCooks.heat(cook)).slowest())
                .orElseThrow();
    }

    @Test
    void aPlanWhoseChillIsNotKeptIsNotSound() {
        BathPlan ice = PlannedCooks.plan(PlannedCooks.roast(50, 60));
        BathPlan water = PlannedCooks.plan(PlannedCooks.chilledIn(PlannedCooks.roast(50, 60), ChillMedium.STILL_WATER));

        assertThat(ice.isSound()).isTrue();
        assertThat(water.isSound()).isFalse();
        assertThat(water.isSoundToServing()).isTrue();
    }

    @Test
    void aCellWhoseComeUpIsNotKeptAtWorstIsMarked() {
        PlannedCook cook = PlannedCooks.roast(50, 60);
        PlanTable table =
                PlanTable.of(cook, PlannedCooks.heat(cook), PlanTable.usualThicknesses(), PlanTable.usualBaths(cook));

        int marked = 0;
        for (int row = 0; row < table.thicknessesMillimetres().size(); row++) {
            for (int column = 0; column < table.baths().size(); column++) {
                Plan plan = Plan.of(
                        cook.with(
                                table.thicknessesMillimetres().get(row),
                                table.baths().get(column).celsius()),
                        PlannedCooks.heat(cook),
                        RuleLibrary.builtIn());
                boolean unproven = plan instanceof BathPlan bath
                        && bath.ranges().stream().anyMatch(range -> range.verdict() != Verdict.MET);
                assertThat(table.isComeUpUnproven(row, column)).isEqualTo(unproven);
                assertThat(table.text(row, column).endsWith(PlanTable.UNPROVEN)).isEqualTo(unproven);
                marked += unproven ? 1 : 0;
            }
        }
        assertThat(marked).isPositive();
        assertThat(table.hasComeUpUnproven()).isTrue();
    }

    @Test
    void aWarmStartLeavesTheComeUpUnproven() {
        PlannedCook cook = PlannedCooks.roast(40, 60);
        PlannedCook warm = new PlannedCook(
                cook.species(),
                cook.form(),
                cook.fatPercent(),
                cook.shape(),
                40,
                20,
                Optional.empty(),
                60,
                OptionalDouble.empty(),
                cook.authority(),
                cook.chill());

        BathPlan plan = PlannedCooks.plan(warm);

        assertThat(plan.ranges().get(0).verdict()).isEqualTo(Verdict.NOT_PROVEN);
        assertThat(plan.isSoundToServing()).isFalse();
        assertThat(plan.cautions()).extracting(Caution::id).contains("warm-start");
    }

    /** New South Wales, 2012: at most 6 h below 54.5 °C in all, so that time below 10 °C counts as well. */
    @Test
    void theNewSouthWalesLimitIsReckonedToo() {
        PlannedCook cook = PlannedCooks.cook(Species.CHICKEN, Shape.ROAST, 50, 78, PlannedCooks.authority("australia"));

        BathPlan plan = PlannedCooks.plan(cook);

        assertThat(plan.ranges()).hasSize(2);
        assertThat(plan.ranges().get(1).rule().id()).isEqualTo("AU-NSW-CUT");
        assertThat(plan.ranges().get(1).minutes().nominal())
                .isGreaterThan(plan.ranges().get(0).minutes().nominal());
    }

    /**
     * The study behind the tables: ice slush takes 50 mm of a 2:3:5 body from 60 to 21 °C in 48 min and to 5 °C in 102 at
     * 1.25e-7 m²/s; still tap water at 15 °C never gets there.
     */
    @Test
    void iceKeepsTheScheduleAndStillTapWaterNeverDoes() {
        BathPlan ice = PlannedCooks.plan(PlannedCooks.roast(50, 60));
        BathPlan water = PlannedCooks.plan(PlannedCooks.chilledIn(PlannedCooks.roast(50, 60), ChillMedium.STILL_WATER));

        assertThat(ice.chill().verdict()).contains(Verdict.MET);
        assertThat(ice.chill().stages()).hasSize(2);
        assertThat(ice.chill().core().fallsTo(21).orElseThrow()).isCloseTo(48 * 1.25 / 1.11, within(5.0));
        assertThat(ice.chill().core().fallsTo(5).orElseThrow()).isCloseTo(102 * 1.25 / 1.11, within(10.0));
        assertThat(water.chill().verdict()).contains(Verdict.NOT_MET);
        assertThat(water.chill().toFridge()).isEmpty();
        assertThat(water.chill().stages().get(1).minutes().nominal()).isInfinite();
    }

    /** 0.61 kg of ice a kilogram of meat from 60 to 2 °C at 3.5 kJ/(kg K): computed in the study. */
    @Test
    void iceThatMeltsIsAHeatBalance() {
        assertThat(ChillPlan.iceMelted(60, 2)).isCloseTo(0.61, within(0.005));
    }

    @Test
    void anAuthorityWithoutAScheduleLeavesTheChillUnjudged() {
        BathPlan plan = PlannedCooks.plan(
                PlannedCooks.cook(Species.BEEF, Shape.ROAST, 40, 78, PlannedCooks.authority("hong-kong-cfs")));

        assertThat(plan.chill().verdict()).isEmpty();
        assertThat(plan.chill().toFridge()).isPresent();
    }

    @Test
    void unreckonableCooksAreRefusedWithTheReason() {
        assertThatThrownBy(() -> with(-18, 60, 50))
                .hasMessageContaining("frozen or nearly so")
                .hasMessageContaining("thaw it");
        assertThatThrownBy(() -> with(-1.01, 60, 50)).isInstanceOf(UnplannableException.class);
        assertThat(with(-1, 60, 50).startCelsius()).isEqualTo(-1);
        assertThatThrownBy(() -> with(61, 70, 50)).hasMessage("the start temperature is 61 °C; expected -1 to 60 °C");
        assertThatThrownBy(() -> with(30, 30, 50)).hasMessageContaining("no colder than the bath");
        assertThatThrownBy(() -> with(5, 101, 50)).hasMessage("the bath is 101 °C; expected 20 to 100 °C");
        assertThatThrownBy(() -> with(5, 60, 2)).hasMessage("the thickness is 2 mm; expected 3 to 300 mm");
        assertThatThrownBy(() -> with(5, 60, Double.NaN)).isInstanceOf(UnplannableException.class);
        assertThatThrownBy(() -> with(Double.NaN, 60, 50)).isInstanceOf(UnplannableException.class);
        assertThatThrownBy(() -> new SmokeStep(250, 60)).hasMessageContaining("expected 20 to 180 °C");
        assertThatThrownBy(() -> new SmokeStep(110, 0)).hasMessageContaining("more than none and at most 48 h");
        assertThatThrownBy(() -> PlannedCooks.inBath(with(5, 60, 50), 8 * 24 * 60))
                .hasMessageContaining("at most 7 d");
        PlannedCook smoked = PlannedCooks.smoked(with(5, 60, 50), 110, 60);
        assertThatThrownBy(() ->
                        PlanTable.of(smoked, PlannedCooks.heat(smoked), List.of(20.0), PlanTable.usualBaths(smoked)))
                .hasMessageContaining("leave out the smoke");
    }

    private static PlannedCook with(double start, double bath, double thickness) {
        return new PlannedCook(
                Species.PORK,
                Form.INTACT,
                OptionalDouble.of(12),
                Optional.of(Shape.SLAB),
                thickness,
                start,
                Optional.empty(),
                bath,
                OptionalDouble.empty(),
                PlannedCooks.authority("us-fsis-2021"),
                ChillMedium.ICE_SLUSH);
    }

    /**
     * Measured ranges: beef 1.05 to 1.52, pork to 1.83, chicken 1.08 to 1.42, fish to 1.82e-7 m²/s (a review's, from
     * memory); fatty brisket in series 0.91e-7 at 5 °C (Choi and Okos 1986, computed in the study).
     */
    @Test
    void diffusivitiesAreThePublishedOnes() {
        HeatFigures beef = HeatFigures.published(Species.BEEF, OptionalDouble.empty());
        assertThat(beef.diffusivity()).isCloseTo(1.11e-7, within(1e-12));
        // unsaid fat: brisket, 26.5 % fat, Choi and Okos in series
        assertThat(beef.slowDiffusivity()).isCloseTo(0.91e-7, within(1e-12));
        // measured values, the slowest 1.05e-7; lean beef in series is slower still
        assertThat(HeatFigures.published(Species.BEEF, OptionalDouble.of(2)).slowDiffusivity())
                .isBetween(1.0e-7, 1.05e-7);
        assertThat(beef.fastDiffusivity()).isCloseTo(1.83e-7, within(1e-12));
        HeatFigures chicken = HeatFigures.published(Species.CHICKEN, OptionalDouble.empty());
        assertThat(chicken.diffusivity()).isCloseTo(1.08e-7, within(1e-12));
        assertThat(chicken.fastDiffusivity()).isCloseTo(1.42e-7, within(1e-12));
        HeatFigures fish = HeatFigures.published(Species.FISH, OptionalDouble.empty());
        assertThat(fish.diffusivity()).isCloseTo(0.995e-7, within(1e-12));
        assertThat(fish.fastDiffusivity()).isCloseTo(1.82e-7, within(1e-12));
        HeatFigures brisket = HeatFigures.published(Species.BEEF, OptionalDouble.of(26.5));
        assertThat(brisket.slowDiffusivity()).isCloseTo(0.91e-7, within(0.01e-7));
        assertThat(brisket.diffusivity()).isEqualTo(beef.diffusivity());
    }
}
