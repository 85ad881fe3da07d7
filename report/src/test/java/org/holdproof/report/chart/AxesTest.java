package org.holdproof.report.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.List;
import org.holdproof.report.draw.Lettering;
import org.holdproof.report.draw.Typesetter;
import org.holdproof.report.font.ReportFonts;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AxesTest {
    private static final Lettering TICK = Lettering.soft(7);
    private static final ZoneId ZONE = ZoneId.of("America/Chicago");
    private final Typesetter type = new Typesetter(ReportFonts.load());

    @Test
    void theDateStandsAtTheFirstTickAndWhereItChanges() {
        List<TimeAxis.Tick> ticks = axis(
                        ZonedDateTime.of(2031, 6, 3, 15, 20, 0, 0, ZONE),
                        ZonedDateTime.of(2031, 6, 4, 9, 0, 0, 0, ZONE))
                .ticks(type, TICK);
        assertThat(ticks.get(0).date()).isEqualTo("Tue 3 Jun");
        assertThat(ticks)
                .filteredOn(tick -> !tick.date().isEmpty())
                .extracting(TimeAxis.Tick::time, TimeAxis.Tick::date)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple(ticks.get(0).time(), "Tue 3 Jun"),
                        org.assertj.core.groups.Tuple.tuple("00:00", "Wed 4 Jun"));
    }

    /** Clocks in Chicago went from 02:00 to 03:00 on 9 March 2031 (IANA time zone database, rule US, from 2007). */
    @Test
    void anHourTheClockLeavesOutHasNoTick() {
        List<TimeAxis.Tick> ticks = axis(
                        ZonedDateTime.of(2031, 3, 8, 22, 0, 0, 0, ZONE), ZonedDateTime.of(2031, 3, 9, 6, 0, 0, 0, ZONE))
                .ticks(type, TICK);
        assertThat(ticks)
                .extracting(TimeAxis.Tick::time)
                .containsSubsequence("22:00", "00:00", "01:00", "03:00", "04:00")
                .doesNotContain("02:00")
                .doesNotHaveDuplicates();
    }

    /** An hour that comes twice (2 November 2031, 01:00 to 02:00) is marked at its first coming. */
    @Test
    void ticksRunForwardWhereAnHourComesTwice() {
        TimeAxis axis =
                axis(ZonedDateTime.of(2031, 11, 1, 23, 0, 0, 0, ZONE), ZonedDateTime.of(2031, 11, 2, 5, 0, 0, 0, ZONE));
        List<TimeAxis.Tick> ticks = axis.ticks(type, TICK);
        for (int i = 1; i < ticks.size(); i++) {
            assertThat(ticks.get(i).epochMillis())
                    .isGreaterThan(ticks.get(i - 1).epochMillis());
        }
    }

    @ParameterizedTest
    @CsvSource({"1", "7", "60", "700", "5000", "20000", "500000"})
    void tickLabelsHaveRoom(long minutes) {
        long from = ZonedDateTime.of(2031, 5, 2, 3, 4, 5, 0, ZONE).toInstant().toEpochMilli();
        TimeAxis axis = new TimeAxis(0, 480, from, from + minutes * 60_000, ZONE);
        List<TimeAxis.Tick> ticks = axis.ticks(type, TICK);
        for (int i = 1; i < ticks.size(); i++) {
            String label = ticks.get(i).time().isEmpty()
                    ? ticks.get(i).date()
                    : ticks.get(i).time();
            assertThat(axis.x(ticks.get(i).epochMillis())
                            - axis.x(ticks.get(i - 1).epochMillis()))
                    .isGreaterThan(type.width(TICK, label));
        }
    }

    @ParameterizedTest
    @CsvSource({"-3, 96", "0, 6.5", "53.9, 54.2", "20, 20", "-40, 212", "0, 1234"})
    void aValueAxisHoldsItsRangeOnRoundFigures(double low, double high) {
        ValueAxis axis = ValueAxis.around(0, 150, low, high, 6);
        assertThat(axis.low()).isLessThanOrEqualTo(low + 1e-9);
        assertThat(axis.high()).isGreaterThanOrEqualTo(high - 1e-9).isGreaterThan(axis.low());
        assertThat(axis.y(axis.low())).isEqualTo(150);
        assertThat(axis.y(axis.high())).isEqualTo(0);
        assertThat(axis.ticks(6)).hasSizeBetween(2, 14);
    }

    private static TimeAxis axis(ZonedDateTime from, ZonedDateTime to) {
        return new TimeAxis(
                30, 480, from.toInstant().toEpochMilli(), to.toInstant().toEpochMilli(), ZONE);
    }
}
