package org.holdproof.core.kinetics;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.rules.Citation;
import org.holdproof.core.rules.GrowthLag;
import org.holdproof.core.rules.GrowthModel;
import org.holdproof.core.rules.GrowthModel.Concern;

/**
 * Modelled growth of one organism over a stretch of a record. The figures are an order of size; every text gives them in
 * whole or half logs, and so should whoever prints them.
 *
 * @param models the models behind it; of several the fastest at each temperature counted
 * @param withoutLag log10 increase of cells that grow at once; worst is the largest
 * @param lagging log10 increase from spores, after a cook that killed the growing cells; empty where no lag may be
 *     counted
 * @param spansGap whether the worst counts a gap in the record as growth at its fastest
 */
public record GrowthRange(
        String organism, List<GrowthModel> models, Bounded withoutLag, Optional<Lagging> lagging, boolean spansGap) {

    /** What every such figure must be printed with. */
    public static final String CAUTION =
            "An order of size from a model, not a measurement: it cannot clear or condemn a"
                    + " lot, and it never overrides the legal schedule, either way.";

    public GrowthRange {
        models = List.copyOf(models);
    }

    /**
     * Growth from spores.
     *
     * @param log10 log10 increase; worst is the largest
     */
    public record Lagging(GrowthLag lag, Bounded log10) {}

    /** The ids of the models behind it. */
    public String modelId() {
        return models.stream().map(GrowthModel::id).collect(Collectors.joining("+"));
    }

    /** The least growth the record allows, with lag where one may be counted, in log10. */
    public double lowLog10() {
        return lagging.map(Lagging::log10).orElse(withoutLag).best();
    }

    /** The most growth the record allows, without lag, in log10. */
    public double highLog10() {
        return withoutLag.worst();
    }

    /** The largest count, in log10 CFU/g, from the count assumed at the start; no death is counted. */
    public Bounded peakLog10PerGram() {
        double start = start(models);
        return new Bounded(start + withoutLag.worst(), start + withoutLag.nominal(), start + withoutLag.best());
    }

    /** The count that is a danger in itself, where the most growth may have reached it. */
    public Optional<Concern> concern() {
        return models.stream()
                .flatMap(model -> model.concern().stream())
                .filter(concern -> peakLog10PerGram().worst() >= concern.log10())
                .findFirst();
    }

    /** The count assumed at the start, in log10 CFU/g. */
    static double start(List<GrowthModel> models) {
        return models.stream().mapToDouble(GrowthModel::startLog10).max().orElseThrow();
    }

    /** The range in words: {@code Salmonella: modelled growth 1 to 2 logs (no lag counted).} */
    public String text() {
        StringBuilder text = new StringBuilder(organism);
        text.append(": modelled growth ").append(HalfLogs.range(lowLog10(), highLog10()));
        text.append(
                lagging.map(found -> " (with a lag" + unconfirmed(found.lag().citation(), ",") + " and without one).")
                        .orElse(" (no lag counted)."));
        if (spansGap) {
            text.append(" The upper end counts gaps in the record as growth at its fastest.");
        }
        concern().ifPresent(concern -> text.append(" The count may have reached ")
                .append(HalfLogs.figure(concern.log10()))
                .append(" log10 CFU/g. ")
                .append(concern.why().statement())
                .append(unconfirmed(concern.why().citation(), ""))
                .append('.'));
        return text.toString();
    }

    private static String unconfirmed(Citation citation, String end) {
        return citation.how().isUnconfirmed() ? ", " + citation.how().caveat() + end : "";
    }

    /** What the range cannot claim, and what it assumes. */
    public String caveat() {
        String own = models.stream().map(GrowthModel::caveat).distinct().collect(Collectors.joining(" "));
        double ceiling =
                models.stream().mapToDouble(GrowthModel::ceilingLog10).max().orElseThrow();
        return own + " It assumes " + HalfLogs.figure(start(models)) + " log10 CFU/g at the start and at most "
                + HalfLogs.figure(ceiling) + " log10 CFU/g. " + CAUTION;
    }

    /** Where the models, the lag and the count of concern stand; unconfirmed ones say so. */
    public List<Citation> citations() {
        List<Citation> citations = new ArrayList<>(
                models.stream().map(GrowthModel::citation).distinct().toList());
        lagging.ifPresent(found -> citations.add(found.lag().citation()));
        models.stream()
                .flatMap(model -> model.concern().stream())
                .forEach(concern -> citations.add(concern.why().citation()));
        return List.copyOf(citations);
    }
}
