package org.holdproof.report.layout;

import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.holdproof.core.rules.Citation;
import org.holdproof.core.rules.CoolingRule;
import org.holdproof.core.rules.HoldingRule;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.core.verdict.Assessment;
import org.holdproof.core.verdict.Check;

/**
 * The rules behind an assessment's checks, found among those of its authority profile: a check itself carries the rule
 * in words and its citation only.
 */
final class RulesApplied {
    static final String LETHALITY = "lethality";
    static final String PROBE_PLACE = "probe-place";
    static final String COOLING = "cooling";

    private final Assessment assessment;

    RulesApplied(Assessment assessment) {
        this.assessment = assessment;
    }

    /** The checks that answer one question: {@code cooling} finds {@code cooling}, {@code cooling.1} and so on. */
    List<Check> checks(String question) {
        return assessment.checks().stream()
                .filter(check -> check.id().equals(question) || check.id().startsWith(question + "."))
                .toList();
    }

    /** The check of the published row, where there is one. */
    Optional<Check> lethality() {
        return checks(LETHALITY).stream().findFirst();
    }

    /** The published row the lethality check names. */
    Optional<LethalityRow> row() {
        return lethality().flatMap(this::rowOf);
    }

    private Optional<LethalityRow> rowOf(Check check) {
        List<LethalityRow> named = assessment.authority().lethality().stream()
                .flatMap(choice -> choice.rowsFor(assessment.batch().product().fatPercent()).stream())
                .filter(row -> check.rule().contains(row.at().text()))
                .toList();
        Predicate<LethalityRow> sameTime =
                row -> check.unit().filter("min"::equals).isPresent()
                        && check.limit().isPresent()
                        && Math.abs(row.seconds() / 60 - check.limit().getAsDouble()) < Check.FIGURE_SLACK;
        Predicate<LethalityRow> samePlace =
                row -> check.citation().map(row.citation()::equals).orElse(false);
        return Stream.of(sameTime.and(samePlace), sameTime, samePlace)
                .flatMap(test -> named.stream().filter(test))
                .findFirst();
    }

    /** The cooling schedule the cooling checks name. */
    Optional<CoolingRule> cooling() {
        List<CoolingRule> schedules = assessment.authority().cooling();
        Optional<Citation> cited = checks(COOLING).stream()
                .flatMap(check -> check.citation().stream())
                .findFirst();
        if (cited.isEmpty()) {
            return Optional.empty();
        }
        return schedules.stream()
                .filter(schedule -> schedule.citation().equals(cited.get()))
                .findFirst();
    }

    /** What the document behind a check has the kitchen do; empty where it says nothing. */
    String correctiveAction(Check check) {
        if (check.citation().isEmpty()) {
            return "";
        }
        Citation citation = check.citation().get();
        Stream<String> cooling = Stream.concat(
                        assessment.authority().cooling().stream(), assessment.authority().nonContinuous().stream())
                .filter(rule -> rule.citation().equals(citation))
                .map(CoolingRule::correctiveAction);
        Stream<String> holding = Stream.of(
                        assessment.authority().comeUpToPlanBy(),
                        assessment.authority().lowCook(),
                        assessment.authority().hotHold(),
                        assessment.authority().hotHoldRoast(),
                        assessment.authority().coldHold())
                .flatMap(Optional::stream)
                .filter(rule -> rule.citation().equals(citation))
                .map(HoldingRule::correctiveAction);
        Stream<String> reheating = assessment.authority().reheat().stream()
                .filter(rule -> rule.citation().equals(citation))
                .map(rule -> rule.correctiveAction());
        return Stream.of(cooling, holding, reheating)
                .flatMap(actions -> actions)
                .filter(action -> !action.isBlank())
                .findFirst()
                .orElse("");
    }
}
