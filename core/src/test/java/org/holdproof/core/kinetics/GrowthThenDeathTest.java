package org.holdproof.core.kinetics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import org.holdproof.core.log.Trace;
import org.holdproof.core.rules.GrowthModel;
import org.holdproof.core.rules.RuleLibrary;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class GrowthThenDeathTest {
    private static final RuleLibrary LIBRARY = RuleLibrary.builtIn();
    private static final double CEILING = 9;
    /** Where the two lines of death cross; rounded, it only places a step of the reference. */
    private static final double CROSSING = 63.28;

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 60);
    }

    private static GrowthRate rate(String id) {
        return GrowthRate.of(LIBRARY.rules(GrowthModel.class).find(id).orElseThrow());
    }

    private static GrowthThenDeath salmonella() {
        return new GrowthThenDeath(rate("sal-cooked-chicken"), CEILING, SlowestDeath.vegetative(LIBRARY));
    }

    /** Independent reference: see {@link GrowthEquations}. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theCountIsThatOfTheDifferentialEquations(long seed) {
        Random random = new Random(seed);
        Trace trace = GrowthEquations.wandering(random, 40, 30, 66);
        GrowthState start = GrowthState.withLag(3, 0.04);
        GrowthModel model =
                LIBRARY.rules(GrowthModel.class).find("sal-cooked-chicken").orElseThrow();
        double expected = GrowthEquations.withDeath(
                        rate("sal-cooked-chicken"),
                        SlowestDeath.vegetative(LIBRARY),
                        CEILING,
                        model.minCelsius(),
                        model.maxCelsius(),
                        54.4,
                        CROSSING)
                .log10PerGramAfter(trace, start);

        assertThat(salmonella().along(trace, start).end().log10PerGram())
                .isCloseTo(expected, within(1e-7 * Math.max(1, Math.abs(expected))));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void splittingALogAtAReadingAndCarryingOnChangesNothing(long seed) {
        Random random = new Random(seed);
        Trace trace = Traces.random(random, 20, 70);
        GrowthState start = GrowthState.withLag(2, 0.01);
        long cut = trace.millis(random.nextInt(trace.size()));
        GrowthThenDeath.Course whole = salmonella().along(trace, start);
        GrowthThenDeath.Course before = salmonella().along(trace.between(trace.firstMillis(), cut), start);
        GrowthThenDeath.Course after = salmonella().along(trace.between(cut, trace.lastMillis()), before.end());

        assertThat(after.end()).isEqualTo(whole.end());
        assertThat(Math.max(before.peakLog10PerGram(), after.peakLog10PerGram()))
                .isEqualTo(whole.peakLog10PerGram());
        assertThat(whole.log10PerGram(trace.size() - 1)).isEqualTo(whole.end().log10PerGram());
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void thePeakIsNeverBelowAReadingNorAboveTheCeiling(long seed) {
        Random random = new Random(seed);
        Trace trace = Traces.random(random, 20, 70);
        GrowthThenDeath.Course course = salmonella().along(trace, GrowthState.withoutLag(2));
        for (int i = 0; i < trace.size(); i++) {
            assertThat(course.log10PerGram(i)).isLessThanOrEqualTo(course.peakLog10PerGram());
        }
        assertThat(course.peakLog10PerGram()).isBetween(2.0, CEILING);
    }

    /**
     * A core from 5 °C with a time constant of 1 h in a bath too low to kill; figures computed in another language before
     * this code existed. For C. perfringens the faster of the two models counts at each temperature.
     */
    @ParameterizedTest(name = "{0} in a bath of {1} °C: {2} log after {3} h")
    @CsvSource({
        "cp-rc;cp-bb, 40, 6.18, 4",
        "cp-rc;cp-bb, 45, 7.25, 4",
        "cp-rc;cp-bb, 50, 7.67, 4",
        "cp-rc;cp-bb, 53, 6.44, 4",
        "cp-rc;cp-bb, 53, 7.97, 12",
        "sal-cooked-chicken, 40, 2.21, 4",
        "sal-cooked-chicken, 40, 5.21, 8",
        "sal-cooked-chicken, 48, 4.14, 12",
        "sal-cooked-chicken, 50, 1.61, 12",
        "sal-cooked-chicken, 53, 1.12, 24",
        "sa-2064-48c, 45, 5.29, 8",
        "sa-2064-48c, 48, 2.43, 12",
        "sa-2064-48c, 53, 1.13, 24",
    })
    void aBathTooLowGrowsAndDoesNotKill(String ids, double bath, double log10, double hours) {
        assertThat(course(ids, bath, hours).end().log10PerGram() - start(ids)).isCloseTo(log10, within(0.01));
    }

    /** The same for baths that kill: the most there was on the way. */
    @ParameterizedTest(name = "{0} in a bath of {1} °C: at most {2} log more")
    @CsvSource({
        "cp-rc;cp-bb, 57, 3.92",
        "cp-rc;cp-bb, 60, 3.11",
        "sal-cooked-chicken, 55, 0.96",
        "sal-cooked-chicken, 57, 0.84",
        "sal-cooked-chicken, 60, 0.71",
        "sa-2064-48c, 57, 0.86",
        "sa-2064-48c, 60, 0.73",
    })
    void aBathThatKillsGrowsFirst(String ids, double bath, double peak) {
        GrowthThenDeath.Course day = course(ids, bath, 24);

        assertThat(day.peakLog10PerGram() - start(ids)).isCloseTo(peak, within(0.01));
        assertThat(day.end().log10PerGram()).isNegative();
    }

    private static double start(String ids) {
        return models(ids).get(0).startLog10();
    }

    private static List<GrowthModel> models(String ids) {
        return Arrays.stream(ids.split(";", -1))
                .map(id -> LIBRARY.rules(GrowthModel.class).find(id).orElseThrow())
                .toList();
    }

    private static GrowthThenDeath.Course course(String ids, double bath, double hours) {
        SlowestDeath death =
                ids.startsWith("cp-") ? SlowestDeath.perfringensCells(LIBRARY) : SlowestDeath.vegetative(LIBRARY);
        return new GrowthThenDeath(GrowthRate.fastestOf(models(ids)), CEILING, death)
                .along(bath(bath, hours), GrowthState.withoutLag(start(ids)));
    }

    private static Trace bath(double celsius, double hours) {
        int minutes = (int) Math.round(hours * 60);
        double[] log = new double[2 * minutes + 2];
        for (int i = 0; i <= minutes; i++) {
            log[2 * i] = i;
            log[2 * i + 1] = celsius - (celsius - 5) * Math.exp(-i / 60.0);
        }
        return Traces.celsius(log);
    }

    /** Between the highest temperature of growth and the floor of death nothing changes. */
    @Test
    void nothingHappensBetweenGrowthAndDeath() {
        GrowthState start = GrowthState.withoutLag(4);

        assertThat(salmonella().along(Traces.held(52, 600), start).end()).isEqualTo(start);
    }

    @Test
    void refusesGrowthThatOverlapsDeath() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new GrowthThenDeath(
                        GrowthRate.of(GrowthModels.of(10, 45, 56, 1)), CEILING, SlowestDeath.vegetative(LIBRARY)));
    }
}
