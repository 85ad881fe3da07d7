package org.holdproof.core.input;

import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.TemperatureUnit;

/** One row of a {@link CsvSheet}, read cell by cell with checks. */
public final class CsvRow {
    private final String file;
    private final long line;
    private final Map<String, Integer> places;
    private final List<String> cells;

    CsvRow(String file, long line, Map<String, Integer> places, List<String> cells) {
        this.file = file;
        this.line = line;
        this.places = places;
        this.cells = cells;
    }

    public String file() {
        return file;
    }

    public long line() {
        return line;
    }

    /** The cell's text without surrounding blanks, perhaps empty. */
    public String text(String column) {
        Integer place = places.get(column);
        if (place == null) {
            throw new IllegalArgumentException("no column " + column);
        }
        return cells.get(place).strip();
    }

    public boolean has(String column) {
        return places.containsKey(column);
    }

    public boolean isBlank(String column) {
        return text(column).isEmpty();
    }

    public String required(String column) throws UnreadableInputException {
        String text = text(column);
        if (text.isEmpty()) {
            throw fault(column, "a value", "Fill the cell.");
        }
        return text;
    }

    /** A plain decimal number from {@code min} to {@code max}. */
    public double number(String column, double min, double max) throws UnreadableInputException {
        String text = required(column);
        double value = isPlainNumber(text) ? Double.parseDouble(text) : Double.NaN;
        if (!(value >= min && value <= max)) {
            throw fault(
                    column,
                    "a number from " + plain(min) + " to " + plain(max),
                    "Write digits with a decimal point, no unit and no sign but a minus.");
        }
        return value;
    }

    public OptionalDouble numberIfAny(String column, double min, double max) throws UnreadableInputException {
        return isBlank(column) ? OptionalDouble.empty() : OptionalDouble.of(number(column, min, max));
    }

    public int count(String column, int min, int max) throws UnreadableInputException {
        double value = number(column, min, max);
        if (value != Math.rint(value)) {
            throw fault(column, "a whole number", "Write a whole number.");
        }
        return (int) value;
    }

    public OptionalInt countIfAny(String column, int min, int max) throws UnreadableInputException {
        return isBlank(column) ? OptionalInt.empty() : OptionalInt.of(count(column, min, max));
    }

    public boolean yes(String column) throws UnreadableInputException {
        return switch (text(column)) {
            case "" -> false;
            case "yes" -> true;
            default -> throw fault(column, "yes or nothing", "Write yes, or leave the cell empty.");
        };
    }

    /** The constant whose name stands in the cell, in lower case and with hyphens. */
    public <E extends Enum<E>> E choice(String column, E[] constants) throws UnreadableInputException {
        String text = required(column);
        for (E constant : constants) {
            if (word(constant).equals(text)) {
                return constant;
            }
        }
        throw fault(column, words(constants), "Write one of these.");
    }

    /** The texts of a cell, with ; between them; none in an empty cell. */
    public List<String> list(String column) {
        return isBlank(column) ? List.of() : List.of(text(column).split(";", -1));
    }

    /** The constants whose names stand in the cell, with ; between them; none in an empty cell. */
    public <E extends Enum<E>> Set<E> choices(String column, E[] constants) throws UnreadableInputException {
        Set<E> chosen = new LinkedHashSet<>();
        for (String name : list(column)) {
            chosen.add(Arrays.stream(constants)
                    .filter(constant -> word(constant).equals(name))
                    .findFirst()
                    .orElseThrow(() -> fault(column, words(constants), "Write these with ; between them.")));
        }
        return chosen;
    }

    /** {@code C} or {@code F}. */
    public TemperatureUnit unit(String column) throws UnreadableInputException {
        return switch (required(column)) {
            case "C" -> TemperatureUnit.CELSIUS;
            case "F" -> TemperatureUnit.FAHRENHEIT;
            default -> throw fault(column, "C or F", "Write the scale the document prints.");
        };
    }

    /** A temperature as printed; its exact conversion must lie from {@code min} to {@code max} °C. */
    public Boundary boundary(String column, String unitColumn, double min, double max) throws UnreadableInputException {
        Boundary boundary = new Boundary(number(column, -100, 500), unit(unitColumn));
        if (!(boundary.celsius() >= min && boundary.celsius() <= max)) {
            throw fault(
                    column,
                    "a temperature from " + plain(min) + " to " + plain(max) + " °C",
                    "Check the figure and the scale in column " + unitColumn + ".");
        }
        return boundary;
    }

    public Optional<Boundary> boundaryIfAny(String column, String unitColumn, double min, double max)
            throws UnreadableInputException {
        return isBlank(column) ? Optional.empty() : Optional.of(boundary(column, unitColumn, min, max));
    }

    /** Files a rule under the row's id, which must be new. */
    public <T> void putUnder(Map<String, T> rules, T rule) throws UnreadableInputException {
        if (rules.putIfAbsent(required("id"), rule) != null) {
            throw fault("id", "an id of its own", "Give it another id; this one is taken.");
        }
    }

    public UnreadableInputException fault(String column, String expected, String remedy) {
        String text = text(column);
        return fault(column, text.isEmpty() ? "an empty cell" : CsvSheet.shortened(text), expected, remedy);
    }

    public UnreadableInputException fault(String column, String found, String expected, String remedy) {
        return Place.file(file).line(line).column(column).fault(found, expected, remedy);
    }

    public static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    public static String words(Enum<?>[] constants) {
        return "one of "
                + String.join(", ", Arrays.stream(constants).map(CsvRow::word).toList());
    }

    /** Digits with at most one point, and at most a minus before them: no exponent, no word. */
    public static boolean isPlainNumber(String text) {
        int digits = 0;
        int points = 0;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c >= '0' && c <= '9') {
                digits++;
            } else if (c == '.') {
                points++;
            } else if (c != '-' || i > 0) {
                return false;
            }
        }
        return digits > 0 && points <= 1;
    }

    private static String plain(double value) {
        return value == Math.rint(value) ? Long.toString((long) value) : Double.toString(value);
    }
}
