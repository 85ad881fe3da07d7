package org.holdproof.core.heat.smoke;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.holdproof.core.heat.MediumSchedule;
import org.holdproof.core.heat.Piece;
import org.holdproof.core.heat.PieceState;
import org.holdproof.core.heat.PieceTemperatures;
import org.holdproof.core.heat.ThermalProperties;
import org.holdproof.core.log.Trace;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What every forecast of a smoke obeys: random pieces and smokers, from the seed each test names. */
class SmokeForecastLawsTest {
    private static final double TOLERANCE = 0.2;

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 60);
    }

    private static final class Case {
        final SplittableRandom random;
        final Piece piece;
        final ThermalProperties food;
        final PieceState start;
        final Smoke smoke;

        Case(long seed) {
            random = new SplittableRandom(seed);
            piece = Piece.of(random.nextDouble(25, 130), random.nextDouble(0, 1.5));
            food = ThermalProperties.constant(0.48, random.nextDouble(1.05e-7, 1.5e-7));
            start = PieceState.uniform(random.nextDouble(0, 15));
            smoke = Smoke.held(random.nextDouble(90, 135), random.nextDouble(60, 900));
        }

        SmokeForecast forecast() {
            return SmokeForecast.of(piece, food, start, smoke);
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void slowIsNeverFasterThanNominalNorThatThanFast(long seed) {
        SmokeForecast forecast = new Case(seed).forecast();
        PieceTemperatures nominal = forecast.nominal();
        for (int i = 0; i < nominal.size(); i++) {
            assertThat(forecast.slow().coreCelsius(i)).isLessThanOrEqualTo(nominal.coreCelsius(i) + TOLERANCE);
            assertThat(nominal.coreCelsius(i))
                    .isLessThanOrEqualTo(forecast.fast().coreCelsius(i) + TOLERANCE);
        }
        Arrival arrival = forecast.coreReaches(55);
        arrival.likely().ifPresent(likely -> assertThat(arrival.earliest().orElseThrow())
                .isLessThanOrEqualTo(likely));
        arrival.latest()
                .ifPresent(latest -> assertThat(arrival.likely().orElseThrow()).isLessThanOrEqualTo(latest));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void nothingIsColderThanAPieceThatStaysWet(long seed) {
        Case cook = new Case(seed);
        PieceTemperatures bound =
                SmokeForecast.alwaysWet(cook.piece, cook.food, cook.start, cook.smoke, cook.random.nextDouble(0, 15));
        PieceTemperatures slow = cook.forecast().slow();
        for (int i = 0; i < slow.size(); i++) {
            assertThat(bound.coreCelsius(i)).isLessThanOrEqualTo(slow.coreCelsius(i) + TOLERANCE);
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void aWrappedPieceLosesNoMoreWater(long seed) {
        Case cook = new Case(seed);
        double from = cook.smoke.minutes() * cook.random.nextDouble(0.2, 0.8);
        PieceTemperatures run = SmokeForecast.of(cook.piece, cook.food, cook.start, cook.smoke.wrappedFrom(from))
                .nominal();
        for (int i = 1; i < run.size(); i++) {
            if (run.minute(i - 1) >= from) {
                assertThat(run.waterLost(i)).isEqualTo(run.waterLost(i - 1));
            }
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void aWetBulbReadingNarrowsTheForecastToTheStall(long seed) {
        Case cook = new Case(seed);
        SmokeForecast known = SmokeForecast.of(cook.piece, cook.food, cook.start, cook.smoke.withWetBulb(45));
        SmokeForecast unknown = cook.forecast();
        for (int i = 0; i < known.nominal().size(); i++) {
            if (unknown.fast().coreCelsius(i) < 50) {
                double width = known.fast().coreCelsius(i) - known.slow().coreCelsius(i);
                assertThat(width)
                        .isLessThanOrEqualTo(
                                unknown.fast().coreCelsius(i) - unknown.slow().coreCelsius(i) + TOLERANCE);
            }
        }
    }

    @Test
    void aLogOfHeldAirIsHeldAir() {
        Trace air = new Trace("air", new long[] {600_000, 1_200_000, 9_000_000}, new double[] {110, 110, 110});
        Smoke logged = Smoke.logged(air, 0, 7_200_000);

        assertThat(logged.minutes()).isCloseTo(120, within(1e-9));
        assertThat(logged.meanAirCelsius()).isCloseTo(110, within(1e-9));
        PieceState start = PieceState.uniform(4);
        ThermalProperties food = ThermalProperties.constant(0.48, 1.3e-7);
        assertThat(SmokeForecast.of(Piece.of(60, 0.3), food, start, logged)
                        .nominal()
                        .end()
                        .coreCelsius())
                .isCloseTo(
                        SmokeForecast.of(Piece.of(60, 0.3), food, start, Smoke.held(110, 120))
                                .nominal()
                                .end()
                                .coreCelsius(),
                        within(0.05));
    }

    @Test
    void aLogIsCutWhereThePieceWentInAndOut() {
        Trace air = new Trace("air", new long[] {0, 6_000_000}, new double[] {20, 120});
        Smoke smoke = Smoke.logged(air, 1_500_000, 4_500_000);
        MediumSchedule schedule = smoke.at(0);

        assertThat(smoke.minutes()).isCloseTo(50, within(1e-9));
        assertThat(schedule.celsius(0)).isCloseTo(45, within(1e-9));
        assertThat(schedule.celsius(50)).isCloseTo(95, within(1e-9));
    }

    @Test
    void airNoWetBulbCanBelongToIsRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Smoke.held(110, 60).withWetBulb(20))
                .withMessageContaining("driest");
        assertThatIllegalArgumentException().isThrownBy(() -> Smoke.held(110, 0));
    }
}
