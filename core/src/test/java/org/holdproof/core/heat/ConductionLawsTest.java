package org.holdproof.core.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.holdproof.core.heat.Composition.Path;
import org.holdproof.core.heat.MediumSchedule.Segment;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What conduction obeys whatever the piece, the food and the medium: random ones, from the seed each test names. */
class ConductionLawsTest {
    private static final double TOLERANCE = Conduction.DEFAULT_TOLERANCE_CELSIUS;

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 60);
    }

    /** A random piece of random food with a random cook. */
    private static final class Cook {
        final SplittableRandom random;
        final Piece piece;
        final double conductivity;
        final double diffusivity;
        final ThermalProperties constant;
        final double start;
        final List<Segment> segments = new ArrayList<>();

        Cook(long seed) {
            random = new SplittableRandom(seed);
            piece = Piece.of(between(10, 150), between(0, 2));
            conductivity = between(0.3, 0.6);
            diffusivity = between(0.9e-7, 1.6e-7);
            constant = ThermalProperties.constant(conductivity, diffusivity);
            start = between(1, 70);
            int count = random.nextInt(1, 6);
            double last = between(0.5, 120);
            for (int i = 0; i < count; i++) {
                double from = random.nextBoolean() ? last : between(0.5, 120);
                last = random.nextBoolean() ? from : between(0.5, 120);
                segments.add(new Segment(between(5, 300), from, last, Math.exp(between(Math.log(5), Math.log(1000)))));
            }
        }

        double between(double low, double high) {
            return low + (high - low) * random.nextDouble();
        }

        MediumSchedule schedule() {
            return MediumSchedule.of(segments);
        }

        double[] minutes() {
            double end = schedule().endMinutes();
            return IntStream.rangeClosed(0, 60).mapToDouble(i -> end * i / 60).toArray();
        }

        ThermalProperties composed() {
            double fat = between(0, 40);
            double ash = 1;
            double protein = (100 - fat - ash) * 0.22;
            Path path = random.nextBoolean() ? Path.PARALLEL : Path.SERIES;
            return Composition.ofMeat(100 - fat - ash - protein, protein, fat, ash)
                    .properties(path);
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void nothingGetsHotterOrColderThanWhatTouchedIt(long seed) {
        Cook cook = new Cook(seed);
        PieceTemperatures run = Conduction.of(cook.piece, seed % 2 == 0 ? cook.constant : cook.composed())
                .run(cook.start, cook.schedule(), cook.minutes());

        double coldest = cook.start;
        double hottest = cook.start;
        for (Segment segment : cook.segments) {
            coldest = Math.min(coldest, Math.min(segment.fromCelsius(), segment.toCelsius()));
            hottest = Math.max(hottest, Math.max(segment.fromCelsius(), segment.toCelsius()));
        }
        for (int i = 0; i < run.size(); i++) {
            assertThat(run.coreCelsius(i)).isBetween(coldest - 1e-9, hottest + 1e-9);
            assertThat(run.surfaceCelsius(i)).isBetween(coldest - 1e-9, hottest + 1e-9);
            assertThat(run.meanCelsius(i)).isBetween(coldest - 1e-9, hottest + 1e-9);
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void aConstantBathMovesCoreSurfaceAndMeanOneWayOnly(long seed) {
        Cook cook = new Cook(seed);
        Segment first = cook.segments.get(0);
        double bath = first.fromCelsius();
        PieceTemperatures run = Conduction.of(cook.piece, seed % 2 == 0 ? cook.constant : cook.composed())
                .run(cook.start, MediumSchedule.held(bath, first.surfaceCoefficient()), cook.minutes());

        double way = Math.signum(bath - cook.start);
        for (int i = 1; i < run.size(); i++) {
            assertThat(way * (run.coreCelsius(i) - run.coreCelsius(i - 1))).isGreaterThanOrEqualTo(-1e-9);
            assertThat(way * (run.surfaceCelsius(i) - run.surfaceCelsius(i - 1)))
                    .isGreaterThanOrEqualTo(-1e-9);
            assertThat(way * (run.meanCelsius(i) - run.meanCelsius(i - 1))).isGreaterThanOrEqualTo(-1e-9);
        }
    }

    /** d(mean)/dt = (β + 1) h (T_medium − T_surface) / (ρc R): what comes in through the surface is what is there. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theHeatThatEntersIsTheHeatThatStays(long seed) {
        Cook cook = new Cook(seed);
        Segment first = cook.segments.get(0);
        MediumSchedule schedule = MediumSchedule.of(first);
        int points = 1000;
        double[] minutes = IntStream.rangeClosed(0, points)
                .mapToDouble(i -> first.minutes() * (0.05 + 0.95 * i / points))
                .toArray();
        PieceTemperatures run =
                Conduction.of(cook.piece, cook.constant).within(0.002).run(cook.start, schedule, minutes);

        double heat = 0;
        for (int i = 1; i <= points; i++) {
            double before = schedule.celsius(minutes[i - 1]) - run.surfaceCelsius(i - 1);
            double after = schedule.celsius(minutes[i]) - run.surfaceCelsius(i);
            heat += (before + after) / 2 * (minutes[i] - minutes[i - 1]) * 60;
        }
        double capacity = cook.conductivity / cook.diffusivity;
        double rise = (cook.piece.shapeFactor() + 1)
                * first.surfaceCoefficient()
                * heat
                / (capacity * cook.piece.halfThicknessMetres());
        assertThat(run.meanCelsius(points) - run.meanCelsius(0)).isCloseTo(rise, within(0.01 + 0.002 * Math.abs(rise)));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void coolingIsHeatingTurnedOver(long seed) {
        Cook cook = new Cook(seed);
        List<Segment> mirrored = cook.segments.stream()
                .map(s -> new Segment(s.minutes(), 100 - s.fromCelsius(), 100 - s.toCelsius(), s.surfaceCoefficient()))
                .toList();
        Conduction conduction = Conduction.of(cook.piece, cook.constant);
        PieceTemperatures run = conduction.run(cook.start, cook.schedule(), cook.minutes());
        PieceTemperatures mirror = conduction.run(100 - cook.start, MediumSchedule.of(mirrored), cook.minutes());

        for (int i = 0; i < run.size(); i++) {
            assertThat(mirror.coreCelsius(i)).isCloseTo(100 - run.coreCelsius(i), within(1e-8));
            assertThat(mirror.surfaceCelsius(i)).isCloseTo(100 - run.surfaceCelsius(i), within(1e-8));
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void twiceTheSizeTakesFourTimesAsLongAtTheSameBiotNumber(long seed) {
        Cook cook = new Cook(seed);
        Piece twice = Piece.of(2 * cook.piece.thicknessMillimetres(), cook.piece.shapeFactor());
        List<Segment> slower = cook.segments.stream()
                .map(s -> new Segment(4 * s.minutes(), s.fromCelsius(), s.toCelsius(), s.surfaceCoefficient() / 2))
                .toList();
        double[] later =
                IntStream.range(0, 61).mapToDouble(i -> 4 * cook.minutes()[i]).toArray();
        PieceTemperatures small =
                Conduction.of(cook.piece, cook.constant).run(cook.start, cook.schedule(), cook.minutes());
        PieceTemperatures large = Conduction.of(twice, cook.constant).run(cook.start, MediumSchedule.of(slower), later);

        for (int i = 0; i < small.size(); i++) {
            assertThat(large.coreCelsius(i)).isCloseTo(small.coreCelsius(i), within(2 * TOLERANCE));
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void aHotterMediumNeverMakesAColderCore(long seed) {
        Cook cook = new Cook(seed);
        double extra = cook.between(0.1, 20);
        List<Segment> hotter = cook.segments.stream()
                .map(s -> new Segment(
                        s.minutes(), s.fromCelsius() + extra, s.toCelsius() + extra, s.surfaceCoefficient()))
                .toList();
        Conduction conduction = Conduction.of(cook.piece, cook.constant);
        PieceTemperatures run = conduction.run(cook.start, cook.schedule(), cook.minutes());
        PieceTemperatures raised = conduction.run(cook.start, MediumSchedule.of(hotter), cook.minutes());

        for (int i = 0; i < run.size(); i++) {
            assertThat(raised.coreCelsius(i)).isGreaterThanOrEqualTo(run.coreCelsius(i) - 2 * TOLERANCE);
        }
    }

    @Test
    void anUnlimitedCoefficientHoldsTheSurfaceAtTheMedium() {
        PieceTemperatures run = Conduction.of(Piece.of(50, 0.28), ThermalProperties.constant(0.48, 1.3e-7))
                .run(5, MediumSchedule.held(60, Double.POSITIVE_INFINITY), new double[] {1, 60});

        assertThat(run.surfaceCelsius(0)).isCloseTo(60, within(1e-4));
    }

    @Test
    void askingAtMinuteZeroGivesTheStart() {
        PieceTemperatures run = Conduction.of(Piece.of(50, 0.28), ThermalProperties.constant(0.48, 1.3e-7))
                .run(5, MediumSchedule.held(60, 300), new double[] {0, 0, 30});

        assertThat(run.coreCelsius(1)).isEqualTo(5);
        assertThat(run.surfaceCelsius(1)).isEqualTo(5);
    }

    @Test
    void aCoreThatNeverGetsThereHasNoMinute() {
        double[] minutes = IntStream.rangeClosed(0, 240).asDoubleStream().toArray();
        PieceTemperatures run = Conduction.of(Piece.of(50, 0.28), ThermalProperties.constant(0.48, 1.3e-7))
                .run(5, MediumSchedule.held(60, 300), minutes);

        assertThat(run.minuteCoreReaches(60.5)).isEmpty();
        assertThat(run.minuteCoreReaches(5)).hasValue(0);
        double minute = run.minuteCoreReaches(50).orElseThrow();
        assertThat(run.coreCelsius((int) minute)).isLessThanOrEqualTo(50);
        assertThat(run.coreCelsius((int) minute + 1)).isGreaterThanOrEqualTo(50);
    }

    @Test
    void whatMakesNoSenseIsRefused() {
        Conduction conduction = Conduction.of(Piece.of(50, 0.28), ThermalProperties.constant(0.48, 1.3e-7));
        MediumSchedule hour = MediumSchedule.of(Segment.hold(60, 57, 300));

        assertThatIllegalArgumentException().isThrownBy(() -> conduction.run(Double.NaN, hour, new double[] {1}));
        assertThatIllegalArgumentException().isThrownBy(() -> conduction.run(5, hour, new double[] {61}));
        assertThatIllegalArgumentException().isThrownBy(() -> conduction.run(5, hour, new double[] {30, 20}));
        assertThatIllegalArgumentException().isThrownBy(() -> conduction.run(5, hour, new double[] {-1}));
        assertThatIllegalArgumentException().isThrownBy(() -> conduction.runAt(1.5, 5, hour, new double[] {1}));
        assertThatIllegalArgumentException().isThrownBy(() -> Piece.of(0, 0.28));
        assertThatIllegalArgumentException().isThrownBy(() -> Piece.of(50, 2.1));
        assertThatIllegalArgumentException().isThrownBy(() -> Segment.hold(60, 57, -1));
        assertThatIllegalArgumentException().isThrownBy(() -> new Segment(Double.POSITIVE_INFINITY, 20, 110, 15));
        assertThatIllegalArgumentException().isThrownBy(() -> ThermalProperties.constant(0.48, 0));
    }
}
