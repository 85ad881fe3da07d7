package org.holdproof.core.plan;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.batch.Product.Form;
import org.holdproof.core.batch.Product.Shape;
import org.holdproof.core.batch.Product.Species;
import org.holdproof.core.heat.Piece;
import org.holdproof.core.rules.AuthorityProfile;

/**
 * A cook as it is meant to be.
 *
 * @param fatPercent fat by weight, in percent, 0 to 60; unknown: tables with fat columns use their fattest, and heat goes in
 *     at worst as slowly as into the fattest composition held
 * @param shape the solid the piece comes nearest to; unsaid: reckoned as a roast, at worst as a slab
 * @param thicknessMillimetres across the thinnest way through the middle, 3 to 300 mm
 * @param startCelsius the piece throughout when it goes in, −1 to 60 °C: frozen pieces are excluded
 * @param smoke a step in the smoker before the bag
 * @param bathCelsius the bath's set point, 20 to 100 °C
 * @param bathMinutes how long it is meant to stay in the bath; empty: as long as the rule asks at worst
 * @param authority whose rules it is planned by
 * @param chill what cools it afterwards
 */
public record PlannedCook(
        Species species,
        Form form,
        OptionalDouble fatPercent,
        Optional<Shape> shape,
        double thicknessMillimetres,
        double startCelsius,
        Optional<SmokeStep> smoke,
        double bathCelsius,
        OptionalDouble bathMinutes,
        AuthorityProfile authority,
        ChillMedium chill) {

    private static final double FROZEN = -1;
    private static final double LONGEST_BATH = 7 * 24 * 60;

    /** @throws UnplannableException if a figure lies outside its range, the piece is frozen, or as warm as the bath */
    public PlannedCook {
        if (fatPercent.isPresent()) {
            require("the fat", fatPercent.getAsDouble(), 0, 60, "%");
        }
        require("the thickness", thicknessMillimetres, 3, 300, "mm");
        if (startCelsius < FROZEN) {
            throw new UnplannableException(
                    "the piece starts at " + plain(startCelsius) + " °C: frozen or nearly so. Thawing takes heat and"
                            + " time this plan does not reckon with; thaw it below 5 °C first and start from -1 °C or"
                            + " more");
        }
        require("the start temperature", startCelsius, FROZEN, 60, "°C");
        require("the bath", bathCelsius, 20, 100, "°C");
        if (startCelsius >= bathCelsius) {
            throw new UnplannableException("the piece starts at " + plain(startCelsius)
                    + " °C, no colder than the bath at " + plain(bathCelsius) + " °C; expected a bath that heats it");
        }
        if (bathMinutes.isPresent() && !(bathMinutes.getAsDouble() > 0 && bathMinutes.getAsDouble() <= LONGEST_BATH)) {
            throw new UnplannableException("the time in the bath is " + plain(bathMinutes.getAsDouble() / 60)
                    + " h; expected more than none and at most 7 d");
        }
    }

    /** The same cook with another thickness and set point. */
    public PlannedCook with(double otherThicknessMillimetres, double otherBathCelsius) {
        return new PlannedCook(
                species,
                form,
                fatPercent,
                shape,
                otherThicknessMillimetres,
                startCelsius,
                smoke,
                otherBathCelsius,
                bathMinutes,
                authority,
                chill);
    }

    Piece piece() {
        return Piece.of(thicknessMillimetres, likelyShape());
    }

    /** The shape said, or a roast. */
    public Shape likelyShape() {
        return shape.orElse(Shape.ROAST);
    }

    /** The shape said, or a slab, which heats slowest. */
    Shape slowestShape() {
        return shape.orElse(Shape.SLAB);
    }

    double smokeMinutes() {
        return smoke.map(SmokeStep::minutes).orElse(0.0);
    }

    static void require(String what, double value, double low, double high, String unit) {
        if (!(value >= low) || !(value <= high)) {
            throw new UnplannableException(what + " is " + plain(value) + " " + unit + "; expected " + plain(low)
                    + " to " + plain(high) + " " + unit);
        }
    }

    static String plain(double value) {
        String text = String.format(Locale.ROOT, "%.2f", value);
        return text.contains(".") ? text.replaceAll("0+$", "").replaceAll("\\.$", "") : text;
    }
}
