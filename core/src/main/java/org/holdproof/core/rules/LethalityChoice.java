package org.holdproof.core.rules;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.holdproof.core.batch.Product.Form;
import org.holdproof.core.batch.Product.Species;

/**
 * A table, or kinetics with a target, for some foods.
 *
 * @param species the species it serves; empty: all
 * @param forms the forms it serves; empty: all
 * @param tables published rows, any row of any of them will do
 * @param kinetics where the rule is itself stated as D, z and a target
 * @param ovens what an oven must be like for the tables to be used with it; empty: nothing asked
 * @param margin the kinetics integrated lethality is shown with beside the rows
 */
public record LethalityChoice(
        Set<Species> species,
        Set<Form> forms,
        List<LethalityTable> tables,
        Optional<ThermalDeath> kinetics,
        List<OvenCondition> ovens,
        List<ThermalDeath> margin) {

    public LethalityChoice {
        species = Set.copyOf(species);
        forms = Set.copyOf(forms);
        tables = List.copyOf(tables);
        ovens = List.copyOf(ovens);
        margin = List.copyOf(margin);
    }

    /**
     * The published rows for a food of this fat, of all its tables by rising temperature.
     *
     * @param fatPercent fat by weight, in percent; unknown: the column that asks most
     */
    public List<LethalityRow> rowsFor(OptionalDouble fatPercent) {
        return tables.stream()
                .flatMap(table -> table.rowsFor(fatPercent).stream())
                .sorted(Comparator.comparingDouble(row -> row.at().celsius()))
                .toList();
    }

    boolean serves(Species ofSpecies, Form ofForm) {
        return (species.isEmpty() || species.contains(ofSpecies)) && (forms.isEmpty() || forms.contains(ofForm));
    }
}
