package org.holdproof.core.standard;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.batch.Product;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.standard.AuthorityProfile.LethalityChoice;
import org.holdproof.core.standard.AuthorityProfile.Paper;
import org.holdproof.core.standard.HoldingRule.Kind;

/** Reads {@code authorities/ID.json}: which rule answers which question. */
final class ProfileFiles {
    private static final List<String> FIELDS = List.of("id", "title", "units", "paper", "lethality", "cooling", "left");
    private static final List<String> OPTIONAL =
            List.of("margin", "comeUp", "hotHold", "coldHold", "reheat", "accuracy", "checkEvery");
    private static final String FOLDER = "authorities";

    private final TableFiles files;
    private final Map<String, LethalityTable> lethality;
    private final Map<String, ThermalDeath> kinetics;
    private final Map<String, CoolingRule> cooling;
    private final Map<String, HoldingRule> holding;
    private final Map<String, ReheatingRule> reheating;
    private final Map<String, WrittenRule> measurement;

    ProfileFiles(
            TableFiles files,
            Map<String, LethalityTable> lethality,
            Map<String, ThermalDeath> kinetics,
            Map<String, CoolingRule> cooling,
            Map<String, HoldingRule> holding,
            Map<String, ReheatingRule> reheating,
            Map<String, WrittenRule> measurement) {
        this.files = files;
        this.lethality = lethality;
        this.kinetics = kinetics;
        this.cooling = cooling;
        this.holding = holding;
        this.reheating = reheating;
        this.measurement = measurement;
    }

    Map<String, AuthorityProfile> read() throws UnreadableTablesException {
        Map<String, AuthorityProfile> profiles = new LinkedHashMap<>();
        for (String file : files.inFolder(FOLDER)) {
            JsonValue json = JsonValue.root(file, StrictJson.read(file, files.bytes(file)));
            AuthorityProfile profile = profile(json);
            if (!file.equals(FOLDER + "/" + profile.id() + ".json")) {
                throw json.field("id").fault("the file's own name without .json", "Rename the file or correct the id.");
            }
            profiles.put(profile.id(), profile);
        }
        return profiles;
    }

    private AuthorityProfile profile(JsonValue json) throws UnreadableTablesException {
        json.requireFields(FIELDS, OPTIONAL);
        return new AuthorityProfile(
                json.field("id").text(),
                json.field("title").text(),
                units(json.field("units")),
                json.field("paper").choice(Paper.values()),
                choices(json.field("lethality")),
                oneIfAny(json.field("margin"), kinetics, "kinetics.csv"),
                heldTo(json.field("comeUp"), Kind.COME_UP),
                all(json.field("cooling"), cooling, "cooling.csv"),
                heldTo(json.field("hotHold"), Kind.HOT_MINIMUM),
                heldTo(json.field("coldHold"), Kind.COLD_MAXIMUM),
                oneIfAny(json.field("reheat"), reheating, "reheating.csv"),
                accuracy(json.field("accuracy")),
                days(json.field("checkEvery")),
                json.field("left").texts());
    }

    private static List<TemperatureUnit> units(JsonValue json) throws UnreadableTablesException {
        List<TemperatureUnit> units = new ArrayList<>();
        for (JsonValue item : json.items()) {
            units.add(item.unit());
        }
        if (units.isEmpty() || units.stream().distinct().count() != units.size()) {
            throw json.fault("one or two different scales", "Write C, F or both, the leading one first.");
        }
        return units;
    }

    private List<LethalityChoice> choices(JsonValue json) throws UnreadableTablesException {
        List<LethalityChoice> choices = new ArrayList<>();
        for (JsonValue item : json.items()) {
            item.requireFields(List.of("species", "forms", "tables"), List.of("kinetics"));
            LethalityChoice choice = new LethalityChoice(
                    names(item.field("species"), Product.Species.values()),
                    names(item.field("forms"), Product.Form.values()),
                    all(item.field("tables"), lethality, "lethality/index.csv"),
                    oneIfAny(item.field("kinetics"), kinetics, "kinetics.csv"));
            if (choice.tables().isEmpty() && choice.kinetics().isEmpty()) {
                throw item.fault("a table or kinetics", "Name what serves this food, or take the choice out.");
            }
            if (choice.kinetics().isPresent()
                    && choice.kinetics().get().targetLog10().isEmpty()) {
                throw item.field("kinetics").fault("kinetics with a target", "Fill target_log10 of that row.");
            }
            choices.add(choice);
        }
        return choices;
    }

    private static <E extends Enum<E>> List<String> names(JsonValue json, E[] constants)
            throws UnreadableTablesException {
        List<String> known = Arrays.stream(constants).map(CsvRow::word).toList();
        for (JsonValue item : json.items()) {
            if (!known.contains(item.text())) {
                throw item.fault("one of " + String.join(", ", known), "Write one of these.");
            }
        }
        return json.texts();
    }

    private static <T> List<T> all(JsonValue json, Map<String, T> rules, String file) throws UnreadableTablesException {
        List<T> found = new ArrayList<>();
        for (JsonValue item : json.items()) {
            found.add(one(item, rules, file));
        }
        return found;
    }

    private static <T> Optional<T> oneIfAny(JsonValue json, Map<String, T> rules, String file)
            throws UnreadableTablesException {
        return json.isAbsent() ? Optional.empty() : Optional.of(one(json, rules, file));
    }

    private static <T> T one(JsonValue json, Map<String, T> rules, String file) throws UnreadableTablesException {
        T rule = rules.get(json.text());
        if (rule == null) {
            throw json.fault("an id of " + file, "Correct the id, or add the rule.");
        }
        return rule;
    }

    private Optional<HoldingRule> heldTo(JsonValue json, Kind kind) throws UnreadableTablesException {
        Optional<HoldingRule> rule = oneIfAny(json, holding, "holding.csv");
        if (rule.isPresent() && rule.get().kind() != kind) {
            throw json.fault("a rule of kind " + CsvRow.word(kind), "Name a rule of that kind.");
        }
        return rule;
    }

    private OptionalDouble accuracy(JsonValue json) throws UnreadableTablesException {
        Optional<WrittenRule> rule = oneIfAny(json, measurement, "measurement.csv");
        if (rule.isEmpty()) {
            return OptionalDouble.empty();
        }
        TemperatureUnit unit =
                switch (rule.get().unit()) {
                    case "C" -> TemperatureUnit.CELSIUS;
                    case "F" -> TemperatureUnit.FAHRENHEIT;
                    default -> throw json.fault("a rule in C or F", "Name a rule on accuracy.");
                };
        if (rule.get().tolerance().isEmpty()) {
            throw json.fault("a rule with a tolerance", "Name a rule on accuracy.");
        }
        return OptionalDouble.of(unit.differenceToCelsius(rule.get().tolerance().getAsDouble()));
    }

    private OptionalDouble days(JsonValue json) throws UnreadableTablesException {
        Optional<WrittenRule> rule = oneIfAny(json, measurement, "measurement.csv");
        if (rule.isEmpty()) {
            return OptionalDouble.empty();
        }
        if (!rule.get().unit().equals("d") || rule.get().value().isEmpty()) {
            throw json.fault("a rule with a number of days", "Name a rule on how often a thermometer is checked.");
        }
        return rule.get().value();
    }
}
