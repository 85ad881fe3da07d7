package org.holdproof.core.lesson;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.holdproof.core.rules.Citation;
import org.holdproof.core.rules.GrowthLimit;
import org.holdproof.core.rules.GrowthModel;
import org.holdproof.core.rules.RuleLibrary;

/**
 * Where one source has an organism stop growing.
 *
 * @param celsius its highest temperature of growth, in °C
 */
public record GrowthStop(double celsius, Citation citation) {

    /**
     * What every source in the library says, the lowest first; of several with the same temperature one that was read.
     *
     * @throws IllegalArgumentException if none says anything
     */
    static List<GrowthStop> of(RuleLibrary rules, String organism) {
        List<GrowthStop> all = new ArrayList<>();
        for (GrowthLimit limit : rules.rules(GrowthLimit.class).all()) {
            if (limit.kind() == GrowthLimit.Kind.RANGE && limit.organism().equals(organism)) {
                limit.maxCelsius().ifPresent(max -> all.add(new GrowthStop(max, limit.citation())));
            }
        }
        for (GrowthModel model : rules.rules(GrowthModel.class).all()) {
            if (model.organism().equals(organism) && !model.species().isEmpty()) {
                all.add(new GrowthStop(model.maxCelsius(), model.citation()));
            }
        }
        if (all.isEmpty()) {
            throw new IllegalArgumentException("no source says where " + organism + " stops growing");
        }
        all.sort(Comparator.comparingDouble(GrowthStop::celsius)
                .thenComparing(stop -> stop.citation().how().isUnconfirmed()));
        List<GrowthStop> distinct = new ArrayList<>();
        for (GrowthStop stop : all) {
            if (distinct.isEmpty() || distinct.get(distinct.size() - 1).celsius() != stop.celsius()) {
                distinct.add(stop);
            }
        }
        return List.copyOf(distinct);
    }
}
