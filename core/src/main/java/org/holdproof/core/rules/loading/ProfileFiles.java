package org.holdproof.core.rules.loading;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.input.CsvRow;
import org.holdproof.core.input.JsonValue;
import org.holdproof.core.input.StrictJson;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.AuthorityProfile;
import org.holdproof.core.rules.AuthorityProfile.LethalityChoice;
import org.holdproof.core.rules.AuthorityProfile.Paper;
import org.holdproof.core.rules.CoolingRule;
import org.holdproof.core.rules.HoldingRule;
import org.holdproof.core.rules.HoldingRule.Kind;
import org.holdproof.core.rules.HumidityOption;
import org.holdproof.core.rules.LethalityTable;
import org.holdproof.core.rules.ReheatingRule;
import org.holdproof.core.rules.ShelfLifeRule;
import org.holdproof.core.rules.ThermalDeath;
import org.holdproof.core.rules.TimeLimit;
import org.holdproof.core.rules.WrittenRule;

/** Reads {@code authorities/ID.json}: which rule answers which question. */
public final class ProfileFiles {
    private static final List<String> FIELDS = List.of("id", "title", "units", "paper", "lethality", "cooling", "left");
    private static final List<String> OPTIONAL = List.of(
            "comeUp",
            "hotHold",
            "coldHold",
            "reheat",
            "accuracy",
            "checkEvery",
            "humidity",
            "hotHoldRoast",
            "nonContinuous",
            "lowCook",
            "seal",
            "shelfLives",
            "timeLimits",
            "records",
            "approval");
    private static final String FOLDER = "authorities";
    /** How the id of a kitchen's own validated process begins. */
    private static final String SITE = "site";

    /** The batch record's words for what a rule tells apart. */
    public static final List<String> SPECIES =
            List.of("beef", "veal", "pork", "lamb", "game", "chicken", "turkey", "other-poultry", "fish");

    public static final List<String> FORMS = List.of("intact", "non-intact", "comminuted");

    private final TableFiles files;
    private final Rules rules;

    /** What profiles name by id. */
    public record Rules(
            Map<String, LethalityTable> lethality,
            Map<String, ThermalDeath> kinetics,
            Map<String, CoolingRule> cooling,
            Map<String, HoldingRule> holding,
            Map<String, ReheatingRule> reheating,
            Map<String, HumidityOption> humidity,
            Map<String, ShelfLifeRule> shelfLives,
            Map<String, TimeLimit> timeLimits,
            Map<String, Map<String, WrittenRule>> written) {

        Map<String, WrittenRule> group(String name) {
            return written.getOrDefault(name, Map.of());
        }
    }

    public ProfileFiles(TableFiles files, Rules rules) {
        this.files = files;
        this.rules = rules;
    }

    public Map<String, AuthorityProfile> read() throws UnreadableInputException {
        Map<String, AuthorityProfile> profiles = new LinkedHashMap<>();
        for (String file : files.inFolder(FOLDER)) {
            JsonValue json = StrictJson.read(file, files.bytes(file), "an authority profile");
            AuthorityProfile profile = profile(json);
            if (!file.equals(FOLDER + "/" + profile.id() + ".json")) {
                throw json.field("id").fault("the file's own name without .json", "Rename the file or correct the id.");
            }
            profiles.put(profile.id(), profile);
        }
        return profiles;
    }

    private AuthorityProfile profile(JsonValue json) throws UnreadableInputException {
        json.requireFields(FIELDS, OPTIONAL);
        return new AuthorityProfile(
                json.field("id").text(),
                title(json),
                units(json.field("units")),
                json.field("paper").choice(Paper.values()),
                choices(json.field("lethality")),
                heldTo(json.fieldIfAny("comeUp"), Kind.COME_UP),
                all(json.field("cooling"), rules.cooling(), "cooling.csv"),
                heldTo(json.fieldIfAny("hotHold"), Kind.HOT_MINIMUM),
                heldTo(json.fieldIfAny("coldHold"), Kind.COLD_MAXIMUM),
                oneIfAny(json.fieldIfAny("reheat"), rules.reheating(), "reheating.csv"),
                accuracy(json.fieldIfAny("accuracy")),
                days(json.fieldIfAny("checkEvery")),
                allIfAny(json.fieldIfAny("humidity"), rules.humidity(), "humidity.csv"),
                heldTo(json.fieldIfAny("hotHoldRoast"), Kind.HOT_MINIMUM),
                oneIfAny(json.fieldIfAny("nonContinuous"), rules.cooling(), "cooling.csv"),
                heldTo(json.fieldIfAny("lowCook"), Kind.LOW_COOK),
                oneIfAny(json.fieldIfAny("seal"), rules.group("packaging"), "packaging.csv"),
                allIfAny(json.fieldIfAny("shelfLives"), rules.shelfLives(), "shelf-life.csv"),
                allIfAny(json.fieldIfAny("timeLimits"), rules.timeLimits(), "time-limits.csv"),
                allIfAny(json.fieldIfAny("records"), rules.group("records"), "records.csv"),
                json.field("left").texts());
    }

