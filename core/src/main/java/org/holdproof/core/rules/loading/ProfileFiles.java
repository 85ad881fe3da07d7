package org.holdproof.core.rules.loading;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Stream;
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
import org.holdproof.core.rules.ParasiteRule;
import org.holdproof.core.rules.ReheatingRule;
import org.holdproof.core.rules.Rule;
import org.holdproof.core.rules.RuleSet;
import org.holdproof.core.rules.RuleSets;
import org.holdproof.core.rules.ShelfLifeRule;
import org.holdproof.core.rules.SupportGap;
import org.holdproof.core.rules.SurfaceRule;
import org.holdproof.core.rules.ThermalDeath;
import org.holdproof.core.rules.TimeLimit;
import org.holdproof.core.rules.WrittenRule;

/** Reads {@code authorities/ID.json}: which rule answers which question. */
public final class ProfileFiles {
    private static final List<String> FIELDS = List.of("id", "title", "units", "paper", "left");
    private static final List<String> OPTIONAL = List.of(
            "base",
            "lethality",
            "cooling",
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
            "surface",
            "parasites",
            "undercooked",
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
        Map<String, JsonValue> found = new LinkedHashMap<>();
        for (String file : files.inFolder(FOLDER)) {
            JsonValue json = StrictJson.read(file, files.bytes(file), "an authority profile");
            json.requireFields(FIELDS, OPTIONAL);
            String id = json.field("id").text();
            if (!file.equals(FOLDER + "/" + id + ".json")) {
                throw json.field("id").fault("the file's own name without .json", "Rename the file or correct the id.");
            }
            found.put(id, json);
        }
        Map<String, AuthorityProfile> profiles = new LinkedHashMap<>();
        for (String id : found.keySet()) {
            profiles.put(id, profile(id, found, profiles, List.of()));
        }
        return profiles;
    }

    /**
     * A profile: what its own file says, and what it leaves unsaid as its base has it.
     *
     * @param above the profiles that build on this one, so that no circle goes unnoticed
     */
    private AuthorityProfile profile(
            String id, Map<String, JsonValue> found, Map<String, AuthorityProfile> read, List<String> above)
            throws UnreadableInputException {
        AuthorityProfile known = read.get(id);
        if (known != null) {
            return known;
        }
        JsonValue json = Objects.requireNonNull(found.get(id));
        AuthorityProfile.Builder builder = AuthorityProfile.of(
                id, title(json), units(json.field("units")), json.field("paper").choice(Paper.values()));
        Optional<JsonValue> base = json.fieldIfAny("base");
        if (base.isPresent()) {
            List<String> line = Stream.concat(above.stream(), Stream.of(id)).toList();
            String name = base.get().text();
            if (!found.containsKey(name) || line.contains(name)) {
                throw base.get().fault("the id of another profile that does not build on this one", "Correct the id.");
            }
            builder.answersOf(profile(name, found, read, line));
        }
        answers(json, builder);
        return builder.build();
    }

    private void answers(JsonValue json, AuthorityProfile.Builder profile) throws UnreadableInputException {
        take(json, "lethality", this::choices, profile::servesFirst);
        take(json, "comeUp", held(Kind.COME_UP), profile::comeUp);
        take(json, "comeUpGuidance", held(Kind.COME_UP), profile::comeUpGuidance);
        take(json, "lowCook", held(Kind.LOW_COOK), profile::lowCook);
        take(json, "gaps", all(SupportGap.class), profile::gaps);
        take(json, "humidity", all(HumidityOption.class), profile::humidity);
        take(json, "surface", one(SurfaceRule.class), profile::surface);
        take(json, "parasites", one(ParasiteRule.class), profile::parasites);
        take(json, "undercooked", item -> Optional.of(written(item, "cooking")), profile::undercooked);
        take(json, "nonContinuous", one(CoolingRule.class), profile::nonContinuous);
        take(json, "seal", item -> Optional.of(written(item, "packaging")), profile::seal);
        take(json, "cooling", all(CoolingRule.class), profile::cooling);
        take(json, "hotHold", held(Kind.HOT_MINIMUM), profile::hotHold);
        take(json, "hotHoldRoast", held(Kind.HOT_MINIMUM), profile::hotHoldRoast);
        take(json, "hotAllowance", one(HotAllowance.class), profile::hotAllowance);
        take(json, "timeLimits", all(TimeLimit.class), profile::timeLimits);
        take(json, "coldHold", held(Kind.COLD_MAXIMUM), profile::coldHold);
        take(json, "shelfLives", all(ShelfLifeRule.class), profile::shelfLives);
        take(json, "reheat", one(ReheatingRule.class), profile::reheat);
        take(json, "reheatToOrder", one(ReheatingRule.class), profile::reheatToOrder);
        take(json, "reheatRoast", one(ReheatingRule.class), profile::reheatRoast);
        take(json, "accuracy", this::accuracy, profile::toleranceCelsius);
        take(json, "checkEvery", this::days, profile::checkEveryDays);
        take(json, "records", this::records, profile::records);
        take(json, "left", JsonValue::texts, profile::left);
    }

    /** Reads a value. */
    private interface Reading<T> {
        T read(JsonValue json) throws UnreadableInputException;
    }

    /** What is not said stays as it is. */
    private static <T> void take(JsonValue json, String field, Reading<T> reading, Consumer<T> into)
            throws UnreadableInputException {
        Optional<JsonValue> said = json.fieldIfAny(field);
        if (said.isPresent()) {
            into.accept(reading.read(said.get()));
        }
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

    private <T extends Rule> Reading<List<T>> all(Class<T> kind) {
        return json -> all(json, kind);
    }

    private <T extends Rule> Reading<Optional<T>> one(Class<T> kind) {
        return json -> Optional.of(one(json, kind));
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

    private List<WrittenRule> records(JsonValue json) throws UnreadableInputException {
        List<WrittenRule> records = new ArrayList<>();
        for (JsonValue item : json.items()) {
            records.add(written(item, "records"));
        }
        return records;
    }

    private Reading<Optional<HoldingRule>> held(Kind kind) {
        return json -> {
            HoldingRule rule = one(json, HoldingRule.class);
            if (rule.kind() != kind) {
                throw json.fault("a rule of kind " + CsvRow.word(kind), "Name a rule of that kind.");
            }
            return Optional.of(rule);
        };
    }

    private OptionalDouble accuracy(JsonValue json) throws UnreadableInputException {
        WrittenRule rule = written(json, "measurement");
        boolean fahrenheit = rule.unit().equals("F");
        if (rule.tolerance().isEmpty() || !(fahrenheit || rule.unit().equals("C"))) {
            throw json.fault("a rule with a tolerance in C or F", "Name a rule on accuracy.");
        }
        TemperatureUnit unit = fahrenheit ? TemperatureUnit.FAHRENHEIT : TemperatureUnit.CELSIUS;
        return OptionalDouble.of(unit.differenceToCelsius(rule.tolerance().getAsDouble()));
    }

    private OptionalDouble days(JsonValue json) throws UnreadableInputException {
        WrittenRule rule = written(json, "measurement");
        if (!rule.unit().equals("d") || rule.value().isEmpty()) {
            throw json.fault("a rule with a number of days", "Name a rule on how often a thermometer is checked.");
        }
        return rule.value();
    }
}
