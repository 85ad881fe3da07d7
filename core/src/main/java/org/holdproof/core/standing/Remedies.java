package org.holdproof.core.standing;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.holdproof.core.assess.ComeUpCheck;
import org.holdproof.core.assess.CoolingChecks;
import org.holdproof.core.assess.HoldingChecks;
import org.holdproof.core.assess.HumidityCheck;
import org.holdproof.core.assess.InterruptionCheck;
import org.holdproof.core.assess.LethalityCheck;
import org.holdproof.core.assess.LowCookCheck;
import org.holdproof.core.assess.ProbePlaceCheck;
import org.holdproof.core.assess.ShelfLifeChecks;
import org.holdproof.core.batch.Moisture;
import org.holdproof.core.rules.AuthorityProfile;
import org.holdproof.core.rules.Citation;
import org.holdproof.core.rules.CoolingRule;
import org.holdproof.core.rules.HoldingRule;
import org.holdproof.core.rules.HumidityOption;
import org.holdproof.core.rules.ReheatingRule;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.rules.ShelfLifeRule;
import org.holdproof.core.rules.WrittenRule;
import org.holdproof.core.standing.StandingQuestion.State;
import org.holdproof.core.verdict.Assessment;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;

/**
 * Corrective actions as the documents name them: each from a rule of the tables, with its citation. Where the document
 * behind a rule names none, that is said; nothing is made up.
 */
public final class Remedies {
    private static final String DEVIATION = "deviation type ";
    private static final String END_POINT_MISSED = DEVIATION + "1";
    private static final String COME_UP_TOO_LONG = DEVIATION + "3";
    private static final String DRY_HEAT = "scientific gap 3";

    /** A corrective action may name another rule instead of saying it again. */
    private static final Pattern SEE = Pattern.compile("[;,]?\\s*\\bsee ([A-Z][A-Z0-9]*(?:-[A-Z0-9.]+)+)");

    /** What can be done about a question while the cook can still answer it; the others only need time. */
    private static final Set<String> ACTED_ON = Set.of(LethalityCheck.ID, HumidityCheck.ID, ProbePlaceCheck.ID);

    private static final String NOTHING_NAMED =
            "The document as held here names no corrective action. Hold the food apart; the HACCP plan and the local "
                    + "authority decide";

    private final AuthorityProfile authority;
    private final RuleLibrary library;
    private final List<RunningClock> clocks;
    private final Set<Remedy> remedies = new LinkedHashSet<>();
    private boolean answered;

    private Remedies(AuthorityProfile authority, RuleLibrary library, List<RunningClock> clocks) {
        this.authority = authority;
        this.library = library;
        this.clocks = clocks;
    }

    /** What may be done about each check of a finished batch that is not met. */
    public static List<Remedy> of(Assessment assessment, RuleLibrary library) {
        Remedies found = new Remedies(assessment.authority(), library, List.of());
        assessment.checks().stream()
                .filter(check -> check.verdict() != Verdict.MET)
                .forEach(check -> found.add(check, false));
        return List.copyOf(found.remedies);
    }

    /** What may be done now about each question of a cook under way that is lost, or that cannot be proven any more. */
    public static List<Remedy> of(Standing standing, RuleLibrary library) {
        Remedies found = new Remedies(standing.assessment().authority(), library, standing.clocks());
        for (State state : List.of(State.LOST, State.UNPROVABLE, State.NEEDED)) {
            for (StandingQuestion question : standing.questions(state)) {
                boolean running = state == State.NEEDED;
                boolean waits = running && !ACTED_ON.contains(question.key());
                if (!waits) {
                    question.check()
                            .ifPresentOrElse(check -> found.add(check, running), () -> found.shelfLife(question.key()));
                }
            }
        }
        return List.copyOf(found.remedies);
    }

    private void add(Check check, boolean cooking) {
        answered = false;
        switch (family(check.id())) {
            case LethalityCheck.ID -> lethality(check, cooking);
            case ComeUpCheck.ID -> comeUp(check);
            case HumidityCheck.ID -> humidity(check, cooking);
            case HoldingChecks.HOT, HoldingChecks.COLD -> holding(check);
            case CoolingChecks.ID -> cooling(check);
            case ShelfLifeChecks.ID -> shelfLife(check.id());
            case "reheat" ->
                authority.reheat().ifPresent(rule -> action(check, rule.correctiveAction(), rule.citation()));
            case LowCookCheck.ID ->
                authority.lowCook().ifPresent(rule -> action(check, rule.correctiveAction(), rule.citation()));
            case InterruptionCheck.ID ->
                authority.nonContinuous().ifPresent(rule -> action(check, rule.correctiveAction(), rule.citation()));
            default -> put(check.id(), check.next().orElse(""), check.citation());
        }
        if (!answered) {
            put(
                    check.id(),
                    check.citation().isPresent() ? NOTHING_NAMED : check.next().orElse(""),
                    check.citation());
        }
    }

