package org.holdproof.core.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import org.holdproof.core.rules.Source.How;
import org.junit.jupiter.api.Test;

/** surface-coefficients.csv of the reference tables. */
class SurfaceCoefficientTest {

    @Test
    void everyCoefficientIsInOrderAndNamesItsSource() {
        assertThat(SurfaceCoefficient.all()).hasSize(15).allSatisfy(coefficient -> {
            assertThat(coefficient.typical()).isPositive();
            assertThat(coefficient.low().orElse(0)).isLessThan(coefficient.typical());
            assertThat(coefficient.high().orElse(Double.MAX_VALUE)).isGreaterThan(coefficient.typical());
            assertThat(coefficient.sources()).isNotEmpty();
        });
        assertThat(SurfaceCoefficient.all()).extracting(SurfaceCoefficient::id).doesNotHaveDuplicates();
    }

    /** Ryland et al. (2006), 5 lb cooked ham in a walk-in: 5.10 to 9.11 W/(m² K). */
    @Test
    void stillAirIsAsMeasuredOnAHam() {
        SurfaceCoefficient stillAir = SurfaceCoefficient.named("air-walk-in-still");

        assertThat(stillAir.low()).hasValue(5.1);
        assertThat(stillAir.high()).hasValue(9.1);
        assertThat(stillAir.how()).isEqualTo(How.READ);
        assertThat(stillAir.sources()).extracting(source -> source.id()).containsExactly("RYL2006");
    }

    @Test
    void anUnknownNameSaysWhichThereAre() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SurfaceCoefficient.named("steam"))
                .withMessageContaining("steam")
                .withMessageContaining("bath-stirred");
    }
}
