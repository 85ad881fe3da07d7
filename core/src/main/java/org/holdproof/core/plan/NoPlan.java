package org.holdproof.core.plan;

import java.util.Locale;
import java.util.Optional;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.rules.GrowthLimit;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.rules.ThermalDeath;

/**
 * No safe plan.
 *
 * @param reason why, in a few sentences
 * @param remedy what to do instead, a sentence
 */
public record NoPlan(PlannedCook cook, String reason, String remedy) implements Plan {
    /** C. perfringens 10 to 52 °C, the highest limit of growth among the pathogens that was read and not recalled. */
    private static final String GROWTH = "BBB-10";

    /** A set point this far above the lowest row leaves room for a bath that holds low, and time to be met, in °C. */
    private static final double ROOM = 1;

    /** That the authority names no rule for the food, where it does not. */
    public static Optional<NoPlan> ifUnruled(PlannedCook cook) {
        return Pasteurization.of(cook.authority(), cook.species(), cook.form(), cook.fatPercent())
                        .isPresent()
                ? Optional.empty()
                : Optional.of(unruled(cook));
    }

    static NoPlan unruled(PlannedCook cook) {
        return new NoPlan(
                cook,
                cook.authority().title() + " as held here names no time and temperature for "
                        + cook.form().title() + " " + cook.species().title() + ".",
                "Ask the authority which process applies, or lay the site's own validated process over the tables"
                        + " (--tables).");
    }

    static NoPlan tooLow(PlannedCook cook, Pasteurization rule, RuleLibrary library) {
        PlanWording wording = new PlanWording(cook.authority().units());
        GrowthLimit growth = library.rules(GrowthLimit.class).require(GROWTH);
        double highest = growth.maxCelsius().orElseThrow();
        String meanwhile = cook.bathCelsius() <= highest
                ? growth.organism() + " grows up to " + wording.temperature(highest) + " ("
                        + growth.citation().document() + "): this bath breeds what it should kill."
                : "What dies at that temperature this authority does not credit, whatever another may, and toxin"
                        + " already made stays.";
        return new NoPlan(
                cook,
                "A core only comes up towards its bath. At " + wording.temperature(cook.bathCelsius())
                        + " it never reaches " + lowest(rule, wording) + ", the lowest temperature "
                        + cook.authority().title() + " credits for "
                        + cook.form().title() + " "
                        + cook.species().title() + ". A longer time does not make up for it: " + meanwhile,
                atLeast(rule, wording));
    }

    static NoPlan tooNear(PlannedCook cook, Pasteurization rule) {
        PlanWording wording = new PlanWording(cook.authority().units());
        return new NoPlan(
                cook,
                "The bath at " + wording.temperature(cook.bathCelsius()) + " is too near "
                        + lowest(rule, wording)
                        + ", the lowest temperature credited. A core only comes up towards its bath, and a bath "
                        + wording.difference(CookSimulation.BATH_CELSIUS)
                        + " below its set point would never bring it there.",
                atLeast(rule, wording));
    }

    static NoPlan tooSlow(PlannedCook cook, TimeInRange range) {
        PlanWording wording = new PlanWording(cook.authority().units());
        String band = range.rule()
                .from()
                .map(from -> "between " + wording.boundary(from) + " and "
                        + wording.boundary(range.rule().limit().orElseThrow()))
                .orElseGet(
                        () -> "below " + wording.boundary(range.rule().limit().orElseThrow()));
        return new NoPlan(
                cook,
                "The core would be " + PlanWording.time(range.minutes().nominal()) + " " + band
                        + " while it heats; " + range.rule().timeComparison().words() + " "
                        + PlanWording.time(range.rule().maxMinutes().orElseThrow()) + " is supported ("
                        + range.rule().citation().text()
                        + "). Bacteria grow that long, and the toxin of S. aureus is not undone by heat.",
                "Cut it thinner, or set the bath hotter.");
    }

    static NoPlan tooShort(PlannedCook cook, double coveringMinutes) {
        return new NoPlan(
                cook,
                "The time in the bath is " + PlanWording.time(cook.bathMinutes().orElseThrow())
                        + "; at worst the core is safe only after "
                        + PlanWording.time(coveringMinutes - cook.smokeMinutes()) + " in it.",
                "Leave it in at least that long, or set the bath hotter.");
    }

    private static String lowest(Pasteurization rule, PlanWording wording) {
        return rule.death()
                .map(ThermalDeath::floorCelsius)
                .map(wording::temperature)
                .orElseGet(() -> wording.boundary(rule.rows().get(0).at()));
    }

    private static String atLeast(Pasteurization rule, PlanWording wording) {
        double needed = wording.leading().fromCelsius(rule.lowestCelsius() + ROOM);
        Boundary set = new Boundary(Math.ceil(needed - 1e-9), wording.leading());
        String when = rule.rows().stream()
                .findFirst()
                .map(LethalityRow::printedTime)
                .map(time -> String.format(
                        Locale.ROOT,
                        "; the row at %s then asks %s",
                        rule.rows().get(0).at().text(),
                        time))
                .orElse("");
        return "Set the bath to at least " + set.text() + when + ".";
    }
}
