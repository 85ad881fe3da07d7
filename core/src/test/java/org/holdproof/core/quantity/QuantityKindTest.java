package org.holdproof.core.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

class QuantityKindTest {

    /**
     * Factors: NIST Special Publication 811 (2008), appendix B.8: inch 2.54 E-02 m, foot 3.048 E-01 m, pound
     * (avoirdupois) 4.535 923 7 E-01 kg, all exact; ounce (avoirdupois) 1/16 of the pound, printed there as
     * 2.834 952 E-02 kg; t/°C = (t/°F - 32)/1.8; an interval of 1 °F is 5.555 556 E-01 °C. ppm is mg/kg and the K is the
     * °C as an interval (section 4.2.1.1).
     */
    @ParameterizedTest(name = "{0}: {1} is {2}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            textBlock =
                    """
        LENGTH                 | 1 in         | 25.4
        LENGTH                 | 0.1 in       | 2.54
        LENGTH                 | 2.5"         | 63.5
        LENGTH                 | 2.5″         | 63.5
        LENGTH                 | 65 mm        | 65
        LENGTH                 | 6.5 cm       | 65
        LENGTH                 | 0.065m       | 65
        LENGTH                 | 0.1 cm       | 1
        WEIGHT                 | 1 lb         | 0.45359237
        WEIGHT                 | 10 lbs       | 4.5359237
        WEIGHT                 | 16 oz        | 0.45359237
        WEIGHT                 | 1 oz         | 0.028349523125
        WEIGHT                 | 4.2 kg       | 4.2
        WEIGHT                 | 4200 g       | 4.2
        ALTITUDE               | 1 ft         | 0.3048
        ALTITUDE               | -30 m        | -30
        ALTITUDE               | −30 m        | -30
        TEMPERATURE            | 212 °F       | 100
        TEMPERATURE            | 32F          | 0
        TEMPERATURE            | -40 °F       | -40
        TEMPERATURE            | 57 °C        | 57
        TEMPERATURE            | +57C         | 57
        TEMPERATURE            | −18 °C       | -18
        TEMPERATURE            | 57 ºC        | 57
        TEMPERATURE            | 57 ℃         | 57
        TEMPERATURE            | 212 ℉        | 100
        TEMPERATURE            | 212 ºF       | 100
        TEMPERATURE_DIFFERENCE | 9 °F         | 5
        TEMPERATURE_DIFFERENCE | 0.9 F        | 0.5
        TEMPERATURE_DIFFERENCE | 0.5 °C       | 0.5
        TEMPERATURE_DIFFERENCE | ±0.5 °C      | 0.5
        TEMPERATURE_DIFFERENCE | ± 0.5 K      | 0.5
        DAYS                   | 30 d         | 30
        DAYS                   | 1 day        | 1
        DAYS                   | 7 days       | 7
        PERCENT                | 12 %         | 12
        PERCENT                | 3.5%         | 3.5
        PARTS_PER_MILLION      | 120 ppm      | 120
        PARTS_PER_MILLION      | 120 mg/kg    | 120
        """)
    void convertsExactly(QuantityKind kind, String text, double expected) throws Exception {
        assertThat(kind.parse(text)).isEqualTo(expected);
    }

