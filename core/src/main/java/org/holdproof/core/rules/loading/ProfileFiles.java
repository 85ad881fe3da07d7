package org.holdproof.core.rules.loading;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.holdproof.core.batch.Product.Form;
import org.holdproof.core.batch.Product.Species;
import org.holdproof.core.input.CsvRow;
import org.holdproof.core.input.JsonValue;
import org.holdproof.core.input.StrictJson;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.AuthorityProfile;
import org.holdproof.core.rules.AuthorityProfile.Paper;
import org.holdproof.core.rules.CoolingRule;
import org.holdproof.core.rules.HoldingRule;
import org.holdproof.core.rules.HoldingRule.Kind;
import org.holdproof.core.rules.HotAllowance;
import org.holdproof.core.rules.HumidityOption;
import org.holdproof.core.rules.LethalityChoice;
import org.holdproof.core.rules.LethalityTable;
import org.holdproof.core.rules.OvenCondition;
import org.holdproof.core.rules.ReheatingRule;
import org.holdproof.core.rules.Rule;
import org.holdproof.core.rules.RuleSet;
import org.holdproof.core.rules.RuleSets;
import org.holdproof.core.rules.ShelfLifeRule;
import org.holdproof.core.rules.SupportGap;
import org.holdproof.core.rules.ThermalDeath;
import org.holdproof.core.rules.TimeLimit;
import org.holdproof.core.rules.WrittenRule;

