package org.holdproof.core.log.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.log.Channel;
import org.holdproof.core.log.DateOrder;
import org.holdproof.core.log.LogFault;
import org.holdproof.core.log.LogSettings;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.quantity.TemperatureUnit;

/** Reads logs written out in tests. All data in these tests are synthetic. */
final class Logs {
    static final LogSettings NONE = LogSettings.NONE;
    static final LogSettings OSLO = zone("Europe/Oslo");

    private Logs() {}

    static LogSettings zone(String zone) {
        return new LogSettings(Optional.empty(), Optional.empty(), Optional.of(ZoneId.of(zone)), Optional.empty());
    }

    static LogSettings with(LogSettings settings, TemperatureUnit unit) {
        return new LogSettings(Optional.of(unit), settings.dateOrder(), settings.zone(), settings.start());
    }

    static LogSettings with(LogSettings settings, DateOrder order) {
        return new LogSettings(settings.unit(), Optional.of(order), settings.zone(), settings.start());
    }

    static LogSettings with(LogSettings settings, Instant start) {
        return new LogSettings(settings.unit(), settings.dateOrder(), settings.zone(), Optional.of(start));
    }

    static ProbeLog read(String text, LogSettings settings) {
        return read(text.getBytes(StandardCharsets.UTF_8), settings);
    }

    static ProbeLog read(byte[] bytes, LogSettings settings) {
        try {
            return LogReader.read("log.csv", new ByteArrayInputStream(bytes), settings);
        } catch (UnreadableInputException unreadable) {
            throw new AssertionError("refused: " + unreadable.getMessage(), unreadable);
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
    }

    static UnreadableInputException refused(String text, LogSettings settings) {
        return refused(text.getBytes(StandardCharsets.UTF_8), settings);
    }

    static UnreadableInputException refused(byte[] bytes, LogSettings settings) {
        UnreadableInputException refusal = catchThrowableOfType(
                UnreadableInputException.class,
                () -> LogReader.read("log.csv", new ByteArrayInputStream(bytes), settings));
        assertThat(refusal).as("the refusal of the log").isNotNull();
        assertThat(refusal.getMessage()).startsWith("log.csv");
        return refusal;
    }

    static List<LogFault> faults(ProbeLog log, LogFault.Kind kind) {
        return log.faults().stream().filter(fault -> fault.kind() == kind).toList();
    }

    static List<String> names(ProbeLog log) {
        return log.channels().stream().map(Channel::name).toList();
    }

    static double[] readings(ProbeLog log, int channel) {
        double[] readings = new double[log.rows()];
        for (int row = 0; row < readings.length; row++) {
            readings[row] = log.celsius(channel, row);
        }
        return readings;
    }

    static String instant(ProbeLog log, int row) {
        return Instant.ofEpochMilli(log.millis(row)).toString();
    }
}
