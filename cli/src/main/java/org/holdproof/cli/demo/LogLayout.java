package org.holdproof.cli.demo;

import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.holdproof.core.quantity.TemperatureUnit;

/** Four of the many ways a logger may write its file. */
enum LogLayout {
    /** Commas, ISO times without offset, °F, a few lines before the heading. */
    PREAMBLE_FAHRENHEIT {
        @Override
        String write(Readings readings) {
            StringBuilder file = new StringBuilder(
                    """
                    Logger,Bench logger 2 (simulated)
                    Interval,60 s

                    Timestamp,Core (°F),Smoker (°F),Bath (°F)
                    """);
            DateTimeFormatter clock = DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm:ss", Locale.ROOT);
            for (int minute = 0; minute < readings.minutes(); minute++) {
                if (!readings.isLost(minute)) {
                    file.append(clock.format(readings.time(minute)))
                            .append(cells(readings, minute, TemperatureUnit.FAHRENHEIT, ',', '.'))
                            .append('\n');
                }
            }
            return file.toString();
        }
    },
    /** Semicolons, decimal commas, date and time in two columns, °C. */
    SEMICOLON_CELSIUS {
        @Override
        String write(Readings readings) {
            StringBuilder file = new StringBuilder("Date;Time;Core [°C];Smoker [°C];Bath [°C]\r\n");
            DateTimeFormatter clock = DateTimeFormatter.ofPattern("dd.MM.yyyy;HH:mm:ss", Locale.ROOT);
            for (int minute = 0; minute < readings.minutes(); minute++) {
                if (!readings.isLost(minute)) {
                    file.append(clock.format(readings.time(minute)))
                            .append(cells(readings, minute, TemperatureUnit.CELSIUS, ';', ','))
                            .append("\r\n");
                }
            }
            return file.toString();
        }
    },
    /** Tabs, time since the start, °C; the start stands in the batch record. */
    ELAPSED_TABS {
        @Override
        String write(Readings readings) {
            StringBuilder file = new StringBuilder("Elapsed\tCore °C\tSmoker °C\tBath °C\n");
            for (int minute = 0; minute < readings.minutes(); minute++) {
                if (!readings.isLost(minute)) {
                    file.append(String.format(Locale.ROOT, "%d:%02d:00", minute / 60, minute % 60))
                            .append(cells(readings, minute, TemperatureUnit.CELSIUS, '\t', '.'))
                            .append('\n');
                }
            }
            return file.toString();
        }
    },
    /** Commas and quotes, a 12-hour clock, °F. */
    TWELVE_HOUR_FAHRENHEIT {
        @Override
        String write(Readings readings) {
            StringBuilder file = new StringBuilder("\"Date/Time\",\"Core °F\",\"Smoker °F\",\"Bath °F\"\n");
            DateTimeFormatter clock = DateTimeFormatter.ofPattern("MM/dd/yyyy hh:mm:ss a", Locale.ENGLISH);
            for (int minute = 0; minute < readings.minutes(); minute++) {
                if (!readings.isLost(minute)) {
                    file.append('"')
                            .append(clock.format(readings.time(minute)))
                            .append('"')
                            .append(cells(readings, minute, TemperatureUnit.FAHRENHEIT, ',', '.'))
                            .append('\n');
                }
            }
            return file.toString();
        }
    };

    /** The whole file. */
    abstract String write(Readings readings);

    private static String cells(Readings readings, int minute, TemperatureUnit unit, char separator, char decimal) {
        StringBuilder cells = new StringBuilder();
        for (double celsius : readings.row(minute)) {
            String figure = String.format(Locale.ROOT, "%.1f", unit.fromCelsius(celsius));
            cells.append(separator).append(figure.replace('.', decimal));
        }
        return cells.toString();
    }
}