/** Reads {@code authorities/ID.json}: which rule answers which question. */
public final class ProfileFiles {
    private static final List<String> FIELDS = List.of("id", "title", "units", "paper", "lethality", "cooling", "left");
    private static final List<String> OPTIONAL = List.of(
            "comeUp",
            "comeUpGuidance",
            "gaps",
            "hotAllowance",
            "reheatToOrder",
            "reheatRoast",
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

    private final TableFiles files;
    private final RuleSets rules;

    public ProfileFiles(TableFiles files, RuleSets rules) {
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
        return AuthorityProfile.of(
                        json.field("id").text(),
                        title(json),
                        units(json.field("units")),
                        json.field("paper").choice(Paper.values()))
                .lethality(choices(json.field("lethality")))
                .comeUp(heldTo(json.fieldIfAny("comeUp"), Kind.COME_UP))
                .comeUpGuidance(heldTo(json.fieldIfAny("comeUpGuidance"), Kind.COME_UP))
                .lowCook(heldTo(json.fieldIfAny("lowCook"), Kind.LOW_COOK))
                .gaps(allIfAny(json.fieldIfAny("gaps"), SupportGap.class))
                .humidity(allIfAny(json.fieldIfAny("humidity"), HumidityOption.class))
                .nonContinuous(oneIfAny(json.fieldIfAny("nonContinuous"), CoolingRule.class))
                .seal(writtenIfAny(json.fieldIfAny("seal"), "packaging"))
                .cooling(all(json.field("cooling"), CoolingRule.class))
                .hotHold(heldTo(json.fieldIfAny("hotHold"), Kind.HOT_MINIMUM))
                .hotHoldRoast(heldTo(json.fieldIfAny("hotHoldRoast"), Kind.HOT_MINIMUM))
                .hotAllowance(oneIfAny(json.fieldIfAny("hotAllowance"), HotAllowance.class))
                .timeLimits(allIfAny(json.fieldIfAny("timeLimits"), TimeLimit.class))
                .coldHold(heldTo(json.fieldIfAny("coldHold"), Kind.COLD_MAXIMUM))
                .shelfLives(allIfAny(json.fieldIfAny("shelfLives"), ShelfLifeRule.class))
                .reheat(oneIfAny(json.fieldIfAny("reheat"), ReheatingRule.class))
                .reheatToOrder(oneIfAny(json.fieldIfAny("reheatToOrder"), ReheatingRule.class))
                .reheatRoast(oneIfAny(json.fieldIfAny("reheatRoast"), ReheatingRule.class))
                .toleranceCelsius(accuracy(json.fieldIfAny("accuracy")))
                .checkEveryDays(days(json.fieldIfAny("checkEvery")))
                .records(records(json.fieldIfAny("records")))
                .left(json.field("left").texts())
                .build();
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
            item.requireFields(List.of("species", "forms", "tables"), List.of("kinetics", "ovens", "margin"));
            LethalityChoice choice = new LethalityChoice(
                    words(item.field("species"), Species.values()),
                    words(item.field("forms"), Form.values()),
                    all(item.field("tables"), LethalityTable.class),
                    oneIfAny(item.fieldIfAny("kinetics"), ThermalDeath.class),
                    allIfAny(item.fieldIfAny("ovens"), OvenCondition.class),
                    allIfAny(item.fieldIfAny("margin"), ThermalDeath.class));
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

    private static <E extends Enum<E>> Set<E> words(JsonValue json, E[] known) throws UnreadableInputException {
        Set<E> words = new LinkedHashSet<>();
        for (JsonValue item : json.items()) {
            words.add(item.choice(known));
        }
        return words;
    }

    private <T extends Rule> List<T> all(JsonValue json, Class<T> kind) throws UnreadableInputException {
        List<T> found = new ArrayList<>();
        for (JsonValue item : json.items()) {
            found.add(one(item, kind));
        }
        return found;
    }

    private <T extends Rule> List<T> allIfAny(Optional<JsonValue> json, Class<T> kind) throws UnreadableInputException {
        return json.isPresent() ? all(json.get(), kind) : List.of();
    }

    private <T extends Rule> Optional<T> oneIfAny(Optional<JsonValue> json, Class<T> kind)
            throws UnreadableInputException {
        return json.isEmpty() ? Optional.empty() : Optional.of(one(json.get(), kind));
    }

    private <T extends Rule> T one(JsonValue json, Class<T> kind) throws UnreadableInputException {
        RuleSet<T> set = rules.of(kind);
        Optional<T> rule = set.find(json.text());
        if (rule.isEmpty()) {
            throw unknown(json, set.file());
        }
        return rule.get();
    }

    private WrittenRule written(JsonValue json, String group) throws UnreadableInputException {
        Optional<WrittenRule> rule = rules.of(WrittenRule.class)
                .find(json.text())
                .filter(found -> found.group().equals(group));
        if (rule.isEmpty()) {
            throw unknown(json, group + ".csv");
        }
        return rule.get();
    }

    private static UnreadableInputException unknown(JsonValue json, String file) {
        return json.fault("an id of " + file, "Correct the id, or add the rule.");
    }

    private Optional<WrittenRule> writtenIfAny(Optional<JsonValue> json, String group) throws UnreadableInputException {
        return json.isEmpty() ? Optional.empty() : Optional.of(written(json.get(), group));
    }

    private List<WrittenRule> records(Optional<JsonValue> json) throws UnreadableInputException {
        List<WrittenRule> records = new ArrayList<>();
        for (JsonValue item : json.isPresent() ? json.get().items() : List.<JsonValue>of()) {
            records.add(written(item, "records"));
        }
        return records;
    }

    private Optional<HoldingRule> heldTo(Optional<JsonValue> json, Kind kind) throws UnreadableInputException {
        Optional<HoldingRule> rule = oneIfAny(json, HoldingRule.class);
        if (json.isPresent() && rule.isPresent() && rule.get().kind() != kind) {
            throw json.get().fault("a rule of kind " + CsvRow.word(kind), "Name a rule of that kind.");
        }
        return rule;
    }

    private OptionalDouble accuracy(Optional<JsonValue> json) throws UnreadableInputException {
        if (json.isEmpty()) {
            return OptionalDouble.empty();
        }
        WrittenRule rule = written(json.get(), "measurement");
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
        WrittenRule rule = written(json.get(), "measurement");
        if (!rule.unit().equals("d") || rule.value().isEmpty()) {
            throw json.get()
                    .fault("a rule with a number of days", "Name a rule on how often a thermometer is checked.");
        }
        return rule.value();
    }
}
