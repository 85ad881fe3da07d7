package org.holdproof.core.kinetics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.LongStream;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.rules.Citation;
import org.holdproof.core.rules.Source;
import org.holdproof.core.rules.ThermalDeath;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class GeneralMethodTest {
    private static final Source MADE_UP =
            new Source("test", "Invented for this test", "", "", "", "", "", Source.How.DERIVED);
    private static final Citation CITATION =
            new Citation(MADE_UP, "Invented for this test", "", Source.How.DERIVED, "");

    static ThermalDeath death(double dMinutes, double reference, double z) {
        return new ThermalDeath(
                "d", "invented", "invented", dMinutes, reference, z, 54.4, 75, OptionalDouble.empty(), CITATION);
    }

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 150);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void worstNominalBestStandInOrder(long seed) {
        Random random = new Random(seed);
        Trace trace = Traces.random(random, 45, 80);
        Bounded log10 = new GeneralMethod(List.of(death(1.7, 60, 5.56)), random.nextDouble(), 5)
                .log10Reductions(trace)
                .get(0);

        assertThat(log10.worst()).isLessThanOrEqualTo(log10.nominal() + 1e-9);
        assertThat(log10.nominal()).isLessThanOrEqualTo(log10.best() + 1e-9);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void splittingALogAtAReadingChangesNothing(long seed) {
        Random random = new Random(seed);
        Trace trace = Traces.random(random, 45, 80);
        GeneralMethod method = new GeneralMethod(List.of(death(1.7, 60, 5.56)), 0.5, 5);
        long cut = trace.millis(random.nextInt(trace.size()));

        Bounded whole = method.log10Reductions(trace).get(0);
        Bounded before =
                method.log10Reductions(trace.between(trace.firstMillis(), cut)).get(0);
        Bounded after =
                method.log10Reductions(trace.between(cut, trace.lastMillis())).get(0);

        assertThat(before.worst() + after.worst()).isCloseTo(whole.worst(), within(1e-9 * (1 + whole.worst())));
        assertThat(before.nominal() + after.nominal()).isCloseTo(whole.nominal(), within(1e-9 * (1 + whole.nominal())));
        assertThat(before.best() + after.best()).isCloseTo(whole.best(), within(1e-9 * (1 + whole.best())));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void aHotterLogIsNeverLessLethalAndAWiderToleranceNeverNarrower(long seed) {
        Random random = new Random(seed);
        Trace trace = Traces.random(random, 45, 80);
        GeneralMethod method = new GeneralMethod(List.of(death(1.7, 60, 5.56)), 0.5, 5);
        Bounded cool = method.log10Reductions(trace).get(0);
        Bounded hot =
                method.log10Reductions(trace.corrected(random.nextDouble())).get(0);
        Bounded wide = new GeneralMethod(List.of(death(1.7, 60, 5.56)), 1, 5)
                .log10Reductions(trace)
                .get(0);

        assertThat(hot.worst()).isGreaterThanOrEqualTo(cool.worst());
        assertThat(hot.nominal()).isGreaterThanOrEqualTo(cool.nominal());
        assertThat(hot.best()).isGreaterThanOrEqualTo(cool.best());
        assertThat(wide.worst()).isLessThanOrEqualTo(cool.worst());
        assertThat(wide.nominal()).isEqualTo(cool.nominal());
        assertThat(wide.best()).isGreaterThanOrEqualTo(cool.best());
    }

    @Test
    void severalOrganismsInOnePassAreEachWhatTheyAreAlone() {
        Trace trace = Traces.random(new Random(7), 50, 75);
        ThermalDeath one = death(1.7, 60, 5.56);
        ThermalDeath other = death(0.33, 70, 7.5);

        List<Bounded> both = new GeneralMethod(List.of(one, other), 0.5, 5).log10Reductions(trace);

        assertThat(both.get(0))
                .isEqualTo(new GeneralMethod(List.of(one), 0.5, 5)
                        .log10Reductions(trace)
                        .get(0));
        assertThat(both.get(1))
                .isEqualTo(new GeneralMethod(List.of(other), 0.5, 5)
                        .log10Reductions(trace)
                        .get(0));
    }

    @Test
    void aGapIsCreditedNothingAtWorst() {
        Trace trace = Traces.celsius(0, 60, 1, 60, 41, 60, 42, 60);

        Bounded minutes = new GeneralMethod(List.of(death(1, 60, 10)), 0, 5)
                .log10Reductions(trace)
                .get(0);

        assertThat(minutes.worst()).isCloseTo(2, within(1e-9));
        assertThat(minutes.nominal()).isCloseTo(42, within(1e-9));
        assertThat(minutes.best()).isCloseTo(42, within(1e-9));
    }

    @Test
    void theCumulativeCurveEndsAtTheWhole() {
        Trace trace = Traces.random(new Random(3), 50, 75);
        GeneralMethod method = new GeneralMethod(List.of(death(1.7, 60, 5.56)), 0.5, 5);
        Bounded[] curve = method.cumulative(trace);

        assertThat(curve[0]).isEqualTo(Bounded.exactly(0));
        assertThat(curve[curve.length - 1])
                .isEqualTo(method.log10Reductions(trace).get(0));
    }
}
