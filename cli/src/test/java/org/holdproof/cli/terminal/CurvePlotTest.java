package org.holdproof.cli.terminal;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.quantity.TemperatureUnit;
import org.junit.jupiter.api.Test;

/** Small invented traces whose picture can be told beforehand. */
class CurvePlotTest {
    private static final long HOUR = 3_600_000;
    private static final int LEFT = 7;

    @Test
    void aStraightRiseRunsFromBottomLeftToTopRight() {
        List<String> lines = plot(new double[] {0, 100}, 100, Optional.empty()).lines(10, true);
        assertThat(lines).hasSize(12).allMatch(line -> line.length() <= Terminal.WIDTH);
        for (int row = 0; row < 10; row++) {
            String curve = lines.get(row).substring(LEFT);
            int first = curve.length() - curve.stripLeading().length();
            assertThat(first).as("row %d", row).isBetween((9 - row) * 7, (10 - row) * 8);
        }
        assertThat(lines.get(0)).startsWith("  100 ┤");
        assertThat(lines.get(9)).startsWith("    0 ┤");
    }

    @Test
    void anIntervalLongerThanAGapIsLeftOpen() {
        String row = plot(new double[] {50, 50}, 3, Optional.empty()).lines(5, false).stream()
                .map(line -> line.substring(Math.min(line.length(), LEFT)))
                .filter(line -> line.contains("'") || line.contains("."))
                .findFirst()
                .orElseThrow();
        assertThat(row.strip().chars().filter(c -> c == ' ').count()).isGreaterThan(60);
    }

    @Test
    void theLimitIsARowOfItsOwnWithItsFigure() {
        List<String> lines = plot(new double[] {0, 100}, 100, Optional.of(new Boundary(54.4, TemperatureUnit.CELSIUS)))
                .lines(9, false);
        List<String> limit =
                lines.stream().filter(line -> line.contains("-----")).toList();
        assertThat(limit).hasSizeGreaterThanOrEqualTo(1);
        assertThat(limit.get(0)).startsWith(" 54.4 +");
        assertThat(lines.indexOf(limit.get(0))).isBetween(3, 5);
    }

    @Test
    void aPlainTerminalGetsAsciiOnly() {
        List<String> lines = plot(
                        new double[] {0, 100, 20}, 100, Optional.of(new Boundary(130, TemperatureUnit.FAHRENHEIT)))
                .lines(9, false);
        assertThat(lines).allMatch(line -> line.chars().allMatch(c -> c < 0x80));
    }

    @Test
    void stagesStandUnderTheirTime() {
        List<String> lines =
                plot(new double[] {0, 100, 20}, 100, Optional.empty()).lines(9, true);
        String ruler = lines.get(9).substring(LEFT);
        assertThat(ruler.indexOf("├bath")).isZero();
        assertThat(ruler.indexOf("├chill")).isBetween(35, 38);
        assertThat(lines.get(10)).contains("2031-02-10 12:00").endsWith("2031-02-10 14:00");
    }

    @Test
    void aCookWithoutADateShowsTheTimeSinceItsStart() {
        List<String> lines =
                plot(new double[] {0, 100, 20}, 100, Optional.empty()).linesFromStart(9, true);
        assertThat(lines.get(10).strip()).startsWith("0 h ").endsWith(" 2 h");
        assertThat(lines.get(10)).doesNotContain("2031");
    }

    private static CurvePlot plot(double[] celsius, double gapMinutes, Optional<Boundary> limit) {
        long start = Instant.parse("2031-02-10T12:00:00Z").toEpochMilli();
        long[] millis = new long[celsius.length];
        for (int i = 0; i < millis.length; i++) {
            millis[i] = start + i * HOUR;
        }
        long end = millis[millis.length - 1];
        Instant middle = Instant.ofEpochMilli((start + end) / 2);
        return new CurvePlot(
                new Trace("Core", millis, celsius),
                new Span(start, end),
                TemperatureUnit.CELSIUS,
                limit,
                List.of(
                        new Stage(
                                Stage.Kind.BATH,
                                Instant.ofEpochMilli(start),
                                Optional.of(middle),
                                OptionalDouble.empty()),
                        new Stage(
                                Stage.Kind.CHILL,
                                middle,
                                Optional.of(Instant.ofEpochMilli(end)),
                                OptionalDouble.empty())),
                ZoneOffset.UTC,
                gapMinutes);
    }
}
