package org.holdproof.core.quantity;

import java.math.BigDecimal;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A kind of quantity that people write as a figure and a unit: {@code 65 mm}, {@code 144 °F}. The figure has a decimal
 * point, no thousands separators and no exponent; blanks before the unit are optional.
 *
 * <p>Each kind is read into one unit. Conversion factors are exact by definition: the international foot, inch, pound
 * and ounce of NIST Special Publication 811 (2008), appendix B.
 */
public enum QuantityKind {
    /** A temperature, read into °C. */
    TEMPERATURE("a temperature", "57 °C", "°C or °F"),
    /** A difference of temperatures, such as a tolerance, read into °C; it may be written with ±. */
    TEMPERATURE_DIFFERENCE("a difference of temperatures", "0.5 °C", "°C, K or °F"),
    /** The length of something on the table, read into millimetres. */
    LENGTH("a length", "65 mm", "mm, cm, m, in or \""),
    /** What a piece weighs, read into kilograms. */
    WEIGHT("a weight", "4.2 kg", "g, kg, lb or oz"),
    /** Height above sea level, read into metres. */
    ALTITUDE("an altitude", "250 m", "m or ft"),
    /** A number of days. */
    DAYS("a number of days", "30 d", "d or days"),
    /** A short length of time, such as a clock's error, read into seconds. */
    SHORT_TIME("a length of time", "7 min", "s, min or h"),
    /** A part of the whole, read into percent. */
    PERCENT("a percentage", "12 %", "%"),
    /** A small part of the whole by weight, read into parts per million. */
    PARTS_PER_MILLION("parts per million", "120 ppm", "ppm or mg/kg");

    private static final String BLANKS = "[ \\u00a0\\u202f]*";
    private static final Pattern FIGURE_AND_REST = Pattern.compile(
            BLANKS + "(±?)" + BLANKS + "([+\\-\\u2212]?[0-9]{1,9}(?:\\.[0-9]{1,9})?)" + BLANKS + "(.*?)" + BLANKS);
    private static final Pattern DECIMAL_COMMA = Pattern.compile("[^,]*[0-9],[0-9][^,]*");

    private final String words;
    private final String example;
    private final String units;

    QuantityKind(String words, String example, String units) {
        this.words = words;
        this.example = example;
        this.units = units;
    }

    /** What it is, as in {@code a length}. */
    public String words() {
        return words;
    }

    /** One well-written quantity of this kind. */
    public String example() {
        return example;
    }

    /** What is expected where such a quantity should stand. */
    public String expected() {
        return words + " with its unit (" + units + "), such as '" + example + "'";
    }

    /**
     * Reads a figure with its unit.
     *
     * @return the figure in this kind's unit, finite
     * @throws UnreadableQuantityException if it is not one figure and one unit of this kind
     */
    public double parse(String text) throws UnreadableQuantityException {
        Matcher matcher = FIGURE_AND_REST.matcher(text);
        if (!matcher.matches() || (!matcher.group(1).isEmpty() && this != TEMPERATURE_DIFFERENCE)) {
            throw unreadable(text, "Write one figure and one unit.");
        }
        String figure = matcher.group(2);
        String unit = matcher.group(3);
        if (unit.isEmpty()) {
            throw unreadable(text, "Add the unit: " + units + ".");
        }
        OptionalDouble value = inOwnUnit(new BigDecimal(figure.replace('\u2212', '-')), unit);
        if (value.isEmpty()) {
            throw unreadable(
                    text,
                    DECIMAL_COMMA.matcher(text).matches()
                            ? "Write a decimal point, not a comma, and no thousands separators."
                            : "Write one figure and one unit, " + units + ".");
        }
        return value.getAsDouble();
    }

    private UnreadableQuantityException unreadable(String text, String remedy) {
        return new UnreadableQuantityException("'" + text + "'", expected(), remedy);
    }

    private OptionalDouble inOwnUnit(BigDecimal figure, String unit) {
        return switch (this) {
            case TEMPERATURE ->
                switch (unit) {
                    case "°C", "C", "ºC", "℃" -> plain(TemperatureUnit.CELSIUS.toCelsius(figure.doubleValue()));
                    case "°F", "F", "ºF", "℉" -> plain(TemperatureUnit.FAHRENHEIT.toCelsius(figure.doubleValue()));
                    default -> OptionalDouble.empty();
                };
            case TEMPERATURE_DIFFERENCE ->
                switch (unit) {
                    case "°C", "C", "ºC", "℃", "K" -> times(figure, "1");
                    case "°F", "F", "ºF", "℉" ->
                        plain(TemperatureUnit.FAHRENHEIT.differenceToCelsius(figure.doubleValue()));
                    default -> OptionalDouble.empty();
                };
            case LENGTH ->
                switch (unit) {
                    case "mm" -> times(figure, "1");
                    case "cm" -> times(figure, "10");
                    case "m" -> times(figure, "1000");
                    case "in", "\"", "″" -> times(figure, "25.4");
                    default -> OptionalDouble.empty();
                };
            case WEIGHT ->
                switch (unit) {
                    case "g" -> times(figure, "0.001");
                    case "kg" -> times(figure, "1");
                    case "lb", "lbs" -> times(figure, "0.45359237");
                    case "oz" -> times(figure, "0.028349523125");
                    default -> OptionalDouble.empty();
                };
            case ALTITUDE ->
                switch (unit) {
                    case "m" -> times(figure, "1");
                    case "ft" -> times(figure, "0.3048");
                    default -> OptionalDouble.empty();
                };
            case DAYS ->
                switch (unit) {
                    case "d", "day", "days" -> times(figure, "1");
                    default -> OptionalDouble.empty();
                };
            case SHORT_TIME ->
                switch (unit) {
                    case "s" -> times(figure, "1");
                    case "min" -> times(figure, "60");
                    case "h" -> times(figure, "3600");
                    default -> OptionalDouble.empty();
                };
            case PERCENT -> unit.equals("%") ? times(figure, "1") : OptionalDouble.empty();
            case PARTS_PER_MILLION ->
                switch (unit) {
                    case "ppm", "mg/kg" -> times(figure, "1");
                    default -> OptionalDouble.empty();
                };
        };
    }

    /** The exact product, rounded once. */
    private static OptionalDouble times(BigDecimal figure, String factor) {
        return plain(figure.multiply(new BigDecimal(factor)).doubleValue());
    }

    private static OptionalDouble plain(double value) {
        return OptionalDouble.of(value);
    }
}
