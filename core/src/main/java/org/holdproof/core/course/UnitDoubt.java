package org.holdproof.core.course;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.batch.ColumnRole;
import org.holdproof.core.batch.ColumnUse;
import org.holdproof.core.batch.LogSource;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.log.Channel;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.quantity.TemperatureUnit;

/**
 * A column whose readings, as its unit has them, are far from what the bath or smoker was set to, and in the other unit,
 * or as tenths, lie at it: its unit is wrong. The distances are common practice, no source.
 *
 * @param channel the column
 * @param stage the stage
 * @param setCelsius what it was set to, in °C
 * @param readCelsius the middle of its readings as read, in °C
 * @param meant what they would be, such as {@code 60.1 °C if they are °F}
 */
public record UnitDoubt(Channel channel, Stage stage, double setCelsius, double readCelsius, String meant) {
    private static final double FAR = 15;
    private static final double NEAR = 4;
    private static final int ENOUGH = 3;

    /** The first doubt about the columns of a log, from the stages that ran at a set point. */
    public static Optional<UnitDoubt> in(ProbeLog log, LogSource source, List<Stage> stages) {
        for (Stage stage : stages) {
            if (!stage.kind().isCook() || stage.setPointCelsius().isEmpty()) {
                continue;
            }
            ColumnRole medium = stage.kind() == Stage.Kind.BATH ? ColumnRole.BATH : ColumnRole.AIR;
            for (ColumnUse use : source.columns()) {
                Optional<Integer> channel = log.channelNamed(use.heading());
                boolean core = use.role() == ColumnRole.CORE && stage.kind() == Stage.Kind.BATH;
                if (channel.isEmpty() || !(use.role() == medium || core)) {
                    continue;
                }
                double[] readings = readings(log, channel.get(), source, use, stage);
                if (readings.length >= ENOUGH) {
                    Optional<UnitDoubt> doubt = doubt(log.channels().get(channel.get()), stage, settled(readings));
                    if (doubt.isPresent()) {
                        return doubt;
                    }
                }
            }
        }
        return Optional.empty();
    }

    private static double[] readings(ProbeLog log, int channel, LogSource source, ColumnUse use, Stage stage) {
        double[] readings = new double[log.rows()];
        int count = 0;
        for (int row = 0; row < log.rows(); row++) {
            long millis = log.millis(row) - source.clock().aheadMillis();
            double celsius = log.celsius(channel, row);
            boolean inside = millis >= stage.from().toEpochMilli()
                    && stage.to().map(to -> millis <= to.toEpochMilli()).orElse(true);
            if (inside && use.holdsAt(millis) && !Double.isNaN(celsius)) {
                readings[count++] = celsius;
            }
        }
        return Arrays.copyOf(readings, count);
    }

    /** The middle of the last third, when what was cold has come to the medium. */
    private static double settled(double[] readings) {
        double[] late = Arrays.copyOfRange(readings, readings.length * 2 / 3, readings.length);
        Arrays.sort(late);
        return late[late.length / 2];
    }

    private static Optional<UnitDoubt> doubt(Channel channel, Stage stage, double celsius) {
        double set = stage.setPointCelsius().getAsDouble();
        if (Math.abs(celsius - set) <= FAR) {
            return Optional.empty();
        }
        boolean readAsCelsius = channel.unit() == TemperatureUnit.CELSIUS;
        double figure = channel.unit().fromCelsius(celsius);
        TemperatureUnit other = readAsCelsius ? TemperatureUnit.FAHRENHEIT : TemperatureUnit.CELSIUS;
        double asOther = other.toCelsius(figure);
        double asTenths = channel.unit().toCelsius(figure / 10);
        if (Math.abs(asOther - set) <= NEAR) {
            return Optional.of(new UnitDoubt(
                    channel, stage, set, celsius, "%.1f °C if they are %s".formatted(asOther, other.symbol())));
        }
        return Math.abs(asTenths - set) <= NEAR
                ? Optional.of(new UnitDoubt(
                        channel, stage, set, celsius, "%.1f °C if they are tenths of a degree".formatted(asTenths)))
                : Optional.empty();
    }
}
