package org.holdproof.core.rules.loading;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.holdproof.core.batch.Product.Species;
import org.holdproof.core.input.CsvRow;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.rules.DeathTime;
import org.holdproof.core.rules.GrowthFact;
import org.holdproof.core.rules.GrowthLag;
import org.holdproof.core.rules.GrowthModel;
import org.holdproof.core.rules.GrowthModel.Concern;
import org.holdproof.core.rules.RuleSet;

/** Reads what is known of growth and of measured death times. */
public final class GrowthFiles {
    private static final List<String> END = List.of("source", "document", "section", "how", "note");
    private static final List<String> MODELS = columns(
            "id",
            "title",
            "organism",
            "food",
            "species",
            "min_celsius",
            "optimum_celsius",
            "max_celsius",
            "optimum_rate",
            "rate_unit",
            "start_log10",
            "ceiling_log10",
            "concern_log10",
            "concern_fact",
            "caveat");
    private static final List<String> LAGS = columns("id", "organism", "food", "species", "q0");
    private static final List<String> FACTS = columns("id", "topic", "statement");
    private static final List<String> DEATH_TIMES = columns(
            "id",
            "organism",
            "strain",
            "food",
            "method",
            "celsius",
            "d_low_minutes",
            "d_high_minutes",
            "z_low_celsius",
            "z_high_celsius");

    /** The batch record's words for the foods the rules tell apart. */
    static final List<String> SPECIES =
            Arrays.stream(Species.values()).map(CsvRow::word).toList();

    private final TableFiles files;
    private final Sources sources;

    public GrowthFiles(TableFiles files, Sources sources) {
        this.files = files;
        this.sources = sources;
    }

    private static List<String> columns(String... own) {
        return Stream.concat(Stream.of(own), END.stream()).toList();
    }

    private enum RateUnit {
        LN_PER_HOUR,
        LOG10_PER_HOUR
    }

    public RuleSet<GrowthModel> models(RuleSet<GrowthFact> facts) throws UnreadableInputException {
        Map<String, GrowthModel> models = new LinkedHashMap<>();
        for (CsvRow row : files.rows("growth-models", MODELS)) {
            double max = row.number("max_celsius", 0, 70);
            double min = row.number("min_celsius", -10, 60);
            double optimum = row.number("optimum_celsius", 0, 70);
            if (!(min < max && optimum < max && optimum > (min + max) / 2)) {
                throw row.fault(
                        "optimum_celsius",
                        "a temperature in the upper half between min_celsius and max_celsius",
                        "Correct the cardinal temperatures.");
            }
            double rate = row.number("optimum_rate", 0.01, 20);
            boolean decimal = row.choice("rate_unit", RateUnit.values()) == RateUnit.LOG10_PER_HOUR;
            row.putUnder(
                    models,
                    new GrowthModel(
                            row.required("id"),
                            row.required("title"),
                            row.required("organism"),
                            row.required("food"),
                            species(row),
                            min,
                            optimum,
                            max,
                            decimal ? rate * Math.log(10) : rate,
                            row.number("start_log10", -2, 5),
                            row.number("ceiling_log10", 6, 12),
                            concern(row, facts),
                            row.required("caveat"),
                            sources.citation(row)));
        }
        return new RuleSet<>(GrowthModel.class, "Growth models", "growth-models.csv", models.values());
    }

    private static Optional<Concern> concern(CsvRow row, RuleSet<GrowthFact> facts) throws UnreadableInputException {
        if (row.isBlank("concern_log10")) {
            return Optional.empty();
        }
        Optional<GrowthFact> why = facts.find(row.required("concern_fact"));
        if (why.isEmpty()) {
            throw row.fault("concern_fact", "an id of growth-facts.csv", "Add the fact, or correct the id.");
        }
        return Optional.of(new Concern(row.number("concern_log10", 0, 12), why.get()));
    }

    public RuleSet<GrowthLag> lags() throws UnreadableInputException {
        Map<String, GrowthLag> lags = new LinkedHashMap<>();
        for (CsvRow row : files.rows("growth-lags", LAGS)) {
            row.required("species");
            row.putUnder(
                    lags,
                    new GrowthLag(
                            row.required("id"),
                            row.required("organism"),
                            row.required("food"),
                            species(row),
                            row.number("q0", 1e-6, 1e3),
                            sources.citation(row)));
        }
        return new RuleSet<>(GrowthLag.class, "Lag before growth", "growth-lags.csv", lags.values());
    }

    private static List<String> species(CsvRow row) throws UnreadableInputException {
        List<String> species =
                row.isBlank("species") ? List.of() : List.of(row.text("species").split(";", -1));
        for (String name : species) {
            if (!name.equals(GrowthModel.ANY) && !SPECIES.contains(name)) {
                throw row.fault(
                        "species",
                        GrowthModel.ANY + " or some of " + String.join(", ", SPECIES),
                        "Write species as in a batch record, with ; between them.");
            }
        }
        return species;
    }

    public RuleSet<GrowthFact> facts() throws UnreadableInputException {
        Map<String, GrowthFact> facts = new LinkedHashMap<>();
        for (CsvRow row : files.rows("growth-facts", FACTS)) {
            row.putUnder(
                    facts,
                    new GrowthFact(
                            row.required("id"),
                            row.required("topic"),
                            row.required("statement"),
                            sources.citation(row)));
        }
        return new RuleSet<>(GrowthFact.class, "Facts of growth", "growth-facts.csv", facts.values());
    }

    public RuleSet<DeathTime> deathTimes() throws UnreadableInputException {
        Map<String, DeathTime> times = new LinkedHashMap<>();
        for (CsvRow row : files.rows("inactivation", DEATH_TIMES)) {
            double low = row.number("d_low_minutes", 1e-4, 1e5);
            row.putUnder(
                    times,
                    new DeathTime(
                            row.required("id"),
                            row.required("organism"),
                            row.text("strain"),
                            row.required("food"),
                            row.text("method"),
                            row.number("celsius", 40, 150),
                            low,
                            row.number("d_high_minutes", low, 1e5),
                            row.numberIfAny("z_low_celsius", 1, 100),
                            row.numberIfAny("z_high_celsius", 1, 100),
                            sources.citation(row)));
        }
        return new RuleSet<>(DeathTime.class, "Measured death times", "inactivation.csv", times.values());
    }
}