    /** A site's own process bears its approval wherever its title is printed. */
    private static String title(JsonValue json) throws UnreadableInputException {
        Optional<JsonValue> approval = json.fieldIfAny("approval");
        if (approval.isEmpty() && json.field("id").text().startsWith(SITE)) {
            throw json.fault(
                    "approval, the reference of the approved process", "Add the member approval to the profile.");
        }
        return json.field("title").text()
                + (approval.isPresent() ? ", approval " + approval.get().text() : "");
    }

    private static List<TemperatureUnit> units(JsonValue json) throws UnreadableInputException {
        List<TemperatureUnit> units = new ArrayList<>();
        for (JsonValue item : json.items()) {
            units.add(item.unit());
        }
        if (units.isEmpty() || units.stream().distinct().count() != units.size()) {
            throw json.fault("one or two different scales", "Write C, F or both, the leading one first.");
        }
        return units;
    }

    private List<LethalityChoice> choices(JsonValue json) throws UnreadableInputException {
        List<LethalityChoice> choices = new ArrayList<>();
        for (JsonValue item : json.items()) {
            item.requireFields(List.of("species", "forms", "tables"), List.of("kinetics", "margin"));
            LethalityChoice choice = new LethalityChoice(
                    names(item.field("species"), SPECIES),
                    names(item.field("forms"), FORMS),
                    all(item.field("tables"), rules.lethality(), "lethality/index.csv"),
                    oneIfAny(item.fieldIfAny("kinetics"), rules.kinetics(), "kinetics.csv"),
                    allIfAny(item.fieldIfAny("margin"), rules.kinetics(), "kinetics.csv"));
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

    private static List<String> names(JsonValue json, List<String> known) throws UnreadableInputException {
        for (JsonValue item : json.items()) {
            if (!known.contains(item.text())) {
                throw item.fault("one of " + String.join(", ", known), "Write one of these.");
            }
        }
        return json.texts();
    }

    private static <T> List<T> all(JsonValue json, Map<String, T> rules, String file) throws UnreadableInputException {
        List<T> found = new ArrayList<>();
        for (JsonValue item : json.items()) {
            found.add(one(item, rules, file));
        }
        return found;
    }

    private static <T> List<T> allIfAny(Optional<JsonValue> json, Map<String, T> rules, String file)
            throws UnreadableInputException {
        return json.isPresent() ? all(json.get(), rules, file) : List.of();
    }

    private static <T> Optional<T> oneIfAny(Optional<JsonValue> json, Map<String, T> rules, String file)
            throws UnreadableInputException {
        return json.isEmpty() ? Optional.empty() : Optional.of(one(json.get(), rules, file));
    }

    private static <T> T one(JsonValue json, Map<String, T> rules, String file) throws UnreadableInputException {
        T rule = rules.get(json.text());
        if (rule == null) {
            throw json.fault("an id of " + file, "Correct the id, or add the rule.");
        }
        return rule;
    }

    private Optional<HoldingRule> heldTo(Optional<JsonValue> json, Kind kind) throws UnreadableInputException {
        Optional<HoldingRule> rule = oneIfAny(json, rules.holding(), "holding.csv");
        if (json.isPresent() && rule.isPresent() && rule.get().kind() != kind) {
            throw json.get().fault("a rule of kind " + CsvRow.word(kind), "Name a rule of that kind.");
        }
        return rule;
    }

    private OptionalDouble accuracy(Optional<JsonValue> json) throws UnreadableInputException {
        if (json.isEmpty()) {
            return OptionalDouble.empty();
        }
        WrittenRule rule = one(json.get(), rules.group("measurement"), "measurement.csv");
        boolean fahrenheit = rule.unit().equals("F");
        if (rule.tolerance().isEmpty() || !(fahrenheit || rule.unit().equals("C"))) {
            throw json.get().fault("a rule with a tolerance in C or F", "Name a rule on accuracy.");
        }
        TemperatureUnit unit = fahrenheit ? TemperatureUnit.FAHRENHEIT : TemperatureUnit.CELSIUS;
        return OptionalDouble.of(unit.differenceToCelsius(rule.tolerance().getAsDouble()));
    }

    private OptionalDouble days(Optional<JsonValue> json) throws UnreadableInputException {
        if (json.isEmpty()) {
            return OptionalDouble.empty();
        }
        WrittenRule rule = one(json.get(), rules.group("measurement"), "measurement.csv");
        if (!rule.unit().equals("d") || rule.value().isEmpty()) {
            throw json.get()
                    .fault("a rule with a number of days", "Name a rule on how often a thermometer is checked.");
        }
        return rule.value();
    }
}
