package org.holdproof.core.heat.smoke;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import org.holdproof.core.heat.ThermalProperties;
import org.holdproof.core.heat.UnfitLogException;
import org.holdproof.core.heat.smoke.SmokeOutlook.Known;
import org.holdproof.core.log.Trace;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Three published logs of bare pieces of unknown size, looked ahead from. The expected hours were computed by SciPy's
 * least_squares and a march of its own from the same equations; the true ones are the log's.
 */
class SmokeOutlookTest {
    private static final ThermalProperties FOOD = ThermalProperties.constant(0.48, 1.3e-7);

    private static SmokeOutlook outlook(String log, double hours) throws UnfitLogException {
        int minutes = (int) Math.round(hours * 60);
        Trace core = SmokerLogs.everyMinute(log.equals("P") ? "LOG2-P" : "LOG1-" + log, minutes);
        Trace air = SmokerLogs.everyMinute(log.equals("P") ? "LOG2-AIR" : "LOG1-AIR", minutes);
        return SmokeOutlook.of(Known.ofShape(1), FOOD, core, air, 0);
    }

    @ParameterizedTest(name = "log {0} after {1} h to {2} °C")
    @CsvSource({
        // log, hours, target, likely, earliest, latest, true (or a time at which it was not there)
        "A, 1.0, 60, 3.3, 1.9, 4.6, 2.2", "A, 1.5, 60, 2.6, 2.1, 4.2, 2.2", "A, 1.5, 65.6, 3.6, 2.4, 6.6, 2.7",
        "A, 2.0, 60, 2.2, 2.2, 2.2, 2.2", "A, 2.0, 65.6, 2.8, 2.6, 5.8, 2.7", "A, 2.0, 71.1, 3.7, 3.0, 8.2, 3.6",
        "A, 2.5, 65.6, 2.8, 2.7, 5.1, 2.7", "A, 3.0, 71.1, 3.4, 3.4, 7.0, 3.6", "B, 1.0, 60, 3.0, 2.3, 5.3, 2.5",
        "B, 1.0, 68, 4.3, 3.0, 9.0, 4.8", "B, 1.5, 65.6, 3.1, 2.9, 7.5, 3.3", "B, 2.0, 60, 2.4, 2.4, 2.7, 2.5",
        "B, 2.0, 65.6, 2.9, 2.9, 6.5, 3.3", "B, 2.5, 65.6, 3.0, 3.0, 5.7, 3.3", "B, 4.0, 68, 4.3, 4.2, 7.6, 4.8",
        "P, 1.0, 60, 4.7, 2.9, 7.9, 3.7", "P, 1.5, 60, 5.7, 3.2, 8.2, 3.7", "P, 1.5, 65.6, 8.1, 3.9, 11.9, 4.9",
        "P, 2.0, 65.6, 6.1, 3.6, 8.9, 4.9", "P, 3.0, 60, 3.7, 3.5, 4.0, 3.7", "P, 3.0, 65.6, 4.6, 3.9, 6.3, 4.9",
        "P, 4.0, 65.6, 4.7, 4.5, 6.5, 4.9", "P, 5.0, 68, 5.4, 5.3, 7.2, 6.0"
    })
    void looksAheadAsComputedAndItsIntervalHolds(
            String log, double hours, double target, double likely, double earliest, double latest, double truth)
            throws UnfitLogException {
        Arrival found = outlook(log, hours).reckoned(target);

        assertThat(found.likely().orElseThrow() / 60).isCloseTo(likely, within(0.1));
        assertThat(found.earliest().orElseThrow() / 60).isCloseTo(earliest, within(0.1));
        assertThat(found.latest().orElseThrow() / 60).isCloseTo(latest, within(0.15));
        assertThat(truth)
                .isBetween(
                        found.earliest().getAsDouble() / 60 - 0.1,
                        found.latest().getAsDouble() / 60 + 0.1);
    }

    /** Log B was not at 71.1 °C after 6.5 h, whatever hour it was looked ahead from. */
    @ParameterizedTest(name = "log B after {0} h")
    @CsvSource({"1", "2", "3", "4", "5"})
    void whereThePointMisledTheLatestTimeDidNot(double hours) throws UnfitLogException {
        SmokeOutlook outlook = outlook("B", hours);

        assertThat(outlook.reckoned(71.1).likely().orElseThrow() / 60).isLessThan(6.5);
        assertThat(outlook.coreReaches(71.1).likely()).isEmpty();
        assertThat(outlook.coreReaches(71.1).latest().orElseThrow() / 60).isGreaterThan(6.5);
    }

    @Test
    void aPointIsGivenOnlyWhereItProvedGood() throws UnfitLogException {
        assertThat(outlook("A", 1.0).coreReaches(60).likely()).isEmpty();
        double point = outlook("A", 2.0).coreReaches(60).likely().orElseThrow() / 60;
        assertThat(point).isCloseTo(2.2, within(0.04 * 2.2 + 0.05));
        assertThat(outlook("A", 4.5).stalls()).isTrue();
        assertThat(outlook("A", 4.5).coreReaches(72.5).likely()).isEmpty();
    }

    @Test
    void theFittedSizesArePlausible() throws UnfitLogException {
        assertThat(outlook("A", 3).piece().thicknessMillimetres() / 2).isCloseTo(38, within(1.0));
        assertThat(outlook("B", 3).piece().thicknessMillimetres() / 2).isCloseTo(43, within(1.0));
        assertThat(outlook("P", 3).piece().thicknessMillimetres() / 2).isCloseTo(47, within(1.0));
        assertThat(outlook("P", 3).pace()).isCloseTo(-0.35, within(0.05));
    }

    @Test
    void tooShortALogIsRefused() {
        assertThatExceptionOfType(UnfitLogException.class)
                .isThrownBy(() -> outlook("A", 0.5))
                .withMessageContaining("less than an hour");
    }
}
