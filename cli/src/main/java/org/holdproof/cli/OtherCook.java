package org.holdproof.cli;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.holdproof.core.plan.PlannedCook;
import org.holdproof.core.plan.SmokeStep;
import org.holdproof.core.plan.UnplannableException;
import org.holdproof.core.plan.WrittenTimes;
import org.holdproof.core.quality.Price;
import org.holdproof.core.quality.QualityModels;
import org.holdproof.core.quantity.QuantityKind;
import org.holdproof.core.quantity.UnreadableQuantityException;
import org.holdproof.core.rules.TrimmedCut;

/**
 * What a plan is set against: the same cook but for what is named, such as {@code price 9.99/lb, trim 20 %} or
 * {@code smoker 250 °F to 203 °F}.
 *
 * @param name as written
 * @param smoker left bare in the smoker until the core is there, instead of any bath
 */
record OtherCook(
        String name,
        Optional<Price> price,
        OptionalDouble trimmedOff,
        Optional<TrimmedCut> cut,
        OptionalDouble bathCelsius,
        OptionalDouble bathMinutes,
        Optional<SmokeStep> smoke,
        Optional<Smoker> smoker) {

    private static final String EXPECTED = "some of 'price 9.99/lb', 'trim 20 %', 'cut NAME', 'bath 145 °F for 36 h',"
            + " 'smoke 110 °C for 6 h' or 'smoker 250 °F to 203 °F', with commas between";
    private static final Pattern PART = Pattern.compile("(price|trim|cut|bath|smoke|smoker) +(.+)");
    private static final Pattern STAY = Pattern.compile("(.+?)(?: for (.+))?");
    private static final Pattern SMOKER = Pattern.compile("(.+?) to (.+)");

    /** In °C: the air, and the core when it comes out. */
    record Smoker(double airCelsius, double coreCelsius) {}

    /** @throws UnplannableException if it is not one */
    static OtherCook parse(QualityModels models, String text) {
        OtherCook other = new OtherCook(
                text.strip(),
                Optional.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.empty());
        for (String part : text.split(",", -1)) {
            Matcher matcher = PART.matcher(part.strip());
            if (!matcher.matches()) {
                throw new UnplannableException("found '" + part.strip() + "'; expected " + EXPECTED);
            }
            try {
                other = other.with(models, matcher.group(1), matcher.group(2).strip());
            } catch (UnreadableQuantityException e) {
                throw new UnplannableException("found " + e.found() + "; expected " + e.expected() + ". " + e.remedy());
            }
        }
        if (other.smoker.isPresent() && (other.bathCelsius.isPresent() || other.smoke.isPresent())) {
            throw new UnplannableException("found '" + text + "'; expected a smoker all the way or a bath, not both");
        }
        return other;
    }

    private OtherCook with(QualityModels models, String word, String value) throws UnreadableQuantityException {
        return switch (word) {
            case "price" ->
                new OtherCook(
                        name,
                        Optional.of(Price.parse(value)),
                        trimmedOff,
                        cut,
                        bathCelsius,
                        bathMinutes,
                        smoke,
                        smoker);
            case "trim" ->
                new OtherCook(
                        name, price, OptionalDouble.of(trim(value)), cut, bathCelsius, bathMinutes, smoke, smoker);
            case "cut" ->
                new OtherCook(
                        name,
                        price,
                        trimmedOff,
                        Optional.of(cut(models, value)),
                        bathCelsius,
                        bathMinutes,
                        smoke,
                        smoker);
            case "bath" -> {
                Matcher stay = STAY.matcher(value);
                stay.matches();
                yield new OtherCook(
                        name,
                        price,
                        trimmedOff,
                        cut,
                        OptionalDouble.of(QuantityKind.TEMPERATURE.parse(stay.group(1))),
                        stay.group(2) == null
                                ? OptionalDouble.empty()
                                : OptionalDouble.of(WrittenTimes.minutes(stay.group(2))),
                        smoke,
                        smoker);
            }
            case "smoke" ->
                new OtherCook(
                        name,
                        price,
                        trimmedOff,
                        cut,
                        bathCelsius,
                        bathMinutes,
                        Optional.of(WrittenTimes.smoke(value)),
                        smoker);
            default ->
                new OtherCook(
                        name, price, trimmedOff, cut, bathCelsius, bathMinutes, smoke, Optional.of(smoker(value)));
        };
    }

    private static Smoker smoker(String value) throws UnreadableQuantityException {
        Matcher matcher = SMOKER.matcher(value);
        if (!matcher.matches()) {
            throw new UnplannableException(
                    "found '" + value + "'; expected the smoker's air and the core, such as '250 °F to 203 °F'");
        }
        return new Smoker(
                QuantityKind.TEMPERATURE.parse(matcher.group(1)), QuantityKind.TEMPERATURE.parse(matcher.group(2)));
    }

    /** A share of the bought weight, 0 to below 1. */
    static double trim(String value) throws UnreadableQuantityException {
        double percent = QuantityKind.PERCENT.parse(value);
        if (!(percent >= 0) || !(percent < 100)) {
            throw new UnreadableQuantityException(
                    "'" + value + "'", "what is trimmed off, from 0 % to below 100 %", "Write a part of the whole.");
        }
        return percent / 100;
    }

    /** A cut of the tables. */
    static TrimmedCut cut(QualityModels models, String id) {
        return models.tables()
                .cut(id)
                .orElseThrow(() -> new UnplannableException("found '" + id + "'; expected one of "
                        + String.join(
                                ", ",
                                models.tables().cuts().stream()
                                        .map(TrimmedCut::id)
                                        .toList())));
    }

    /** The planned cook with what is named here changed. */
    PlannedCook changed(PlannedCook cook) {
        return new PlannedCook(
                cook.species(),
                cook.form(),
                cook.fatPercent(),
                cook.shape(),
                cook.thicknessMillimetres(),
                cook.startCelsius(),
                smoke.or(cook::smoke),
                bathCelsius.orElse(cook.bathCelsius()),
                bathCelsius.isPresent() ? bathMinutes : cook.bathMinutes(),
                cook.authority(),
                cook.chill());
    }
}
