package org.holdproof.core.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.holdproof.core.quantity.Predicted;
import org.holdproof.core.rules.TenderPoint;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The time to tender against the published and trade points it was drawn through, by Commons Math's regression. */
class TenderTimeTest {
    private static final QualityModels MODELS = QualityModels.builtIn();
    private static final double GAS_CONSTANT = 8.314462618e-3;

    /** ln(hours) against 1/RT, counted from 70 °C. */
    private static SimpleRegression regression(List<TenderPoint> points) {
        SimpleRegression regression = new SimpleRegression();
        points.forEach(point -> regression.addData(
                (1 / (point.celsius() + 273.15) - 1 / 343.15) / GAS_CONSTANT,
                (Math.log(point.lowHours()) + Math.log(point.highHours())) / 2));
        return regression;
    }

    private static List<TenderPoint> used() {
        return MODELS.tables().tenderPoints().stream().filter(TenderPoint::used).toList();
    }

    /** 104 +- 16 kJ/mol, 9.9 h at 70 °C, scatter 1.9; 97, 7.7 h and 2.0 without the trade's. */
    @Test
    void parametersAreTheRegressionOfTheShippedPoints() {
        SimpleRegression all = regression(used());
        Predicted energy = MODELS.range("tender-energy");

        assertThat(used()).hasSize(10);
        assertThat(energy.central()).isCloseTo(all.getSlope(), within(0.01));
        assertThat(energy.low()).isCloseTo(all.getSlope() - all.getSlopeStdErr(), within(0.01));
        assertThat(energy.high()).isCloseTo(all.getSlope() + all.getSlopeStdErr(), within(0.01));
        assertThat(MODELS.range("tender-hours-70").central()).isCloseTo(Math.exp(all.getIntercept()), within(0.001));
        assertThat(MODELS.tenderTime().scatter())
                .isCloseTo(Math.exp(Math.sqrt(all.getMeanSquareError())), within(0.001));
        SimpleRegression published = regression(used().stream()
                .filter(point -> !point.citation().text().contains("common practice"))
                .toList());
        assertThat(published.getN()).isEqualTo(6);
        assertThat(published.getSlope()).isCloseTo(97, within(0.5));
        assertThat(Math.exp(published.getIntercept())).isCloseTo(7.7, within(0.05));
    }

    /** Each point's residual in ln(hours), as first reckoned with NumPy. */
    @Test
    void everyPointKeepsItsResidual() {
        Map<String, Double> residuals = Map.of(
                "te01", 0.1, "te02", 0.7, "te03", -0.1, "te04", -0.6, "te05", -0.4, "te06", -1.1, "te07", 0.8, "te08",
                0.8, "te09", 0.0, "te10", -0.2);

        assertThat(used()).allSatisfy(point -> {
            double observed = (Math.log(point.lowHours()) + Math.log(point.highHours())) / 2;
            assertThat(observed - Math.log(MODELS.tenderTime().likeliest().hoursAt(point.celsius())))
                    .isCloseTo(residuals.get(point.id()), within(0.051));
        });
    }

    /** Core held at, hours: the middle, the energies' ends, the ends of two of three cases; as first reckoned with NumPy. */
    @ParameterizedTest(name = "{0} °C")
    @CsvSource({
        "55,   52.6, 41.4, 66.9, 21.3, 130.1",
        "57.2, 40.8, 33.4, 49.9, 17.2, 97.0",
        "62.8, 21.7, 19.5, 24.1, 10.0, 46.8",
        "68.3, 11.9, 11.7, 12.1, 6.0,  23.5",
        "75,   5.9,  5.3,  6.4,  2.7,  12.5",
        "85,   2.1,  1.7,  2.7,  0.9,  5.3",
        "93,   1.0,  0.7,  1.4,  0.4,  2.8"
    })
    void hoursToTender(double celsius, double middle, double low, double high, double least, double most) {
        Predicted lines = MODELS.tenderTime().hoursAt(celsius);
        double scatter = MODELS.tenderTime().scatter();

        assertThat(lines.central()).isCloseTo(middle, within(0.06));
        assertThat(lines.low()).isCloseTo(low, within(0.06));
        assertThat(lines.high()).isCloseTo(high, within(0.06));
        assertThat(lines.low() / scatter).isCloseTo(least, within(0.06));
        assertThat(lines.high() * scatter).isCloseTo(most, within(0.1));
    }

    @Test
    void timeBelowFiftyDegreesCountsForNothing() {
        assertThat(MODELS.tenderTime().likeliest().softening(Histories.held(49.9, 100)))
                .isZero();
        double crossing = MODELS.tenderTime().likeliest().softening(Histories.through(0, 40, 200, 60));
        double half = MODELS.tenderTime().likeliest().softening(Histories.through(0, 50, 100, 60));
        assertThat(crossing).isCloseTo(half, within(1e-12));
    }
}
