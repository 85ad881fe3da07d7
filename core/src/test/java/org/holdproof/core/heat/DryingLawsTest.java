package org.holdproof.core.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.holdproof.core.heat.MediumSchedule.Segment;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What drying meat obeys whatever the piece and the smoker: random ones, from the seed each test names. */
class DryingLawsTest {
    private static final double TOLERANCE = Conduction.DEFAULT_TOLERANCE_CELSIUS;

    /** Below it no random cook here is overtaken, in °C. */
    private static final double STALL = 50;

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 60);
    }

    /** A random piece in a random smoker held at one temperature. */
    private static final class Cook {
        final SplittableRandom random;
        final Piece piece;
        final ThermalProperties food;
        final double start;
        final double air;
        final double minutes;
        final Exposure exposure;

        Cook(long seed) {
            random = new SplittableRandom(seed);
            piece = Piece.of(between(20, 140), between(0, 2));
            food = ThermalProperties.constant(between(0.4, 0.52), between(1.05e-7, 1.5e-7));
            start = between(0, 20);
            air = between(85, 140);
            minutes = between(120, 900);
            exposure = Exposure.of(
                    Math.exp(between(Math.log(3), Math.log(15))),
                    between(0.3, 0.95),
                    Math.exp(between(Math.log(0.005), Math.log(0.15))),
                    new Wetness(between(0.3, 3), between(0.25, 0.5)));
        }

        double between(double low, double high) {
            return low + (high - low) * random.nextDouble();
        }

        double[] asked() {
            return IntStream.rangeClosed(0, 60)
                    .mapToDouble(i -> minutes * i / 60)
                    .toArray();
        }

        PieceTemperatures run(Piece ofPiece, double inAir, Exposure with) {
            return Conduction.of(ofPiece, food)
                    .run(start, MediumSchedule.of(Segment.bare(minutes, inAir, inAir, with)), asked());
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void hotterAirNeverMakesAColderCore(long seed) {
        Cook cook = new Cook(seed);
        assertNeverColder(
                cook.run(cook.piece, cook.air + cook.between(1, 20), cook.exposure),
                cook.run(cook.piece, cook.air, cook.exposure));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void wetterAirNeverMakesAColderCoreWhereTheSurfaceStaysWet(long seed) {
        Cook cook = new Cook(seed);
        Exposure e = cook.exposure;
        Exposure wet = Exposure.of(e.convection(), e.emissivity(), e.humidityRatio(), Wetness.FOR_EVER);
        Exposure wetter = wet.inAirOf(wet.humidityRatio() * cook.between(1.05, 3));
        assertNeverColder(cook.run(cook.piece, cook.air, wetter), cook.run(cook.piece, cook.air, wet));
    }

    /**
     * Where the surface dries, drier air dries it sooner, and its core may overtake late, in the stall; before the
     * stall wetter air is never slower.
     */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void wetterAirIsNeverSlowerToTheStall(long seed) {
        Cook cook = new Cook(seed);
        Exposure wetter = cook.exposure.inAirOf(cook.exposure.humidityRatio() * cook.between(1.05, 3));
        PieceTemperatures wetterRun = cook.run(cook.piece, cook.air, wetter);
        PieceTemperatures run = cook.run(cook.piece, cook.air, cook.exposure);
        for (int i = 0; i < run.size(); i++) {
            if (run.coreCelsius(i) < STALL) {
                assertThat(wetterRun.coreCelsius(i)).isGreaterThanOrEqualTo(run.coreCelsius(i) - 2 * TOLERANCE);
            }
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void aThickerPieceIsNeverFaster(long seed) {
        Cook cook = new Cook(seed);
        Piece thicker = Piece.of(cook.piece.thicknessMillimetres() * cook.between(1.02, 1.3), cook.piece.shapeFactor());
        assertNeverColder(cook.run(cook.piece, cook.air, cook.exposure), cook.run(thicker, cook.air, cook.exposure));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void aSurfaceThatStaysWetIsTheColdest(long seed) {
        Cook cook = new Cook(seed);
        Exposure e = cook.exposure;
        Exposure wet =
                Exposure.of(e.convection(), e.emissivity(), e.humidityRatio() * cook.between(0.3, 1), Wetness.FOR_EVER);
        assertNeverColder(cook.run(cook.piece, cook.air, e), cook.run(cook.piece, cook.air, wet));
    }

    private static void assertNeverColder(PieceTemperatures hotter, PieceTemperatures colder) {
        for (int i = 0; i < hotter.size(); i++) {
            assertThat(hotter.coreCelsius(i))
                    .as("minute %.0f", hotter.minute(i))
                    .isGreaterThanOrEqualTo(colder.coreCelsius(i) - 2 * TOLERANCE);
        }
    }

    /** Stored heat is the heat that came in less what evaporation took: the surface is asked at a thousand moments. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theHeatThatEntersIsStoredOrEvaporates(long seed) {
        Cook cook = new Cook(seed);
        double[] minutes = IntStream.rangeClosed(0, 1000)
                .mapToDouble(i -> cook.minutes * (0.05 + 0.95 * i / 1000))
                .toArray();
        PieceTemperatures run = Conduction.of(cook.piece, cook.food)
                .within(0.002)
                .run(
                        cook.start,
                        MediumSchedule.of(Segment.bare(cook.minutes, cook.air, cook.air, cook.exposure)),
                        minutes);
        SurfaceBalance surface = new SurfaceBalance(cook.exposure);
        double heat = 0;
        double water = 0;
        double heatBefore = 0;
        double waterBefore = 0;
        for (int i = 0; i < minutes.length; i++) {
            double share = cook.exposure.wetness().share(run.waterLost(i), cook.piece.massPerArea());
            surface.at(run.surfaceCelsius(i), cook.air, share);
            if (i > 0) {
                double seconds = (minutes[i] - minutes[i - 1]) * 60;
                heat += seconds * (heatBefore + surface.heat) / 2;
                water += seconds * (waterBefore + surface.leaving) / 2;
            }
            heatBefore = surface.heat;
            waterBefore = surface.leaving;
        }
        double perKelvin =
                cook.food.heatCapacity(0) * cook.piece.halfThicknessMetres() / (cook.piece.shapeFactor() + 1);
        double rise = run.meanCelsius(minutes.length - 1) - run.meanCelsius(0);
        assertThat(heat / perKelvin).isCloseTo(rise, within(0.01 + 0.001 * Math.abs(rise)));
        assertThat(water).isCloseTo(run.waterLost(minutes.length - 1) - run.waterLost(0), within(2e-3));
    }

    /** No wetness and dry air: convection and radiation alone; and without radiation the solver that knows no drying. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void withoutEvaporationOnlyTheDrySolverIsLeft(long seed) {
        Cook cook = new Cook(seed);
        double h = cook.exposure.convection();
        PieceTemperatures bare = cook.run(cook.piece, cook.air, Exposure.of(h, 0, 0, Wetness.NONE));
        PieceTemperatures dry = Conduction.of(cook.piece, cook.food)
                .run(cook.start, MediumSchedule.of(Segment.hold(cook.minutes, cook.air, h)), cook.asked());
        for (int i = 0; i < dry.size(); i++) {
            assertThat(bare.coreCelsius(i)).isCloseTo(dry.coreCelsius(i), within(2 * TOLERANCE));
            assertThat(bare.surfaceCelsius(i)).isCloseTo(dry.surfaceCelsius(i), within(2 * TOLERANCE));
            assertThat(bare.waterLost(i)).isZero();
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void noMoreWaterLeavesThanCan(long seed) {
        Cook cook = new Cook(seed);
        PieceTemperatures run = cook.run(cook.piece, cook.air, cook.exposure);
        for (int i = 0; i < run.size(); i++) {
            assertThat(run.evaporatedShare(i))
                    .isLessThanOrEqualTo(cook.exposure.wetness().evaporableShare() + 1e-4);
        }
    }

    /** A cold piece in steamy air: water condenses on it and warms it faster than dry air of the same heat does. */
    @Test
    void humidAirCondensesOnAColdPiece() {
        Conduction conduction = Conduction.of(Piece.of(60, 0.3), ThermalProperties.constant(0.48, 1.3e-7));
        double[] minutes = {10, 30, 60};
        PieceTemperatures steamy = conduction.run(
                4, MediumSchedule.of(Segment.bare(60, 90, 90, Exposure.of(6.5, 0.8, 0.5, Wetness.NONE))), minutes);
        PieceTemperatures dry = conduction.run(
                4, MediumSchedule.of(Segment.bare(60, 90, 90, Exposure.of(6.5, 0.8, 0.0, Wetness.NONE))), minutes);

        assertThat(steamy.waterLost(0)).isNegative();
        for (int i = 0; i < minutes.length; i++) {
            assertThat(steamy.surfaceCelsius(i)).isGreaterThan(dry.surfaceCelsius(i) + 5);
        }
    }

    /** Computed with SciPy's brentq from the same equations: 110 °C, 8 W/(m² K), emissivity 0.8, 0.03 kg/kg. */
    @Test
    void aPieceLongInTheAirSettlesWhereNoHeatEnters() {
        Exposure exposure = Exposure.of(8, 0.8, 0.03, Wetness.FOR_EVER);
        assertThat(exposure.settlesAtCelsius(110, 1)).isCloseTo(49.0, within(0.05));
        assertThat(exposure.settlesAtCelsius(110, 0.2)).isCloseTo(67.7, within(0.05));

        PieceTemperatures run = Conduction.of(Piece.of(30, 0), ThermalProperties.constant(0.48, 1.3e-7))
                .run(4, MediumSchedule.of(Segment.bare(3000, 110, 110, exposure)), new double[] {3000});
        assertThat(run.coreCelsius(0)).isCloseTo(49.0, within(0.05));
    }

    @Test
    void whatMakesNoSenseIsRefused() {
        assertThatIllegalArgumentException().isThrownBy(() -> Exposure.of(-1, 0.8, 0.03, Wetness.NONE));
        assertThatIllegalArgumentException().isThrownBy(() -> Exposure.of(8, 1.1, 0.03, Wetness.NONE));
        assertThatIllegalArgumentException().isThrownBy(() -> Exposure.of(8, 0.8, Double.NaN, Wetness.NONE));
        assertThatIllegalArgumentException().isThrownBy(() -> new Wetness(0, 0.4));
        assertThatIllegalArgumentException().isThrownBy(() -> PieceState.uniform(Double.NaN));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> PieceState.uniform(4).celsius(1.5));
    }
}
