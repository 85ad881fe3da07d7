package org.holdproof.core.quality;

import java.util.List;
import java.util.function.ToDoubleFunction;
import org.holdproof.core.quality.LeanLoss.Protein;
import org.holdproof.core.quality.TenderTime.Line;
import org.holdproof.core.quantity.Predicted;
import org.holdproof.core.rules.LossRange;
import org.holdproof.core.rules.ModelParameter;
import org.holdproof.core.rules.QualityTables;
import org.holdproof.core.rules.RuleLibrary;

/** The models of weight and tenderness with their parameters as published or derived. Immutable. */
public final class QualityModels {
    private final QualityTables tables;
    private final LeanLoss low;
    private final LeanLoss central;
    private final LeanLoss high;
    private final TenderTime tenderTime;

    private QualityModels(QualityTables tables) {
        this.tables = tables;
        low = lean(ModelParameter::low);
        central = lean(ModelParameter::central);
        high = lean(ModelParameter::high);
        ModelParameter energy = parameter("tender-energy");
        ModelParameter hours = parameter("tender-hours-70");
        tenderTime = new TenderTime(
                new Line(energy.low(), hours.high()),
                new Line(energy.central(), hours.central()),
                new Line(energy.high(), hours.low()),
                parameter("tender-scatter").central());
    }

    /**
     * The models with a library's parameters.
     *
     * @throws IllegalArgumentException if its tables are from before there were any
     */
    public static QualityModels of(RuleLibrary library) {
        return new QualityModels(library.quality());
    }

    /** The models with the built-in parameters. */
    public static QualityModels builtIn() {
        return BuiltIn.MODELS;
    }

    /** Loads on first use, and only once. */
    private static final class BuiltIn {
        static final QualityModels MODELS = of(RuleLibrary.builtIn());
    }

    private LeanLoss lean(ToDoubleFunction<ModelParameter> set) {
        return new LeanLoss(
                figure("lean-scale", set),
                List.of(
                        protein("myosin", "myosin-57", 57, set),
                        protein("sarcoplasm-collagen", "sarcoplasm-collagen-58", 58, set),
                        protein("actin", "actin-70", 70, set)),
                figure("lean-lag-75mm", set));
    }

    private Protein protein(String name, String rate, double referenceCelsius, ToDoubleFunction<ModelParameter> set) {
        return new Protein(
                figure("lean-share-" + name, set),
                new ArrheniusRate(
                        figure("lean-rate-" + rate, set), referenceCelsius, figure("lean-energy-" + name, set)));
    }

    private double figure(String id, ToDoubleFunction<ModelParameter> set) {
        return set.applyAsDouble(parameter(id));
    }

    private ModelParameter parameter(String id) {
        ModelParameter parameter = tables.parameters().get(id);
        if (parameter == null) {
            throw new IllegalArgumentException("these tables hold no parameter " + id + " of a model of quality");
        }
        return parameter;
    }

    /** The published tables behind the models. */
    public QualityTables tables() {
        return tables;
    }

    /** The set for the least, the likeliest or the most loss. */
    LeanLoss low() {
        return low;
    }

    LeanLoss central() {
        return central;
    }

    LeanLoss high() {
        return high;
    }

    TenderTime tenderTime() {
        return tenderTime;
    }

    /** Three figures of one parameter that run from low to high. */
    Predicted range(String id) {
        ModelParameter parameter = parameter(id);
        return new Predicted(parameter.low(), parameter.central(), parameter.high());
    }

    /** One standard deviation between pieces cooked alike, in points of the raw weight. */
    double betweenPieces() {
        return parameter("between-pieces").central();
    }

    /** The published ranges for a food whose core ended at a temperature. */
    List<LossRange> ranges(String species, double celsius) {
        return tables.lossRanges().stream()
                .filter(range -> range.species().contains(species))
                .filter(range -> celsius >= range.fromCelsius() && celsius < range.toCelsius())
                .toList();
    }
}
