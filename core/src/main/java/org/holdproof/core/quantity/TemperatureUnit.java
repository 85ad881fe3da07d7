package org.holdproof.core.quantity;

/** The two scales a kitchen thermometer shows. */
public enum TemperatureUnit {
    CELSIUS("°C") {
        @Override
        public double toCelsius(double value) {
            return value;
        }

        @Override
        public double fromCelsius(double celsius) {
            return celsius;
        }

        @Override
        public double differenceToCelsius(double difference) {
            return difference;
        }

        @Override
        public double differenceFromCelsius(double difference) {
            return difference;
        }
    },
    FAHRENHEIT("°F") {
        @Override
        public double toCelsius(double value) {
            return (value - 32) / 1.8;
        }

        @Override
        public double fromCelsius(double celsius) {
            return celsius * 1.8 + 32;
        }

        @Override
        public double differenceToCelsius(double difference) {
            return difference / 1.8;
        }

        @Override
        public double differenceFromCelsius(double difference) {
            return difference * 1.8;
        }
    };

    /**
     * Two temperatures closer than this, in °C, are the same temperature: it covers the rounding of a conversion (below
     * 1e-12 °C) with room to spare, and lies far below any thermometer's resolution.
     */
    public static final double SLACK_CELSIUS = 1e-9;

    private final String symbol;

    TemperatureUnit(String symbol) {
        this.symbol = symbol;
    }

    /** The scale's sign as printed: {@code °C} or {@code °F}. */
    public String symbol() {
        return symbol;
    }

    /** A temperature on this scale, in °C. */
    public abstract double toCelsius(double value);

    /** A temperature in °C, on this scale. */
    public abstract double fromCelsius(double celsius);

    /** A difference of temperatures on this scale (a tolerance), in °C. */
    public abstract double differenceToCelsius(double difference);

    /** A difference of temperatures in °C, on this scale. */
    public abstract double differenceFromCelsius(double difference);
}
