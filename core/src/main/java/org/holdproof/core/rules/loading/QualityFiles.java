package org.holdproof.core.rules.loading;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.holdproof.core.input.CsvRow;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.quantity.Predicted;
import org.holdproof.core.rules.LossRange;
import org.holdproof.core.rules.ModelParameter;
import org.holdproof.core.rules.PublishedYield;
import org.holdproof.core.rules.QualityFact;
import org.holdproof.core.rules.QualityTables;
import org.holdproof.core.rules.TenderPoint;
import org.holdproof.core.rules.TrimmedCut;
import org.holdproof.core.rules.WeightLossCase;
import org.holdproof.core.rules.WeightLossCase.Heating;
import org.holdproof.core.rules.WeightLossCase.Use;

/** Reads what is published about weight, tenderness, colour and yield. */
public final class QualityFiles {
    private static final List<String> END = List.of("source", "how", "note");
    private static final List<String> MODEL = columns("id", "title", "low", "central", "high", "unit");
    private static final List<String> CUTS =
            columns("id", "title", "species", "lean_share_low", "lean_share_high", "rendered_low", "rendered_high");
    private static final List<String> LOSSES = columns(
            "id",
            "species",
            "cut",
            "method",
            "history",
            "celsius",
            "hours",
            "size_mm",
            "ramp_low",
            "ramp_high",
            "lean_share_low",
            "lean_share_high",
            "rendered_low",
            "rendered_high",
            "evaporated_low",
            "evaporated_high",
            "loss",
            "loss_low",
            "loss_high",
            "pieces",
            "use");
    private static final List<String> RANGES =
            columns("id", "title", "species", "from_celsius", "to_celsius", "low", "high");
    private static final List<String> YIELDS = columns(
            "id",
            "species",
            "cut",
            "step",
            "basis",
            "yield",
            "yield_low",
            "yield_high",
            "moisture_change",
            "fat_change",
            "pieces");
    private static final List<String> POINTS = columns("id", "material", "celsius", "hours_low", "hours_high", "used");
    private static final List<String> FACTS =
            columns("id", "topic", "material", "quantity", "celsius", "time", "value", "unit");
    private static final double LARGEST = 1e6;

    private final TableFiles files;
    private final Sources sources;

    public QualityFiles(TableFiles files, Sources sources) {
        this.files = files;
        this.sources = sources;
    }

    private static List<String> columns(String... own) {
        return Stream.concat(Stream.of(own), END.stream()).toList();
    }

    private enum History {
        NONE,
        BATH,
        RAMP
    }

    public QualityTables read() throws UnreadableInputException {
        return new QualityTables(parameters(), cuts(), weightLosses(), lossRanges(), yields(), tenderPoints(), facts());
    }

    private Map<String, ModelParameter> parameters() throws UnreadableInputException {
        Map<String, ModelParameter> parameters = new LinkedHashMap<>();
        for (CsvRow row : files.rows("quality-model", MODEL)) {
            row.putUnder(
                    parameters,
                    new ModelParameter(
                            row.required("id"),
                            row.required("title"),
                            row.number("low", 0, LARGEST),
                            row.number("central", 0, LARGEST),
                            row.number("high", 0, LARGEST),
                            row.required("unit"),
                            sources.ofPrediction(row)));
        }
        return parameters;
    }

    private List<TrimmedCut> cuts() throws UnreadableInputException {
        Map<String, TrimmedCut> cuts = new LinkedHashMap<>();
        for (CsvRow row : files.rows("cuts", CUTS)) {
            row.putUnder(
                    cuts,
                    new TrimmedCut(
                            row.required("id"),
                            row.required("title"),
                            species(row).get(0),
                            range(row, "lean_share_low", "lean_share_high", 1),
                            range(row, "rendered_low", "rendered_high", 100),
                            sources.ofPrediction(row)));
        }
        return List.copyOf(cuts.values());
    }

    private List<WeightLossCase> weightLosses() throws UnreadableInputException {
        Map<String, WeightLossCase> losses = new LinkedHashMap<>();
        for (CsvRow row : files.rows("weight-losses", LOSSES)) {
            row.countIfAny("pieces", 1, 100_000);
            History history = row.choice("history", History.values());
            row.putUnder(
                    losses,
                    new WeightLossCase(
                            row.required("id"),
                            row.required("species"),
                            row.required("cut"),
                            row.required("method"),
                            figures(row, "celsius", 20, 130),
                            figures(row, "hours", 0.01, 1000),
                            heating(row, history),
                            row.numberIfAny("size_mm", 1, 1000),
                            rangeOr(row, "lean_share_low", "lean_share_high", 1, Predicted.exactly(1)),
                            rangeOr(row, "rendered_low", "rendered_high", 100, Predicted.exactly(0)),
                            rangeOr(row, "evaporated_low", "evaporated_high", 100, Predicted.exactly(0)),
                            lost(row),
                            row.choice("use", Use.values()),
                            sources.ofPrediction(row)));
        }
        return List.copyOf(losses.values());
    }

