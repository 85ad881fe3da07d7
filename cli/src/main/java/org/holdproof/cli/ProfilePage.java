package org.holdproof.cli;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.holdproof.cli.terminal.Terminal;
import org.holdproof.core.batch.Product.Form;
import org.holdproof.core.batch.Product.Species;
import org.holdproof.core.rules.AuthorityProfile;
import org.holdproof.core.rules.CoolingRule;
import org.holdproof.core.rules.HoldingRule;
import org.holdproof.core.rules.HotAllowance;
import org.holdproof.core.rules.LethalityChoice;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.core.rules.LethalityTable;
import org.holdproof.core.rules.ReheatingRule;
import org.holdproof.core.rules.Rule;
import org.holdproof.core.rules.Source.How;
import org.holdproof.core.rules.ThermalDeath;

/** One authority's profile: what it holds, what it leaves open and what is not confirmed, on one screen or in full. */
final class ProfilePage {
    private static final int CHOICES_ON_ONE_SCREEN = 6;
    private static final int LABEL = 14;

    private final AuthorityProfile profile;
    private final List<String> lines = new ArrayList<>();
    /** Every rule the profile names, by id. */
    private final Map<String, Rule> named = new LinkedHashMap<>();

    private ProfilePage(AuthorityProfile profile) {
        this.profile = profile;
    }

    /** What fits on one screen: a line a question, cut at the terminal's width. */
    static List<String> onOneScreen(AuthorityProfile profile) {
        ProfilePage page = new ProfilePage(profile);
        page.questions();
        page.unconfirmed();
        page.put("Left open", page.profile.left().size() + " points: holdproof tables " + profile.id() + " --all");
        return page.lines.stream().map(ProfilePage::cut).toList();
    }

    /** Everything: each rule with its source, and each point left open. */
    static List<String> full(AuthorityProfile profile) {
        ProfilePage page = new ProfilePage(profile);
        page.questions();
        page.unconfirmed();
        page.lines.add("");
        page.lines.add("Left open");
        profile.left().forEach(point -> page.lines.add("  " + point));
        page.lines.add("");
        page.lines.add("Rules");
        for (Rule rule : page.named.values()) {
            page.lines.add("  " + rule.id() + ": " + rule.title());
            page.lines.add("    " + rule.citation().text());
        }
        return page.lines;
    }

    private void questions() {
        lines.add(profile.id() + ": " + profile.title());
        profile.lethality().forEach(this::note);
        List<LethalityChoice> choices = profile.lethality();
        choices.stream().limit(CHOICES_ON_ONE_SCREEN).forEach(choice -> put("Cook", words(choice)));
        if (choices.size() > CHOICES_ON_ONE_SCREEN) {
            put("", "and " + (choices.size() - CHOICES_ON_ONE_SCREEN) + " more");
        }
        if (choices.isEmpty()) {
            put("Cook", "not held");
        }
        put(
                "Come-up",
                one(profile.comeUp())
                        .or(() -> one(profile.comeUpGuidance()).map(id -> "not held; a caution by " + id))
                        .orElse("not held"));
        one(profile.lowCook()).ifPresent(id -> put("Low cook", id));
        many("Gaps", profile.gaps());
        many("Moist surface", profile.humidity());
        one(profile.surface()).ifPresent(id -> put("Surface only", id));
        one(profile.parasites()).ifPresent(id -> put("Parasites", id));
        one(profile.undercooked()).ifPresent(id -> put("Undercooked", id + ": never proven pasteurized"));
        one(profile.nonContinuous()).ifPresent(id -> put("Two heatings", id));
        one(profile.seal()).ifPresent(id -> put("Sealed hot", id));
        put(
                "Cool",
                profile.cooling().isEmpty()
                        ? "not held"
                        : profile.cooling().stream().map(this::cooling).collect(Collectors.joining("; or ")));
        put(
                "Hot",
                profile.hotHold().map(this::holding).orElse("not held")
                        + profile.hotHoldRoast()
                                .map(rule -> "; roasts " + holding(rule))
                                .orElse(""));
        profile.hotAllowance().ifPresent(rule -> put("Under hot", allowance(rule)));
        many("Time alone", profile.timeLimits());
        put("Cold", profile.coldHold().map(this::holding).orElse("not held"));
        put("Days", orNotHeld(profile.shelfLives(), ", "));
        put(
                "Reheat",
                profile.reheat().map(this::reheating).orElse("not held")
                        + profile.reheatToOrder()
                                .map(rule -> "; to order " + reheating(rule))
                                .orElse("")
                        + one(profile.reheatRoast()).map(id -> "; roasts " + id).orElse(""));
        many("Records", profile.records());
    }