    private static String family(String id) {
        int dot = id.indexOf('.');
        return dot < 0 ? id : id.substring(0, dot);
    }

    private void lethality(Check check, boolean cooking) {
        if (cooking) {
            put(check.id(), "Cook on without a break: any row of the table will do", check.citation());
            return;
        }
        written(check, END_POINT_MISSED);
    }

    private void comeUp(Check check) {
        authority.comeUpToPlanBy().ifPresent(rule -> action(check, rule.correctiveAction(), rule.citation()));
        written(check, COME_UP_TOO_LONG);
    }

    private void humidity(Check check, boolean cooking) {
        if (cooking) {
            authority.humidity().stream()
                    .filter(option -> option.means() == Moisture.Means.SEALED_BAG)
                    .findFirst()
                    .ifPresent(option -> put(check.id(), finishSealed(option), Optional.of(option.citation())));
        }
        written(check, DRY_HEAT);
    }

    private static String finishSealed(HumidityOption option) {
        return "Finish the cook so that a row is met in it: " + option.title();
    }

    private void holding(Check check) {
        List<Optional<HoldingRule>> rules =
                List.of(authority.hotHoldRoast(), authority.hotHold(), authority.coldHold());
        rules.stream()
                .flatMap(Optional::stream)
                .filter(rule -> check.citation().filter(rule.citation()::equals).isPresent())
                .findFirst()
                .ifPresent(rule -> action(check, rule.correctiveAction(), rule.citation()));
    }

    private void cooling(Check check) {
        authority.cooling().stream()
                .filter(rule -> check.citation().filter(rule.citation()::equals).isPresent())
                .findFirst()
                .ifPresent(rule -> action(check, rule.correctiveAction(), rule.citation()));
    }

    private void shelfLife(String id) {
        authority.shelfLives().stream()
                .filter(rule -> rule.from() != ShelfLifeRule.From.REMOVAL)
                .findFirst()
                .filter(rule -> !rule.disposition().isBlank())
                .ifPresent(rule -> put(id, rule.disposition(), Optional.of(rule.citation())));
    }

    /** The words of a table; a rule they refer to is looked up. */
    private void action(Check check, String words, Citation citation) {
        Matcher see = SEE.matcher(words);
        String own = see.replaceAll("").strip();
        if (!own.isEmpty()) {
            put(check.id(), own, Optional.of(citation));
        }
        see.reset();
        while (see.find()) {
            referred(check, see.group(1));
        }
    }

    private void referred(Check check, String id) {
        library.rules(CoolingRule.class)
                .find(id)
                .filter(rule -> !rule.correctiveAction().isBlank())
                .ifPresent(rule -> put(check.id(), rule.correctiveAction(), Optional.of(rule.citation())));
        library.rules(HoldingRule.class)
                .find(id)
                .filter(rule -> !rule.correctiveAction().isBlank())
                .ifPresent(rule -> put(check.id(), rule.correctiveAction(), Optional.of(rule.citation())));
        library.rules(ReheatingRule.class)
                .find(id)
                .map(Remedies::words)
                .filter(rule -> !rule.isBlank())
                .ifPresent(words -> put(
                        check.id(),
                        words,
                        library.rules(ReheatingRule.class).find(id).map(ReheatingRule::citation)));
        library.rules(WrittenRule.class)
                .find(id)
                .ifPresent(rule -> put(check.id(), rule.requirement(), Optional.of(rule.citation())));
    }

    private static String words(ReheatingRule rule) {
        return rule.correctiveAction().isBlank() ? rule.conditions() : rule.correctiveAction();
    }

    /** What the document behind the check says of such a deviation. */
    private void written(Check check, String topic) {
        Optional<String> document =
                check.citation().map(citation -> citation.source().title());
        library.writtenRules("cooking").stream()
                .filter(rule -> rule.topic().equals(topic))
                .filter(rule -> document.filter(rule.citation().source().title()::equals)
                        .isPresent())
                .forEach(rule -> put(check.id(), rule.requirement(), Optional.of(rule.citation())));
    }

    private void put(String check, String words, Optional<Citation> citation) {
        String bare = words.strip().replaceAll("[.;]*$", "");
        String text = bare.isEmpty() ? "" : Character.toUpperCase(bare.charAt(0)) + bare.substring(1) + ".";
        answered |= !text.isEmpty();
        boolean said = remedies.stream()
                .anyMatch(remedy ->
                        remedy.text().equals(text) && remedy.citation().equals(citation));
        if (text.isEmpty() || said) {
            return;
        }
        remedies.add(new Remedy(check, text, citation, clock(check)));
    }

    /** The check's own clock while it runs, or the next one of its rule. */
    private Optional<RunningClock> clock(String check) {
        return clocks.stream()
                .filter(clock -> family(clock.check()).equals(family(check)))
                .min((one, other) -> Boolean.compare(
                        !one.check().equals(check), !other.check().equals(check)));
    }
}
