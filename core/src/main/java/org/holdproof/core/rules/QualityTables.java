package org.holdproof.core.rules;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What is published about weight, tenderness, colour and yield. Nothing is judged by it.
 *
 * @param parameters of the models, by id; empty in an archive from before there were any
 */
public record QualityTables(
        Map<String, ModelParameter> parameters,
        List<TrimmedCut> cuts,
        List<WeightLossCase> weightLosses,
        List<LossRange> lossRanges,
        List<PublishedYield> yields,
        List<TenderPoint> tenderPoints,
        List<QualityFact> facts) {

    public QualityTables {
        parameters = Map.copyOf(parameters);
        cuts = List.copyOf(cuts);
        weightLosses = List.copyOf(weightLosses);
        lossRanges = List.copyOf(lossRanges);
        yields = List.copyOf(yields);
        tenderPoints = List.copyOf(tenderPoints);
        facts = List.copyOf(facts);
    }

    public Optional<TrimmedCut> cut(String id) {
        return cuts.stream().filter(cut -> cut.id().equals(id)).findFirst();
    }

    public Optional<QualityFact> fact(String id) {
        return facts.stream().filter(fact -> fact.id().equals(id)).findFirst();
    }
}
