package org.holdproof.core.kinetics;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.rules.GrowthLag;
import org.holdproof.core.rules.GrowthModel;
import org.holdproof.core.rules.RuleLibrary;

/**
 * What one organism is screened with.
 *
 * @param models its models; of several the fastest at each temperature counts
 * @param lag its lag after a cook that killed the growing cells, where one is known
 */
public record GrowthChoice(String organism, List<GrowthModel> models, Optional<GrowthLag> lag) {

    /** @throws IllegalArgumentException if there is no model */
    public GrowthChoice {
        models = List.copyOf(models);
        if (models.isEmpty()) {
            throw new IllegalArgumentException("no growth model for " + organism);
        }
    }

    /**
     * The choices for a species: the models and lags that name it, otherwise those for any.
     *
     * @param species in the batch record's words, such as {@code other-poultry}
     */
    public static List<GrowthChoice> forSpecies(RuleLibrary rules, String species) {
        return organisms(rules).stream()
                .flatMap(organism -> forSpecies(rules, species, organism).stream())
                .toList();
    }

    private static Optional<GrowthChoice> forSpecies(RuleLibrary rules, String species, String organism) {
        List<GrowthModel> all = ofOrganism(rules, organism);
        Optional<GrowthModel> model = all.stream()
                .filter(found -> found.species().contains(species))
                .findFirst()
                .or(() -> all.stream()
                        .filter(found -> found.species().contains(GrowthModel.ANY))
                        .findFirst());
        return model.map(found -> new GrowthChoice(organism, List.of(found), lag(rules, organism, species)));
    }

    /** The choices where nobody knows the species: every model that serves some, with the shortest lag. */
    public static List<GrowthChoice> forUnknownSpecies(RuleLibrary rules) {
        return organisms(rules).stream()
                .map(organism -> new GrowthChoice(organism, ofOrganism(rules, organism), shortestLag(rules, organism)))
                .toList();
    }

    private static List<String> organisms(RuleLibrary rules) {
        return rules.rules(GrowthModel.class).all().stream()
                .filter(model -> !model.species().isEmpty())
                .map(GrowthModel::organism)
                .distinct()
                .toList();
    }

    private static List<GrowthModel> ofOrganism(RuleLibrary rules, String organism) {
        return rules.rules(GrowthModel.class).all().stream()
                .filter(model ->
                        model.organism().equals(organism) && !model.species().isEmpty())
                .toList();
    }

    private static Optional<GrowthLag> lag(RuleLibrary rules, String organism, String species) {
        return rules.rules(GrowthLag.class).all().stream()
                .filter(lag -> lag.organism().equals(organism) && lag.species().contains(species))
                .findFirst()
                .or(() -> shortestLag(rules, organism));
    }

    private static Optional<GrowthLag> shortestLag(RuleLibrary rules, String organism) {
        return rules.rules(GrowthLag.class).all().stream()
                .filter(lag -> lag.organism().equals(organism))
                .max(Comparator.comparingDouble(GrowthLag::q0));
    }
}
