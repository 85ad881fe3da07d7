package org.holdproof.core.heat;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.Function;
import org.holdproof.core.batch.Product.Shape;
import org.holdproof.core.heat.MediumSchedule.Segment;
import org.holdproof.core.heat.PlausibilityFinding.Outcome;
import org.holdproof.core.log.Trace;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Made-up cores and misplaced probes, drawn with the seeds each test names; rates are of these, not of kitchens. */
class ProbePlausibilityTest {
    private static final int LOGS = 100;

    /** One made-up cook: what was in the bath, and how it was logged. */
    private static final class Cook {
        final SplittableRandom random;
        final Shape shape;
        final double declared;
        final double interval;
        final double noise;
        final double bath;
        final double start;
        final double bias;
        final double clockShift;
        final Piece truth;
        final ThermalProperties food;
        final double h;

        Cook(long seed, Shape shape, double declared, double interval, double noise) {
            random = new SplittableRandom(seed);
            this.shape = shape;
            this.declared = declared;
            this.interval = interval;
            this.noise = noise;
            bath = between(55, 65);
            start = between(3.5, 5.5);
            bias = random.nextInt(-1, 2);
            clockShift = between(-1, 1) * interval;
            Piece kind = Piece.of(declared, shape);
            truth = Piece.of(declared * between(0.9, 1.1), between(kind.shapeFactor(), kind.fastestShapeFactor()));
            food = ThermalProperties.constant(0.48, between(1.05e-7, 1.5e-7));
            h = Math.exp(between(Math.log(95), Math.log(1000)));
        }

        double between(double low, double high) {
            return low + (high - low) * random.nextDouble();
        }

        double[] minutes() {
            double half = truth.halfThicknessMetres();
            double length = 2.5 * half * half / food.diffusivity(0) / 60 + 30;
            return SyntheticLog.minutes((int) (length / interval) + 2, interval);
        }

        Trace medium() {
            return SyntheticLog.trace("bath", minutes(), SyntheticLog.held(bath, minutes().length));
        }

        Trace probeAt(double place) {
            return probeAt(place, MediumSchedule.held(bath, h));
        }

        Trace probeAt(double place, MediumSchedule medium) {
            double[] logged = minutes();
            double[] real = new double[logged.length];
            for (int i = 0; i < logged.length; i++) {
                real[i] = Math.max(0, logged[i] + clockShift);
            }
            return read(Conduction.of(truth, food).runAt(place, start, medium, real));
        }

        Trace read(double[] celsius) {
            double[] shown = new double[celsius.length];
            for (int i = 0; i < shown.length; i++) {
                shown[i] = celsius[i] + bias;
            }
            return SyntheticLog.trace("core", minutes(), SyntheticLog.noisy(shown, noise, 0.1, random));
        }

        PlausibilityFinding judge(Trace core) {
            return ProbePlausibility.judge(core, Optional.of(medium()), Piece.of(declared, shape));
        }
    }

    private static Count judged(
            Shape shape, double thickness, double interval, double noise, Function<Cook, Trace> probe) {
        int impossible = 0;
        int possible = 0;
        for (long seed = 1; seed <= LOGS; seed++) {
            Cook cook = new Cook(seed, shape, thickness, interval, noise);
            Outcome outcome = cook.judge(probe.apply(cook)).outcome();
            impossible += outcome.isImpossible() ? 1 : 0;
            possible += outcome == Outcome.POSSIBLE ? 1 : 0;
        }
        return new Count(impossible, possible);
    }

    private record Count(int impossible, int possible) {}

