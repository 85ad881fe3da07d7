package org.holdproof.core.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static org.holdproof.core.heat.HeatReference.number;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Every value of psychrometrics.csv within its own tolerance; its {@code source} and {@code how} say where it is from. */
class PsychrometricsTest {
    /** Stull's formula is said to miss by −1 to +0.65 °C. */
    private static final double STULL_TOO_LOW = 1;

    private static final double STULL_TOO_HIGH = 0.65;

    static Stream<Arguments> values() {
        return HeatReference.rows("psychrometrics.csv").stream()
                .map(row -> Arguments.of(
                        row.getField("quantity") + " " + row.getField("air_C") + " " + row.getField("humidity_ratio"),
                        row));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("values")
    void agreesWithinTheTolerance(String name, NamedCsvRecord row) {
        double air = number(row, "air_C");
        double pressure =
                row.getField("pressure_Pa").isEmpty() ? Psychrometrics.SEA_LEVEL_PASCAL : number(row, "pressure_Pa");
        double value = number(row, "value");
        double tolerance =
                number(row, "tolerance") * (row.getField("tolerance_kind").equals("relative") ? value : 1);

        double found =
                switch (row.getField("quantity")) {
                    case "saturation_pressure_Pa" -> Psychrometrics.saturationPascal(air);
                    case "saturation_humidity_ratio" ->
                        Psychrometrics.humidityRatio(Psychrometrics.saturationPascal(air), pressure);
                    case "humidity_ratio" -> Psychrometrics.humidityRatioAt(air, number(row, "wet_bulb_C"), pressure);
                    case "wet_bulb_C" -> Psychrometrics.wetBulbCelsius(air, ratio(row, air, pressure), pressure);
                    case "wet_bulb_stull_C" -> stull(air, number(row, "relative_humidity_pct"));
                    case "latent_heat_J_kg" -> Psychrometrics.latentHeat(air);
                    default -> throw new IllegalStateException(row.toString());
                };
        assertThat(found).isCloseTo(value, within(tolerance));
    }

    private static double ratio(NamedCsvRecord row, double air, double pressure) {
        if (!row.getField("humidity_ratio").isEmpty()) {
            return number(row, "humidity_ratio");
        }
        double vapour = number(row, "relative_humidity_pct") / 100 * Psychrometrics.saturationPascal(air);
        return Psychrometrics.humidityRatio(vapour, pressure);
    }

    /** Stull 2011, at sea level and to 50 °C only; from memory. Not used in the product: smokers are hotter. */
    private static double stull(double celsius, double percent) {
        return celsius * Math.atan(0.151977 * Math.sqrt(percent + 8.313659))
                + Math.atan(celsius + percent)
                - Math.atan(percent - 1.676331)
                + 0.00391838 * Math.pow(percent, 1.5) * Math.atan(0.023101 * percent)
                - 4.686035;
    }

    @ParameterizedTest(name = "{0} % at 20 °C")
    @MethodSource("humidities")
    void differsFromStullByNoMoreThanHeSays(double percent) {
        double vapour = percent / 100 * Psychrometrics.saturationPascal(20);
        double ratio = Psychrometrics.humidityRatio(vapour, Psychrometrics.SEA_LEVEL_PASCAL);
        double wetBulb = Psychrometrics.wetBulbCelsius(20, ratio, Psychrometrics.SEA_LEVEL_PASCAL);

        assertThat(stull(20, percent) - wetBulb).isBetween(-STULL_TOO_LOW, STULL_TOO_HIGH);
    }

    static Stream<Double> humidities() {
        return Stream.of(20.0, 50.0, 80.0, 95.0);
    }

    @Test
    @DisplayName("a wet bulb and the humidity it means give each other, and lie in order")
    void theWetBulbReadsBack() {
        for (double air = 20; air <= 160; air += 20) {
            double before = -50;
            for (double ratio = 0.002; ratio < 0.5 && ratio < saturated(air); ratio *= 1.7) {
                double wetBulb = Psychrometrics.wetBulbCelsius(air, ratio, Psychrometrics.SEA_LEVEL_PASCAL);
                assertThat(wetBulb).isGreaterThan(before).isLessThanOrEqualTo(air);
                assertThat(Psychrometrics.humidityRatioAt(air, wetBulb, Psychrometrics.SEA_LEVEL_PASCAL))
                        .isCloseTo(ratio, within(1e-7));
                before = wetBulb;
            }
        }
    }

    private static double saturated(double celsius) {
        double vapour = Psychrometrics.saturationPascal(celsius);
        return vapour < Psychrometrics.SEA_LEVEL_PASCAL
                ? Psychrometrics.humidityRatio(vapour, Psychrometrics.SEA_LEVEL_PASCAL)
                : Double.POSITIVE_INFINITY;
    }

    @Test
    void theGrowthOfThePressureIsItsSlope() {
        for (double celsius = 1; celsius < 180; celsius += 7) {
            double slope =
                    (Psychrometrics.saturationPascal(celsius + 1e-3) - Psychrometrics.saturationPascal(celsius - 1e-3))
                            / 2e-3;
            assertThat(Psychrometrics.saturationGrowth(celsius) * Psychrometrics.saturationPascal(celsius))
                    .isCloseTo(slope, within(1e-5 * slope));
        }
    }

    @Test
    void airThatCannotBeIsRefused() {
        assertThatIllegalArgumentException().isThrownBy(() -> Psychrometrics.humidityRatioAt(110, 111, 101_325));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Psychrometrics.humidityRatioAt(110, 20, 101_325))
                .withMessageContaining("driest");
        assertThatIllegalArgumentException().isThrownBy(() -> Psychrometrics.humidityRatioAt(130, 101, 101_325));
        assertThatIllegalArgumentException().isThrownBy(() -> Psychrometrics.humidityRatio(101_325, 101_325));
    }
}
