package org.holdproof.core.lesson;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.LongStream;
import org.holdproof.core.kinetics.SlowestDeath;
import org.holdproof.core.log.Trace;
import org.holdproof.core.rules.GrowthModel;
import org.holdproof.core.rules.HoldingRule;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.rules.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

class LessonTest {
    private static final RuleLibrary LIBRARY = RuleLibrary.builtIn();
    private static final Lesson USUAL =
            Lesson.of(new LessonSetup(Cut.BEEF, 70, LessonSetup.bathsBetween(46, 62)), LIBRARY);

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 12);
    }

    private static Lesson random(long seed) {
        Random random = new Random(seed);
        List<Cut> cuts = List.of(Cut.values());
        Cut cut = cuts.get(random.nextInt(cuts.size()));
        double millimetres = 10 + 140 * random.nextDouble();
        double low = 40 + 10 * random.nextDouble();
        List<Double> baths = LessonSetup.bathsBetween(low, low + 3 + 12 * random.nextDouble());
        return Lesson.of(new LessonSetup(cut, millimetres, baths), LIBRARY);
    }

    /** Nothing dies below the floor of death, nothing grows at or above the highest temperature of growth. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void countsRiseOnlyWhereCellsGrowAndFallOnlyWhereTheyDie(long seed) {
        for (LessonBath bath : random(seed).baths()) {
            for (CountCourse course : bath.courses()) {
                double floor = course.organism().equals(CountCourse.PERFRINGENS)
                        ? SlowestDeath.perfringensCells(LIBRARY).floorCelsius()
                        : SlowestDeath.vegetative(LIBRARY).floorCelsius();
                double max = course.models().stream()
                        .mapToDouble(GrowthModel::maxCelsius)
                        .max()
                        .orElseThrow();
                for (int i = 1; i < course.size(); i++) {
                    double hottest =
                            Math.max(bath.core().celsius(i - 1), bath.core().celsius(i));
                    double coldest =
                            Math.min(bath.core().celsius(i - 1), bath.core().celsius(i));
                    if (hottest < floor) {
                        assertThat(course.high(i)).isGreaterThanOrEqualTo(course.high(i - 1));
                        assertThat(course.low(i)).isGreaterThanOrEqualTo(course.low(i - 1));
                    }
                    if (coldest >= max) {
                        assertThat(course.high(i)).isLessThanOrEqualTo(course.high(i - 1));
                        assertThat(course.low(i)).isLessThanOrEqualTo(course.low(i - 1));
                    }
                }
            }
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void withLagIsNeverMoreThanWithoutAndThePeakNeverLess(long seed) {
        for (LessonBath bath : random(seed).baths()) {
            for (CountCourse course : bath.courses()) {
                for (int i = 0; i < course.size(); i++) {
                    assertThat(course.low(i)).isLessThanOrEqualTo(course.high(i) + 1e-9);
                    assertThat(course.high(i)).isLessThanOrEqualTo(course.peakHigh() + 1e-9);
                }
                assertThat(course.peakLow()).isLessThanOrEqualTo(course.peakHigh() + 1e-9);
            }
        }
    }

    /** Independent of the spell search: the core rises throughout, so a row is met its time after the core reaches it. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void aRowIsMetItsTimeAfterTheCoreReachesItAndNoneIsMetBelowTheLowest(long seed) {
        Lesson lesson = random(seed);
        double before = Double.POSITIVE_INFINITY;
        for (LessonBath bath : lesson.baths()) {
            if (bath.celsius() < lesson.rows().get(0).at().celsius()) {
                assertThat(bath.rowMet()).isEmpty();
            }
            double first = Double.POSITIVE_INFINITY;
            for (LethalityRow row : lesson.rows()) {
                for (int i = 0; i < bath.core().size(); i++) {
                    if (bath.core().celsius(i) >= row.at().celsius()) {
                        double reached = (bath.core().millis(i) - bath.core().firstMillis()) / 60_000.0;
                        first = Math.min(first, reached + row.seconds() / 60);
                        break;
                    }
                }
            }
            double reading = bath.core().minutesAfter(0);
            if (bath.rowMet().isPresent()) {
                assertThat(bath.rowMet().get().minutes()).isBetween(first - reading, first);
                assertThat(bath.rowMet().get().minutes()).isLessThanOrEqualTo(before);
                before = bath.rowMet().get().minutes();
            }
        }
    }

    /**
     * Death alone is the closed form t/D. D at 60 °C: 8.7 min (Danish Meat Research Institute, 20 Aug 2014), 11.5 min for
     * cells of C. perfringens (138 min for 12 logs, Smith and others 1981).
     */
    @ParameterizedTest(name = "{0}: D at 60 °C {1} min")
    @CsvSource({"Salmonella, 8.7", "S. aureus, 8.7", "C. perfringens, 11.5"})
    void deathAloneIsTheClosedForm(String organism, double dMinutes) {
        Trace held = new Trace("core", new long[] {0, 600_000, 1_800_000}, new double[] {60, 60, 60});
        CountCourse course = CountCourse.along(held, LIBRARY, "beef").stream()
                .filter(found -> found.organism().equals(organism))
                .findFirst()
                .orElseThrow();

        assertThat(course.endHigh()).isCloseTo(-30 / dMinutes, within(1e-9));
        assertThat(course.high(1)).isCloseTo(-10 / dMinutes, within(1e-9));
        assertThat(course.peakHigh()).isZero();
    }

    /** 50 °C (ICMSF and USDA sheets), 51.5 and 53.4 °C (chicken and beef, fitted), 52 °C (FDA 1992). */
    @Test
    void theBandIsWhatTheSourcesSpan() {
        assertThat(USUAL.stops().stream().map(GrowthStop::celsius)).containsExactly(50.0, 51.5, 52.0, 53.4);
        assertThat(USUAL.bandText()).isEqualTo("50 to 53.4 °C");
    }

    /** FSIS Cooking Guideline 2021, Revised Appendix A: table 2 begins at 130 °F for 112 min, table 3 at 136 °F. */
    @Test
    void theLowestRowIsThePublishedOne() {
        assertThat(USUAL.rows().get(0).at().text()).isEqualTo("130 °F");
        assertThat(USUAL.rows().get(0).printedTime()).isEqualTo("112 min");
        assertThat(USUAL.publishedRow().title()).isEqualTo("No row below 130 °F (54.4 °C)");
        Lesson chicken = Lesson.of(new LessonSetup(Cut.CHICKEN, 60, List.of(50.0, 55.0, 60.0)), LIBRARY);
        assertThat(chicken.rows().get(0).at().text()).isEqualTo("136 °F");
        assertThat(chicken.targetLog10()).isEqualTo(7);
    }

    /** The rows are those of FSIS 2021, table 2: 112 min at 130 °F, 12 min at 140 °F, for 6.5 logs. */
    @Test
    void theWorkedLineCanBeRedoneByHand() {
        HandCalculation worked = USUAL.calculation();

        assertThat(worked.steps(List.of(52.0, 56.0, 58.0, 60.0, 62.0)))
                .containsExactly(
                        "D at 130 °F (54.4 °C) = 112 min ÷ 6.5 = 17.2 min."
                                + " D at 140 °F (60 °C) = 12 min ÷ 6.5 = 1.85 min.",
                        "z = (60 − 54.4) ÷ log(17.2 ÷ 1.85) = 5.6 ÷ 0.968 = 5.8 °C:"
                                + " that much hotter, ten times faster.",
                        "Hold for 6.5 logs at T = 6.5 × 17.2 ÷ 10^((T − 54.4) ÷ 5.8)."
                                + " 56 °C: 59 min; 58 °C: 27 min; 60 °C: 12 min; 62 °C: 5.5 min.");
        for (LethalityRow row : USUAL.rows()) {
            if (row.at().value() <= 140) {
                // the print rounds to whole minutes
                assertThat(worked.minutes(row.at().celsius()))
                        .as(row.at().text())
                        .isCloseTo(row.seconds() / 60, within(0.5 + 0.05 * row.seconds() / 60));
            }
        }
    }

    @Test
    void everyFigureOfAFindingStandsInItsFact() {
        assertThat(USUAL.findings()).extracting(MeasuredFinding::celsius).contains(48, 51, 53, 55);
        assertThat(USUAL.findings()).allSatisfy(finding -> {
            Matcher figures = Pattern.compile("[0-9]+(?:\\.[0-9]+)?").matcher(finding.text());
            while (figures.find()) {
                assertThat(finding.fact().statement()).contains(figures.group());
            }
        });
    }

    @Test
    void everyStatementNamesItsSourceAndUnconfirmedOnesSaySo() {
        assertThat(List.of(
                        USUAL.growthStops(), USUAL.publishedRow(), USUAL.toxin(), USUAL.spores(), USUAL.cannotClaim()))
                .allSatisfy(statement -> assertThat(statement.citations()).isNotEmpty());
        assertThat(List.of(USUAL.toxin(), USUAL.spores(), USUAL.cannotClaim()))
                .flatExtracting(Statement::citations)
                .filteredOn(citation -> citation.how() == Source.How.MEMORY)
                .isNotEmpty()
                .allSatisfy(citation -> assertThat(citation.text()).contains("from memory, unconfirmed"));
        assertThat(USUAL.cannotClaim().text()).contains("cannot clear or condemn", "worst-case screen");
        assertThat(Lesson.DIRECTION).contains("direction", "not a safety limit");
    }

    @ParameterizedTest
    @EnumSource(Cut.class)
    void theExercisesAskWhatTheyMean(Cut cut) {
        for (double millimetres : new double[] {10, 70, 150}) {
            Lesson lesson = Lesson.of(new LessonSetup(cut, millimetres, List.of(46.0, 54.0, 62.0)), LIBRARY);
            List<Exercise> exercises = lesson.exercises();

            assertThat(exercises).hasSize(3);
            assertThat(LessonBath.firstMet(exercises.get(0).log(), lesson.rows()))
                    .isEmpty();
            assertThat(exercises.get(0).answers().get(0)).startsWith("None.");
            assertThat(LessonBath.firstMet(exercises.get(1).log(), lesson.rows()))
                    .isPresent();
            assertThat(exercises.get(1).answers().get(0)).startsWith("From the reading at");
            // its answer speaks of the row only, so nothing else may be wrong with that log
            assertThat(LessonBath.isComeUpKept(
                            exercises.get(1).log(),
                            LIBRARY.rules(HoldingRule.class).find("US-FSIS-CUT").orElseThrow()))
                    .isTrue();
            assertThat(CountCourse.along(exercises.get(1).log(), LIBRARY, cut.species()))
                    .allMatch(course -> course.concernHours().isEmpty());
            assertThat(exercises.get(2).answers().get(0))
                    .startsWith("No. The readings come to ")
                    .contains("a come-up of at most 6 h from 50 to 130 °F", "this one took longer");
            assertThat(exercises.get(2).answers().get(1)).startsWith("After about");
            assertThat(exercises.get(2).answers().get(2)).startsWith("Discard");
        }
    }

    /** At one temperature growth is a straight line in log10, so the crossing follows from the first hour's rise. */
    @Test
    void theToxinPointIsFoundBetweenHourlyReadings() {
        long[] hourly = new long[25];
        double[] celsius = new double[hourly.length];
        for (int i = 0; i < hourly.length; i++) {
            hourly[i] = i * 3_600_000L;
            celsius[i] = 37;
        }
        CountCourse course = CountCourse.along(new Trace("core", hourly, celsius), LIBRARY, "beef").stream()
                .filter(one -> one.organism().equals("S. aureus"))
                .findFirst()
                .orElseThrow();
        double expected = course.concernChange().orElseThrow() / course.high(1);
        assertThat(course.concernHours().orElseThrow()).isCloseTo(expected, within(0.02));
        assertThat(expected % 1).isBetween(0.03, 0.97);
    }

    /** FSIS 2021, table 3 and 4: poultry's rows begin at 136 °F and stand for 7 logs. */
    @ParameterizedTest
    @EnumSource(
            value = Cut.class,
            names = {"CHICKEN", "TURKEY"})
    void poultryIsWorkedFromItsOwnTable(Cut cut) {
        Lesson lesson = Lesson.of(new LessonSetup(cut, 50, List.of(46.0, 54.0, 62.0)), LIBRARY);
        HandCalculation worked = lesson.calculation();

        assertThat(worked.table()).isEqualTo(lesson.table());
        assertThat(worked.targetLog10()).isEqualTo(7);
        assertThat(worked.cold().at().value()).isEqualTo(136);
        assertThat(worked.hot().at().value()).isEqualTo(146);
        assertThat(worked.steps(List.of(60.0)).get(0)).contains("÷ 7 =");
    }

    /** FSIS Cooking Guideline 2021, page 24: from 50 to 130 °F in 6 h at most. */
    @Test
    void aRowMetAfterASlowComeUpDoesNotCount() {
        Lesson thick = Lesson.of(new LessonSetup(Cut.BEEF, 150, List.of(46.0, 54.0, 62.0)), LIBRARY);

        assertThat(thick.baths().get(2).rowMet()).isPresent();
        assertThat(thick.baths()).noneMatch(LessonBath::comeUpKept);
        assertThat(USUAL.baths().get(8).comeUpKept()).isTrue();
        assertThat(USUAL.baths().get(0).comeUpKept()).isFalse();
    }

    @Test
    void bathsKeepToWholeStepsAndBothEnds() {
        assertThat(LessonSetup.bathsBetween(46, 62))
                .containsExactly(46.0, 48.0, 50.0, 52.0, 54.0, 56.0, 58.0, 60.0, 62.0);
        assertThat(LessonSetup.bathsBetween(50, 54)).containsExactly(50.0, 51.0, 52.0, 53.0, 54.0);
        for (double high = 43; high <= 65; high += 0.5) {
            List<Double> baths = LessonSetup.bathsBetween(41, high);
            assertThat(new LessonSetup(Cut.PORK, 50, baths).bathsCelsius())
                    .startsWith(41.0)
                    .endsWith(high);
        }
    }

    @Test
    void refusesASetupOutOfRange() {
        List<List<Double>> wrong = List.of(
                List.of(50.0, 60.0), List.of(39.0, 50.0, 60.0), List.of(50.0, 60.0, 66.0), List.of(50.0, 50.0, 60.0));
        for (List<Double> baths : wrong) {
            assertThatIllegalArgumentException().isThrownBy(() -> new LessonSetup(Cut.BEEF, 70, baths));
        }
        List<Double> right = new ArrayList<>(List.of(50.0, 55.0, 60.0));
        for (double millimetres : new double[] {9.9, 150.1, Double.NaN}) {
            assertThatIllegalArgumentException().isThrownBy(() -> new LessonSetup(Cut.BEEF, millimetres, right));
        }
    }

    @ParameterizedTest(name = "{0} to {1}: {2}")
    @CsvSource({
        "0.2, 0.4, 0",
        "4.6, 7.2, +5 to +7",
        "7.9, 8.1, +8",
        "-4.6, -3.2, −5 to −3",
        "-9, -8, −7 or lower",
        "-9, -5, −5 or lower",
        "-0.4, 1.2, 0 to +1"
    })
    void changesAreWholeLogs(double low, double high, String words) {
        assertThat(WholeLogs.range(low, high)).isEqualTo(words);
    }
}