    @ParameterizedTest(name = "{0} {1} mm every {2} min, noise {3}, seeds 1 to 100")
    @CsvSource({
        "SLAB, 20, 1, 0.1",
        "SLAB, 20, 1, 0.5",
        "SLAB, 30, 1, 0.1",
        "SLAB, 50, 1, 0.5",
        "SLAB, 75, 1, 0.1",
        "SLAB, 30, 5, 0.5",
        "SLAB, 50, 5, 0.1",
        "ROAST, 50, 1, 0.1",
        "CYLINDER, 50, 1, 0.1",
        "SPHERE, 50, 1, 0.1"
    })
    void aCoreIsHardlyEverCalledImpossible(Shape shape, double thickness, double interval, double noise) {
        Count cores = judged(shape, thickness, interval, noise, cook -> cook.probeAt(cook.between(0, 0.15)));

        assertThat(cores.impossible()).isLessThanOrEqualTo(1);
    }

    /** The fewest that were caught when the thresholds were set; one-minute readings. */
    @ParameterizedTest(name = "{0} {1} mm, noise {2}, probe at {3} of the way out, seeds 1 to 100")
    @CsvSource({
        "SLAB, 20, 0.1, 0.7, 95",
        "SLAB, 30, 0.1, 0.5, 40",
        "SLAB, 30, 0.5, 0.7, 95",
        "SLAB, 30, 0.1, 1.0, 95",
        "SLAB, 50, 0.1, 0.6, 95",
        "SLAB, 50, 0.5, 1.0, 95",
        "SLAB, 75, 0.5, 0.5, 75",
        "ROAST, 50, 0.1, 0.6, 95",
        "ROAST, 50, 0.1, 1.0, 95",
        "SPHERE, 50, 0.1, 0.7, 95"
    })
    void aProbeOutsideTheCoreIsCaught(Shape shape, double thickness, double noise, double place, int fewest) {
        Count probes = judged(shape, thickness, 1, noise, cook -> cook.probeAt(place));

        assertThat(probes.impossible()).isGreaterThanOrEqualTo(fewest);
    }

    /** A probe in the water follows it within seconds; where the log begins after it has, nothing is said. */
    @ParameterizedTest(name = "{0} mm every {1} min, seeds 1 to 100")
    @CsvSource({"30, 1, 90", "50, 1, 90", "75, 1, 90", "50, 5, 50"})
    void aProbeInTheBathNeverPasses(double thickness, double interval, int fewest) {
        Count probes = judged(Shape.SLAB, thickness, interval, 0.1, cook -> {
            double seconds = cook.between(6, 60);
            double[] minutes = cook.minutes();
            double[] celsius = new double[minutes.length];
            for (int i = 0; i < celsius.length; i++) {
                double after = Math.max(0, minutes[i] + cook.clockShift) * 60;
                celsius[i] = cook.bath + (cook.start - cook.bath) * Math.exp(-after / seconds);
            }
            return cook.read(celsius);
        });

        assertThat(probes.possible()).isZero();
        assertThat(probes.impossible()).isGreaterThanOrEqualTo(fewest);
    }

    private static final double[] MINUTES = SyntheticLog.minutes(400, 1);
    private static final Piece ROAST = Piece.of(50, Shape.SLAB);
    private static final ThermalProperties MEAT = ThermalProperties.constant(0.48, 1.3e-7);

    private static Trace steady(String channel, double[] celsius) {
        return SyntheticLog.trace(channel, MINUTES, SyntheticLog.noisy(celsius, 0.1, 0.1, new SplittableRandom(11)));
    }

    private static PlausibilityFinding judgeUnder(MediumSchedule medium, double place) {
        double[] around = new double[MINUTES.length];
        for (int i = 0; i < around.length; i++) {
            around[i] = medium.celsius(MINUTES[i]);
        }
        double[] core = Conduction.of(Piece.of(50, 0.1), MEAT).runAt(place, 5, medium, MINUTES);
        return ProbePlausibility.judge(steady("core", core), Optional.of(steady("bath", around)), ROAST);
    }

