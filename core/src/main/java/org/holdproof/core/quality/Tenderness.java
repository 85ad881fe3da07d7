package org.holdproof.core.quality;

import java.util.OptionalDouble;
import org.holdproof.core.quantity.Predicted;

/**
 * How far a tough beef cut is on its way: what softens it beside what stiffens it. Neither is a force, and neither is
 * juiciness: gelatin and fat moisten, and nothing here measures them. Enzymes help below 60 °C and are not reckoned, so
 * that low baths are judged too harshly.
 *
 * @param softening time at heat over the time that made such cuts tender; 1 is the middle of the published cases
 * @param need what this cut needs on the same scale: two of three pieces lie within it
 * @param actinDenatured share of the actin that has set and stiffened the fibres, 0 to 1
 * @param heldCelsius the hottest the core was, as likely
 * @param hoursThere hours at that temperature that made tough cuts tender: two of three cases
 */
public record Tenderness(
        Predicted softening, Predicted need, Predicted actinDenatured, double heldCelsius, Predicted hoursThere) {

    /** How long it has had, in a word. */
    public enum Word {
        NOT_YET("not yet, by this measure"),
        ABOUT_THERE("about there"),
        LIKELY_LONG_ENOUGH("likely long enough"),
        LONG_ENOUGH("long enough");

        private final String title;

        Word(String title) {
            this.title = title;
        }

        /** As printed. */
        public String title() {
            return title;
        }
    }

    /** What a piece needs where nothing is known of it. */
    static Predicted pieces(QualityModels models) {
        double scatter = models.tenderTime().scatter();
        return new Predicted(1 / scatter, 1, scatter);
    }

    /** A piece of which nothing is known, so far into a cook. */
    static Tenderness of(QualityModels models, CookProgress progress, double minute, double heldCelsius) {
        Predicted need = pieces(models);
        return new Tenderness(
                progress.softening(minute),
                need,
                progress.actin(minute),
                heldCelsius,
                models.tenderTime().hoursAt(heldCelsius).times(need));
    }

    /** The same piece where more is known of what it needs. */
    Tenderness needing(QualityModels models, Predicted known) {
        return new Tenderness(
                softening,
                known,
                actinDenatured,
                heldCelsius,
                models.tenderTime().hoursAt(heldCelsius).times(known));
    }

    /** The softening against the need. */
    public Word word() {
        if (softening.low() > need.high()) {
            return Word.LONG_ENOUGH;
        }
        if (softening.central() > need.high()) {
            return Word.LIKELY_LONG_ENOUGH;
        }
        return softening.central() >= need.low() ? Word.ABOUT_THERE : Word.NOT_YET;
    }

    /** Hours more at the same temperature until the middle of what such cuts needed; empty where it is reached. */
    public OptionalDouble hoursMore() {
        double missing = need.central() - softening.central();
        return missing > 0
                ? OptionalDouble.of(missing * hoursThere.central() / need.central())
                : OptionalDouble.empty();
    }
}
