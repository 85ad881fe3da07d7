package org.holdproof.core.kinetics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.rules.DeathTime;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.rules.Source.How;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class SlowestDeathTest {
    private static final RuleLibrary LIBRARY = RuleLibrary.builtIn();
    private static final SlowestDeath CAUTIOUS = SlowestDeath.vegetative(LIBRARY);
    /** Where the two lines cross, from their D and z; see the closed form in the class. */
    private static final double CROSSING = 63.28;

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 100);
    }

    /** D = max(8.7 min x 10^((60-T)/6.3), 2/6 min x 10^((70-T)/7.5)), from 54.4 °C. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theLargerDGoverns(long seed) {
        double celsius = 54.4 + 25.5 * new Random(seed).nextDouble();
        double low = 8.7 * Math.pow(10, (60 - celsius) / 6.3);
        double high = 2.0 / 6 * Math.pow(10, (70 - celsius) / 7.5);

        assertThat(1 / CAUTIOUS.log10PerMinute(celsius)).isCloseTo(Math.max(low, high), within(1e-9 * low));
        assertThat(CAUTIOUS.log10PerMinute(54.39)).isZero();
        assertThat(CAUTIOUS.log10PerMinute(95)).isEqualTo(CAUTIOUS.log10PerMinute(80));
    }

    /** Independent reference: Legendre-Gauss quadrature of Apache Commons Math 3.6.1, each smooth piece by itself. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theReductionAlongALineIsTheIntegral(long seed) {
        Random random = new Random(seed);
        double from = 50 + 35 * random.nextDouble();
        double to = 50 + 35 * random.nextDouble();
        double low = Math.min(from, to);
        double high = Math.max(from, to);
        double expected =
                (piece(low, high, 54.4, CROSSING) + piece(low, high, CROSSING, 80) + piece(low, high, 80, 100))
                        / (high - low)
                        * 30;

        // the crossing is written here with two decimals
        assertThat(CAUTIOUS.alongLine(from, to, 30)).isCloseTo(expected, within(1e-6 * Math.max(1, expected)));
        assertThat(CAUTIOUS.alongLine(to, from, 30)).isEqualTo(CAUTIOUS.alongLine(from, to, 30));
    }

    private static double piece(double low, double high, double pieceLow, double pieceHigh) {
        double from = Math.max(low, pieceLow);
        double to = Math.min(high, pieceHigh);
        return to <= from
                ? 0
                : new IterativeLegendreGaussIntegrator(20, 1e-10, 1e-12)
                        .integrate(100_000, CAUTIOUS::log10PerMinute, from, to);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void worstNominalBestStandInOrderAndAGapIsCreditedNothing(long seed) {
        Random random = new Random(seed);
        Trace trace = Traces.random(random, 45, 80);
        Bounded narrow = CAUTIOUS.log10Reduction(trace, 0.2, 5);
        Bounded wide = CAUTIOUS.log10Reduction(trace, 0.7, 2);

        assertThat(narrow.worst()).isLessThanOrEqualTo(narrow.nominal() + 1e-9);
        assertThat(narrow.nominal()).isLessThanOrEqualTo(narrow.best() + 1e-9);
        assertThat(wide.worst()).isLessThanOrEqualTo(narrow.worst());
        assertThat(wide.best()).isGreaterThanOrEqualTo(narrow.best());
        assertThat(wide.nominal()).isEqualTo(narrow.nominal());
        assertThat(CAUTIOUS.log10Reduction(trace, 0, 0).worst()).isZero();
    }

    /** J. Food Protection 69:1080 (2006): breaded, fatty beef patties lie beyond the line, and the line says so. */
    @Test
    void theCautiousLineSaysWhatLiesBeyondIt() {
        for (String id : List.of("sal-patties-55", "lm-patties-55")) {
            DeathTime time = LIBRARY.rules(DeathTime.class).require(id);
            assertThat(time.highMinutes()).as(id).isGreaterThan(1 / CAUTIOUS.log10PerMinute(55));
            assertThat(time.citation().note()).contains("Slower than the cautious line");
        }
        assertThat(CAUTIOUS.lines().get(0).citation().note()).contains("breaded, fatty beef patties");
    }

    /**
     * The line is slower than every D-value read for vegetative cells, with the exceptions its source names: an atypical
     * Salmonella, and a C. perfringens figure worked out from a whole cook.
     */
    @Test
    void theCautiousLineCoversEveryVegetativeDeathTimeRead() {
        List<DeathTime> read = LIBRARY.rules(DeathTime.class).all().stream()
                .filter(time -> time.citation().how() == How.READ)
                .filter(time -> !time.organism().endsWith("spores") && time.celsius() >= 54.4)
                .filter(time -> !time.strain().startsWith("Senftenberg"))
                .filter(time -> !time.food().contains("breaded"))
                .toList();

        assertThat(read).hasSizeGreaterThan(50).allSatisfy(time -> assertThat(time.highMinutes())
                .as("%s %s at %s °C", time.id(), time.organism(), time.celsius())
                .isLessThanOrEqualTo(1 / CAUTIOUS.log10PerMinute(time.celsius()) * 1.0001));
        assertThat(LIBRARY.rules(DeathTime.class).all())
                .filteredOn(time -> time.id().equals("cp-07"))
                .allSatisfy(time -> {
                    assertThat(time.citation().how()).isEqualTo(How.DERIVED);
                    assertThat(time.highMinutes()).isGreaterThan(1 / CAUTIOUS.log10PerMinute(60));
                });
    }

    @Test
    void perfringensCellsDieFrom55() {
        SlowestDeath cells = SlowestDeath.perfringensCells(LIBRARY);

        assertThat(cells.floorCelsius()).isEqualTo(55);
        assertThat(cells.log10PerMinute(54.9)).isZero();
        // 12 log in 2.3 h at 60 °C
        assertThat(12 / cells.log10PerMinute(60)).isCloseTo(2.3 * 60, within(1e-9));
        assertThat(cells.lines()).hasSize(1);
    }

    @Test
    void refusesNoLine() {
        assertThatIllegalArgumentException().isThrownBy(() -> SlowestDeath.of(List.of()));
    }
}