    @Test
    void aBathThatSagsUnderItsLoadAndRecoversRaisesNoAlarm() {
        MediumSchedule sagging = MediumSchedule.of(new Segment(15, 56, 60, 300), Segment.hold(1000, 60, 300));

        PlausibilityFinding finding = judgeUnder(sagging, 0);

        assertThat(finding.outcome()).isEqualTo(Outcome.POSSIBLE);
        assertThat(finding.lag().orElseThrow()).isGreaterThan(1);
    }

    @Test
    void aBathFarFromSteadyIsLeftToTheBound() {
        MediumSchedule sagging = MediumSchedule.of(new Segment(30, 52, 60, 300), Segment.hold(1000, 60, 300));

        assertThat(judgeUnder(sagging, 0).outcome()).isEqualTo(Outcome.POSSIBLE);
        assertThat(judgeUnder(sagging, 0).lag()).isEmpty();
        assertThat(judgeUnder(sagging, 0.9).outcome()).isEqualTo(Outcome.NEAR_THE_SURFACE);
    }

    @Test
    void smokeThenBathThenIceIsPossibleForACore() {
        MediumSchedule cook = MediumSchedule.of(
                new Segment(30, 20, 110, 15),
                Segment.hold(90, 110, 15),
                Segment.hold(160, 60, 300),
                Segment.hold(200, 0.5, 200));

        PlausibilityFinding finding = judgeUnder(cook, 0);

        assertThat(finding.outcome()).isEqualTo(Outcome.POSSIBLE);
        assertThat(finding.fallCelsius()).isLessThan(1);
    }

    @Test
    void aProbePulledOutDuringTheCookIsSeen() {
        double[] core = Conduction.of(Piece.of(50, 0.1), MEAT).runAt(0, 5, MediumSchedule.held(60, 300), MINUTES);
        for (int i = 200; i < 215; i++) {
            core[i] = 22 + (core[i] - 22) * Math.exp(-(i - 199) / 2.0);
        }
        Trace bath = steady("bath", SyntheticLog.held(60, MINUTES.length));

        PlausibilityFinding finding = ProbePlausibility.judge(steady("core", core), Optional.of(bath), ROAST);

        assertThat(finding.outcome()).isEqualTo(Outcome.PULLED_OUT);
        assertThat(finding.atMillis().orElseThrow())
                .isBetween(SyntheticLog.ZERO + 200 * 60_000L, SyntheticLog.ZERO + 215 * 60_000L);
    }

    @Test
    void theFindingCarriesItsFigures() {
        PlausibilityFinding finding = judgeUnder(MediumSchedule.held(60, 300), 0.8);

        assertThat(finding.outcome()).isEqualTo(Outcome.NEAR_THE_SURFACE);
        assertThat(finding.why()).startsWith("after ").contains("no core of a piece 50 mm thick can be above");
        assertThat(finding.excessCelsius().orElseThrow()).isGreaterThan(finding.thresholdCelsius());
        assertThat(finding.lag().orElseThrow()).isLessThan(1);
        assertThat(finding.noiseCelsius()).isBetween(0.05, 0.2);
        assertThat(finding.fastestPossible().orElseThrow().size()).isEqualTo(MINUTES.length);
    }

    private static Surroundings setPoint(double celsius) {
        return new Surroundings(
                SyntheticLog.trace("set point", new double[] {0}, new double[] {celsius}), Optional.empty(), true);
    }

    @Test
    void aDeclaredSetPointStandsInForABathThatWasNotLogged() {
        double[] core = Conduction.of(Piece.of(50, 0.1), MEAT).runAt(0.8, 5, MediumSchedule.held(60, 300), MINUTES);

        assertThat(ProbePlausibility.judge(steady("core", core), setPoint(60), ROAST)
                        .outcome())
                .isEqualTo(Outcome.NEAR_THE_SURFACE);
    }

