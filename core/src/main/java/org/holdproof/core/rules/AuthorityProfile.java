package org.holdproof.core.rules;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.quantity.TemperatureUnit;

/**
 * Which rule answers which question under one authority.
 *
 * @param id the id a batch record names
 * @param title as printed
 * @param units the scales its reader uses, the first one leading
 * @param paper the sheet its reader prints on
 * @param lethality which table serves which food, first match wins
 * @param comeUp the come-up limit, where the authority has one
 * @param cooling the schedules it accepts, any one of which will do; the first one leads
 * @param hotHold the hot-holding minimum
 * @param coldHold the cold-holding maximum
 * @param reheat the reheating target
 * @param toleranceCelsius the accuracy it asks of a food thermometer, as a difference in °C
 * @param checkEveryDays how old a thermometer's last check may be, where it says
 * @param humidity ways to keep the surface moist that its tables are tied to; empty: none asked
 * @param hotHoldRoast the hot-holding minimum of a whole roast cooked by its roast table, where that is another one
 * @param nonContinuous limits on a cook in two heatings with cooling between
 * @param lowCook a limit on the time below a temperature while cooking
 * @param seal the temperature a bag sealed after the cook must be sealed at
 * @param shelfLives how long the chilled food may be kept, the strictest reading first
 * @param timeLimits rules by which time alone may keep food safe; one kept is enough
 * @param records what its records must hold
 * @param left questions it leaves to the local authority, in words
 */
public record AuthorityProfile(
        String id,
        String title,
        List<TemperatureUnit> units,
        Paper paper,
        List<LethalityChoice> lethality,
        Optional<HoldingRule> comeUp,
        List<CoolingRule> cooling,
        Optional<HoldingRule> hotHold,
        Optional<HoldingRule> coldHold,
        Optional<ReheatingRule> reheat,
        OptionalDouble toleranceCelsius,
        OptionalDouble checkEveryDays,
        List<HumidityOption> humidity,
        Optional<HoldingRule> hotHoldRoast,
        Optional<CoolingRule> nonContinuous,
        Optional<HoldingRule> lowCook,
        Optional<WrittenRule> seal,
        List<ShelfLifeRule> shelfLives,
        List<TimeLimit> timeLimits,
        List<WrittenRule> records,
        List<String> left) {

    public AuthorityProfile {
        units = List.copyOf(units);
        lethality = List.copyOf(lethality);
        cooling = List.copyOf(cooling);
        humidity = List.copyOf(humidity);
        shelfLives = List.copyOf(shelfLives);
        timeLimits = List.copyOf(timeLimits);
        records = List.copyOf(records);
        left = List.copyOf(left);
    }

    /** The sheet a report is printed on. */
    public enum Paper {
        LETTER,
        A4
    }

    /**
     * A table, or kinetics with a target, for some foods.
     *
     * @param species names of the species it serves, in the batch record's words; empty: all
     * @param forms names of the forms it serves; empty: all
     * @param tables published rows, any row of any of them will do
     * @param kinetics where the rule is itself stated as D, z and a target
     * @param margin the kinetics integrated lethality is shown with beside the rows
     */
    public record LethalityChoice(
            List<String> species,
            List<String> forms,
            List<LethalityTable> tables,
            Optional<ThermalDeath> kinetics,
            List<ThermalDeath> margin) {
        public LethalityChoice {
            species = List.copyOf(species);
            forms = List.copyOf(forms);
            tables = List.copyOf(tables);
            margin = List.copyOf(margin);
        }

        /** Whether it serves a food. */
        public boolean serves(String speciesName, String formName) {
            return (species.isEmpty() || species.contains(speciesName))
                    && (forms.isEmpty() || forms.contains(formName));
        }
    }
}