    /** An interval of 1 °F is 5/9 °C: NIST SP 811 (2008), appendix B.8. */
    @ParameterizedTest
    @CsvSource({"1 °F, 0.555555555555555", "2 °F, 1.111111111111111"})
    void convertsATolerance(String text, double expected) throws Exception {
        assertThat(QuantityKind.TEMPERATURE_DIFFERENCE.parse(text)).isCloseTo(expected, within(1e-14));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    @DisplayName("the same quantity in two units is the same figure")
    void unitsAgree(long seed) throws Exception {
        Random random = new Random(seed);
        int figure = random.nextInt(100_000);
        assertThat(QuantityKind.LENGTH.parse(figure + " mm"))
                .isEqualTo(QuantityKind.LENGTH.parse(figure / 10 + "." + figure % 10 + " cm"));
        assertThat(QuantityKind.WEIGHT.parse(16L * figure + " oz"))
                .isEqualTo(QuantityKind.WEIGHT.parse(figure + " lb"));
        assertThat(QuantityKind.LENGTH.parse(12L * figure + " in"))
                .isCloseTo(1000 * QuantityKind.ALTITUDE.parse(figure + " ft"), within(1e-12 * (1 + 305.0 * figure)));
        assertThat(QuantityKind.TEMPERATURE.parse(figure + " °F")
                        - QuantityKind.TEMPERATURE_DIFFERENCE.parse(figure + " °F"))
                .isCloseTo(-32 / 1.8, within(1e-9));
    }

    static LongStream seeds() {
        return LongStream.range(0, 200);
    }

    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            textBlock =
                    """
        LENGTH                 | 65           | Add the unit: mm, cm, m, in or ".
        LENGTH                 | 65,5 mm      | Write a decimal point, not a comma, and no thousands separators.
        ALTITUDE               | 1,500 m      | Write a decimal point, not a comma, and no thousands separators.
        LENGTH                 | 65 kg        | Write one figure and one unit, mm, cm, m, in or ".
        LENGTH                 | 65 MM        | Write one figure and one unit, mm, cm, m, in or ".
        LENGTH                 | 1 500 mm     | Write one figure and one unit, mm, cm, m, in or ".
        LENGTH                 | 2 1/2 in     | Write one figure and one unit, mm, cm, m, in or ".
        LENGTH                 | 6.5.2 mm     | Write one figure and one unit, mm, cm, m, in or ".
        LENGTH                 | 6.mm         | Write one figure and one unit, mm, cm, m, in or ".
        LENGTH                 | .5 mm        | Write one figure and one unit.
        LENGTH                 | 1e3 mm       | Write one figure and one unit, mm, cm, m, in or ".
        LENGTH                 | mm           | Write one figure and one unit.
        LENGTH                 | NaN mm       | Write one figure and one unit.
        LENGTH                 | ±5 mm        | Write one figure and one unit.
        LENGTH                 | 9999999999 mm | Write one figure and one unit, mm, cm, m, in or ".
        WEIGHT                 | 4 lb 6 oz    | Write one figure and one unit, g, kg, lb or oz.
        TEMPERATURE            | 57           | Add the unit: °C or °F.
        TEMPERATURE            | 57 °         | Write one figure and one unit, °C or °F.
        TEMPERATURE            | 57 K         | Write one figure and one unit, °C or °F.
        TEMPERATURE            | Infinity °C  | Write one figure and one unit.
        TEMPERATURE            | ٥٧ °C        | Write one figure and one unit.
        TEMPERATURE_DIFFERENCE | 0.5          | Add the unit: °C, K or °F.
        DAYS                   | 2 weeks      | Write one figure and one unit, d or days.
        PERCENT                | 12           | Add the unit: %.
        PARTS_PER_MILLION      | 120 %        | Write one figure and one unit, ppm or mg/kg.
        """)
    void saysWhatToWrite(QuantityKind kind, String text, String remedy) {
        UnreadableQuantityException fault =
                catchThrowableOfType(UnreadableQuantityException.class, () -> kind.parse(text));
        assertThat(fault.found()).isEqualTo("'" + text + "'");
        assertThat(fault.expected()).isEqualTo(kind.expected());
        assertThat(fault.remedy()).isEqualTo(remedy);
    }

    @ParameterizedTest
    @EnumSource
    void theExampleItOffersCanBeRead(QuantityKind kind) throws Exception {
        assertThat(kind.parse(kind.example())).isPositive();
        assertThat(kind.expected()).startsWith(kind.words()).contains(kind.example());
    }

    @ParameterizedTest
    @EnumSource
    void nothingIsNotZero(QuantityKind kind) {
        assertThatThrownBy(() -> kind.parse("")).isInstanceOf(UnreadableQuantityException.class);
        assertThatThrownBy(() -> kind.parse("  ")).isInstanceOf(UnreadableQuantityException.class);
    }
}
