package org.holdproof.core.quality;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.holdproof.core.quantity.QuantityKind;
import org.holdproof.core.quantity.UnreadableQuantityException;

/**
 * What the raw cut costs by weight, as bought.
 *
 * @param currency as written, {@code $} or {@code EUR}; empty where none was
 * @param amountPerKilogram in it
 */
public record Price(String currency, double amountPerKilogram) {
    private static final String CURRENCY = "(\\p{Sc}|\\p{Lu}{3})?";
    private static final Pattern WRITTEN =
            Pattern.compile(CURRENCY + " ?([0-9]{1,7}(?:\\.[0-9]{1,4})?) ?" + CURRENCY + " ?(?:/|per) ?([a-z]{1,3})");
    private static final String EXPECTED = "a price by weight, such as '4.99 / lb', '$4.99/lb' or '11 EUR per kg'";

    /** @throws IllegalArgumentException if the amount is not positive */
    public Price {
        if (!(amountPerKilogram > 0) || !Double.isFinite(amountPerKilogram)) {
            throw new IllegalArgumentException("a price of " + amountPerKilogram + " a kilogram");
        }
    }

    /**
     * Reads a price.
     *
     * @throws UnreadableQuantityException if it is not an amount by a weight
     */
    public static Price parse(String text) throws UnreadableQuantityException {
        Matcher written = WRITTEN.matcher(text.strip());
        boolean twice = written.matches() && written.group(1) != null && written.group(3) != null;
        if (!written.matches() || twice || Double.parseDouble(written.group(2)) == 0) {
            throw new UnreadableQuantityException(
                    "'" + text + "'",
                    EXPECTED,
                    "Write an amount above nothing with a decimal point, then the weight it buys.");
        }
        double kilograms = QuantityKind.WEIGHT.parse("1 " + written.group(4));
        String before = written.group(1);
        String after = written.group(3);
        return new Price(
                before != null ? before : after != null ? after : "", Double.parseDouble(written.group(2)) / kilograms);
    }

    /** An amount in this currency, to the hundredth: {@code $4.99}, {@code 11.00 EUR}, {@code 4.99}. */
    public String words(double amount) {
        String figure = String.format(Locale.ROOT, "%.2f", amount);
        if (currency.isEmpty()) {
            return figure;
        }
        return Character.isLetter(currency.charAt(0)) ? figure + " " + currency : currency + figure;
    }
}