    /** {@code beef, pork (intact): fsis-2021-meat-6.5-log, from 130 °F}. */
    private static String words(LethalityChoice choice) {
        String rules = Stream.concat(
                        choice.tables().stream().map(LethalityTable::id),
                        choice.kinetics().stream().map(ThermalDeath::id))
                .collect(Collectors.joining(", "));
        String lowest = choice.tables().stream()
                .flatMap(table -> table.rows().stream())
                .map(LethalityRow::at)
                .findFirst()
                .map(at -> ", from " + at.text())
                .orElse("");
        return rules + lowest + ": "
                + (choice.species().isEmpty() ? "all" : words(Species.values(), choice.species()))
                + (choice.forms().isEmpty() ? "" : " (" + words(Form.values(), choice.forms()) + ")");
    }

    private static <E extends Enum<E>> String words(E[] all, Set<E> some) {
        return Stream.of(all)
                .filter(some::contains)
                .map(word -> word.name().toLowerCase(Locale.ROOT).replace('_', '-'))
                .collect(Collectors.joining(", "));
    }

    private void note(LethalityChoice choice) {
        choice.tables().forEach(this::id);
        choice.kinetics().ifPresent(this::id);
        choice.ovens().forEach(this::id);
    }

    /** {@code from 135 °F to 70 °F at most 120 min (US-FDA-COOL-A)}. */
    private String cooling(CoolingRule rule) {
        String stages = rule.stages().stream()
                .map(stage -> Stream.of(
                                stage.from().map(from -> "from " + from.text()),
                                stage.to().map(to -> "to " + to.text()),
                                stage.maxMinutes().isPresent()
                                        ? Optional.of(stage.comparison().words() + " "
                                                + Math.round(stage.maxMinutes().getAsDouble()) + " min")
                                        : Optional.of("no figure"))
                        .flatMap(Optional::stream)
                        .collect(Collectors.joining(" ")))
                .collect(Collectors.joining(", "));
        return stages + " (" + id(rule) + ")";
    }

    private String holding(HoldingRule rule) {
        return rule.limit()
                        .map(limit -> rule.comparison().words() + " " + limit.text())
                        .orElse("no figure")
                + " (" + id(rule) + ")";
    }

    private String reheating(ReheatingRule rule) {
        return (rule.asksNoTemperature()
                        ? "any temperature"
                        : rule.target()
                                .map(target -> rule.comparison().words() + " " + target.text())
                                .orElse("a cooking table"))
                + " (" + id(rule) + ")";
    }

    private String allowance(HotAllowance rule) {
        id(rule);
        return rule.bands().stream()
                .map(band -> (band.maxMinutes().isPresent()
                                ? band.comparison().words() + " "
                                        + Math.round(band.maxMinutes().getAsDouble()) + " min "
                                : "longer ")
                        + band.outcome().name().toLowerCase(Locale.ROOT).replace('_', ' '))
                .collect(Collectors.joining(", "));
    }

    /** The rules that nobody here saw in their own document, and this program's own conventions. */
    private void unconfirmed() {
        for (How how : List.of(How.QUOTED, How.MEMORY, How.CONVENTION)) {
            Stream<String> whole = named.values().stream()
                    .filter(rule -> rule.citation().how() == how)
                    .map(Rule::id);
            Stream<String> inPart = named.values().stream()
                    .filter(rule ->
                            rule instanceof LethalityTable && rule.citation().how() != how)
                    .map(LethalityTable.class::cast)
                    .filter(table -> rows(table, how) > 0)
                    .map(table -> rows(table, how) + " rows of " + table.id());
            String ids = Stream.concat(whole, inPart).collect(Collectors.joining(", "));
            if (!ids.isEmpty()) {
                put(how == How.MEMORY ? "From memory" : how == How.QUOTED ? "Quoted only" : "Convention", ids);
            }
        }
    }

    private static long rows(LethalityTable table, How how) {
        return table.rows().stream().filter(row -> row.citation().how() == how).count();
    }

    private Optional<String> one(Optional<? extends Rule> rule) {
        return rule.map(this::id);
    }

    private void many(String label, Collection<? extends Rule> rules) {
        if (!rules.isEmpty()) {
            put(label, rules.stream().map(this::id).collect(Collectors.joining(", ")));
        }
    }

    private String id(Rule rule) {
        named.put(rule.id(), rule);
        return rule.id();
    }

    private String orNotHeld(List<? extends Rule> rules, String between) {
        return rules.isEmpty() ? "not held" : rules.stream().map(this::id).collect(Collectors.joining(between));
    }

    private void put(String label, String text) {
        lines.add(String.format(Locale.ROOT, "%-" + LABEL + "s", label) + text);
    }

    private static String cut(String line) {
        return line.length() <= Terminal.WIDTH ? line : line.substring(0, Terminal.WIDTH - 1) + "…";
    }
}