    private static Optional<Heating> heating(CsvRow row, History history) throws UnreadableInputException {
        return switch (history) {
            case NONE -> Optional.empty();
            case BATH -> Optional.of(new Heating.Bath());
            case RAMP -> {
                double slowest = row.number("ramp_low", 0.01, 100);
                yield Optional.of(new Heating.Ramp(slowest, row.number("ramp_high", slowest, 100)));
            }
        };
    }

    private static Predicted lost(CsvRow row) throws UnreadableInputException {
        OptionalDouble low = row.numberIfAny("loss_low", 0, 100);
        OptionalDouble high = row.numberIfAny("loss_high", 0, 100);
        if (row.isBlank("loss")) {
            return Predicted.between(row.number("loss_low", 0, 100), row.number("loss_high", 0, 100));
        }
        double loss = row.number("loss", 0, 100);
        return new Predicted(Math.min(loss, low.orElse(loss)), loss, Math.max(loss, high.orElse(loss)));
    }

    private List<LossRange> lossRanges() throws UnreadableInputException {
        Map<String, LossRange> ranges = new LinkedHashMap<>();
        for (CsvRow row : files.rows("loss-ranges", RANGES)) {
            double from = row.number("from_celsius", 0, 130);
            double low = row.number("low", 0, 100);
            row.putUnder(
                    ranges,
                    new LossRange(
                            row.required("id"),
                            row.required("title"),
                            species(row),
                            from,
                            row.number("to_celsius", from, 130),
                            low,
                            row.number("high", low, 100),
                            sources.ofPrediction(row)));
        }
        return List.copyOf(ranges.values());
    }

    private List<PublishedYield> yields() throws UnreadableInputException {
        Map<String, PublishedYield> yields = new LinkedHashMap<>();
        for (CsvRow row : files.rows("yields", YIELDS)) {
            row.numberIfAny("moisture_change", -100, 100);
            row.numberIfAny("fat_change", -100, 100);
            row.putUnder(
                    yields,
                    new PublishedYield(
                            row.required("id"),
                            row.required("species"),
                            row.required("cut"),
                            row.required("step"),
                            row.required("basis"),
                            row.numberIfAny("yield", 0, 100),
                            row.numberIfAny("yield_low", 0, 100),
                            row.numberIfAny("yield_high", 0, 100),
                            row.countIfAny("pieces", 1, 100_000),
                            sources.ofPrediction(row)));
        }
        return List.copyOf(yields.values());
    }

    private List<TenderPoint> tenderPoints() throws UnreadableInputException {
        Map<String, TenderPoint> points = new LinkedHashMap<>();
        for (CsvRow row : files.rows("tender-points", POINTS)) {
            double low = row.number("hours_low", 0.01, 1000);
            row.putUnder(
                    points,
                    new TenderPoint(
                            row.required("id"),
                            row.required("material"),
                            row.number("celsius", 40, 130),
                            low,
                            row.number("hours_high", low, 1000),
                            row.yes("used"),
                            sources.ofPrediction(row)));
        }
        return List.copyOf(points.values());
    }

    private List<QualityFact> facts() throws UnreadableInputException {
        Map<String, QualityFact> facts = new LinkedHashMap<>();
        for (CsvRow row : files.rows("quality-facts", FACTS)) {
            row.putUnder(
                    facts,
                    new QualityFact(
                            row.required("id"),
                            row.required("topic"),
                            row.required("material"),
                            row.required("quantity"),
                            row.text("celsius"),
                            row.text("time"),
                            row.text("value"),
                            row.text("unit"),
                            sources.ofPrediction(row)));
        }
        return List.copyOf(facts.values());
    }

    private static List<String> species(CsvRow row) throws UnreadableInputException {
        List<String> species = List.of(row.required("species").split(";", -1));
        for (String name : species) {
            if (!GrowthFiles.SPECIES.contains(name)) {
                throw row.fault(
                        "species",
                        "some of " + String.join(", ", GrowthFiles.SPECIES),
                        "Write species as in a batch record, with ; between them.");
            }
        }
        return species;
    }

    /** Figures with {@code ;} between them, perhaps none. */
    private static List<Double> figures(CsvRow row, String column, double min, double max)
            throws UnreadableInputException {
        List<Double> figures = new ArrayList<>();
        if (!row.isBlank(column)) {
            for (String text : row.text(column).split(";", -1)) {
                double figure = CsvRow.isPlainNumber(text) ? Double.parseDouble(text) : Double.NaN;
                if (!(figure >= min && figure <= max)) {
                    throw row.fault(
                            column, "figures from " + min + " to " + max, "Write them with ; between, no blanks.");
                }
                figures.add(figure);
            }
        }
        return figures;
    }

    private static Predicted range(CsvRow row, String lowColumn, String highColumn, double max)
            throws UnreadableInputException {
        double low = row.number(lowColumn, 0, max);
        return Predicted.between(low, row.number(highColumn, low, max));
    }

    private static Predicted rangeOr(CsvRow row, String lowColumn, String highColumn, double max, Predicted otherwise)
            throws UnreadableInputException {
        return row.isBlank(lowColumn) ? otherwise : range(row, lowColumn, highColumn, max);
    }
}