    @Test
    void aCoreAboveTheBoilingPointIsNoneAndTwoStraysCondemnNothing() {
        double[] core = Conduction.of(Piece.of(50, 0.1), MEAT).runAt(0, 5, MediumSchedule.held(90, 15), MINUTES);
        core[200] = 127;
        core[201] = 127;
        assertThat(ProbePlausibility.judge(steady("core", core), setPoint(110), ROAST)
                        .outcome())
                .isEqualTo(Outcome.POSSIBLE);
        double[] dry = core.clone();
        for (int i = 300; i < 310; i++) {
            dry[i] = 104;
        }
        PlausibilityFinding finding = ProbePlausibility.judge(steady("core", dry), setPoint(110), ROAST);
        assertThat(finding.outcome()).isEqualTo(Outcome.TOO_HOT);
        assertThat(finding.why()).contains("boiling point");
    }

    /** A bath that dies: the water cools to the room, and the piece after it, but for the figure of a stuck probe. */
    @Test
    void aCoreThatStandsStillWhileItsBathDiesIsNotBelieved() {
        MediumSchedule dying =
                MediumSchedule.of(Segment.hold(200, 60, 300), new Segment(60, 60, 22, 300), Segment.hold(400, 22, 300));
        double[] bath = new double[MINUTES.length];
        for (int i = 0; i < bath.length; i++) {
            bath[i] = dying.celsius(MINUTES[i]);
        }
        double[] core = Conduction.of(Piece.of(50, 0.1), MEAT).runAt(0, 5, dying, MINUTES);
        Optional<Trace> around = Optional.of(SyntheticLog.trace("bath", MINUTES, bath));
        assertThat(ProbePlausibility.judge(steady("core", core), around, ROAST).outcome())
                .isEqualTo(Outcome.POSSIBLE);
        for (int i = 190; i < core.length; i++) {
            core[i] = 59.9 + i % 2 * 0.1;
        }
        PlausibilityFinding stuck = ProbePlausibility.judge(SyntheticLog.trace("core", MINUTES, core), around, ROAST);
        assertThat(stuck.outcome()).isEqualTo(Outcome.STANDS_STILL);
        assertThat(stuck.atMillis().orElseThrow())
                .isBetween(SyntheticLog.ZERO + 240 * 60_000L, SyntheticLog.ZERO + 256 * 60_000L);
    }

    /** 23 per cent, a tenth of thickness, is what the bound leaves over the diffusivity of water. */
    @Test
    void noFoodOfTheTablesIsFasterThanTheFastestCore() {
        double fastest = FastestCore.HIGHEST_DIFFUSIVITY / (FastestCore.THINNER * FastestCore.THINNER);
        List<Double> published = HeatReference.shipped("thermal-properties.csv").stream()
                .filter(row -> row.getField("alpha_1e-7_m2_s").matches("[0-9.]+"))
                .filter(row -> !row.getField("note").startsWith("far above measured meat"))
                .map(row -> HeatReference.number(row, "alpha_1e-7_m2_s") * 1e-7)
                .toList();
        assertThat(published).isNotEmpty().allSatisfy(value -> assertThat(value).isLessThan(fastest));
    }

    @Test
    void whatCannotBeDecidedSaysWhy() {
        double[] hot = SyntheticLog.held(59.5, MINUTES.length);
        Trace bath = steady("bath", SyntheticLog.held(60, MINUTES.length));

        assertThat(ProbePlausibility.judge(bath, Optional.empty(), ROAST).why()).isEqualTo("the medium was not logged");
        PlausibilityFinding started = ProbePlausibility.judge(steady("core", hot), Optional.of(bath), ROAST);
        assertThat(started.outcome()).isEqualTo(Outcome.UNDECIDED);
        assertThat(started.why()).contains("how they rose was not logged");
        double[] few = {0, 15, 30, 45};
        PlausibilityFinding coarse = ProbePlausibility.judge(
                SyntheticLog.trace("core", few, new double[] {5, 55, 60, 60}), setPoint(60), Piece.of(20, Shape.SLAB));
        assertThat(coarse.outcome()).isEqualTo(Outcome.UNDECIDED);
        assertThat(coarse.why()).contains("15.0 min apart");
    }
}
