package org.holdproof.core.standing;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.holdproof.core.assess.CoolingChecks;
import org.holdproof.core.assess.LethalityCheck;
import org.holdproof.core.assess.RowJudgement;
import org.holdproof.core.assess.ShelfLifeChecks;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.log.Trace;
import org.holdproof.core.rules.AuthorityProfile;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.core.rules.ShelfLifeRule;
import org.holdproof.core.standing.StandingQuestion.State;
import org.holdproof.core.verdict.Assessment;
import org.holdproof.core.verdict.Caution;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;

/** Puts the questions of one instant: those of a finished batch, and those that only a running clock or bath puts. */
final class StandingJudge {
    private final Evidence evidence;
    private final ProbeLog log;
    private final CookSoFar cook;
    private final Assessment assessment;
    private final long presentMillis;
    private final List<LethalityRow> rows;
    private final boolean rowsMet;

    StandingJudge(Evidence evidence, ProbeLog log, CookSoFar cook, Assessment assessment, long presentMillis) {
        this.evidence = evidence;
        this.log = log;
        this.cook = cook;
        this.assessment = assessment;
        this.presentMillis = presentMillis;
        rows = evidence.authority().lethalityFor(evidence.batch().product()).stream()
                .flatMap(choice -> choice.tables().stream())
                .flatMap(table -> table.rowsFor(evidence.batch().product().fatPercent()).stream())
                .toList();
        rowsMet = rowsMet();
    }

    /** Whether every probe has met a row, whatever else may be said against its readings. */
    private boolean rowsMet() {
        List<Trace> traces = evidence.timeline().cook().stream()
                .flatMap(span -> evidence.within(span).stream())
                .toList();
        return !rows.isEmpty() && !traces.isEmpty() && traces.stream().allMatch(this::meetsRow);
    }

    private boolean meetsRow(Trace trace) {
        return !trace.isEmpty()
                && RowJudgement.of(trace, rows, evidence.toleranceCelsius(), evidence.gapMinutes(trace))
                                .verdict()
                        == Verdict.MET;
    }

    Standing judge() {
        List<RunningClock> clocks = clocks();
        boolean lethal = assessment
                .check(LethalityCheck.ID)
                .filter(check -> check.verdict() == Verdict.MET)
                .isPresent();
        Optional<LethalityOutlook> outlook = lethal || cook.cookIsOver()
                ? Optional.empty()
                : LethalityOutlook.of(evidence, rows, cook.underWay(), presentMillis);
        QuestionStates states = new QuestionStates(
                cook,
                assessment.span().toMillis(),
                presentMillis,
                rowsMet,
                evidence.batch().product().thicknessMillimetres().isPresent());
        QuestionWords words = new QuestionWords(evidence, outlook);
        List<StandingQuestion> questions = new ArrayList<>();
        Map<String, Integer> times = new HashMap<>();
        Map<String, List<RunningClock>> unasked = new LinkedHashMap<>();
        clocks.forEach(clock ->
                unasked.computeIfAbsent(clock.check(), id -> new ArrayList<>()).add(clock));
        for (Check check : assessment.checks()) {
            int time = times.merge(check.id(), 1, Integer::sum);
            List<RunningClock> own = clocks.stream()
                    .filter(clock -> clock.check().equals(check.id()))
                    .toList();
            unasked.remove(check.id());
            State state = states.of(check, own);
            questions.add(new StandingQuestion(
                    check.id() + (time > 1 ? "#" + time : ""),
                    check.title(),
                    state,
                    Optional.of(check),
                    words.of(check, state, own),
                    own.stream().filter(this::stillRuns).toList()));
        }
        unasked.values().forEach(own -> questions.add(asked(own)));
        new MediumWatch(evidence, log, cook).question().ifPresent(questions::add);
        useBy().ifPresent(questions::add);
        return new Standing(
                assessment,
                presentMillis,
                cook.underWay(),
                cook.isOver(),
                questions,
                outlook,
                clocks.stream().filter(this::stillRuns).toList());
    }

    /** A question that a clock puts before any check does. */
    private StandingQuestion asked(List<RunningClock> own) {
        RunningClock first = own.get(0);
        return new StandingQuestion(
                "by-readings." + first.check(),
                first.title(),
                QuestionStates.of(first, presentMillis),
                Optional.empty(),
                first.words(),
                own.stream().filter(this::stillRuns).toList());
    }

    private boolean stillRuns(RunningClock clock) {
        return clock.lostFromMillis() >= presentMillis;
    }

    private List<RunningClock> clocks() {
        StandingClocks running = new StandingClocks(evidence, cook, presentMillis);
        AuthorityProfile authority = evidence.authority();
        List<RunningClock> clocks = new ArrayList<>();
        if (!rowsMet) {
            authority.comeUp().flatMap(rule -> running.comeUp(rule, rows)).ifPresent(clocks::add);
        }
        authority.lowCook().flatMap(running::lowCook).ifPresent(clocks::add);
        Optional<Check> cooling = assessment.checks().stream()
                .filter(check -> QuestionStates.isOf(check, CoolingChecks.ID))
                .findFirst();
        authority.cooling().stream()
                .filter(rule -> rule.isOpenTo(evidence.batch().product()))
                .filter(rule -> cooling.isEmpty()
                        || cooling.get()
                                .citation()
                                .filter(rule.citation()::equals)
                                .isPresent())
                .findFirst()
                .ifPresent(rule -> clocks.addAll(new CoolingClocks(evidence, cook, presentMillis).of(rule, rowsMet)));
        authority.reheat().flatMap(running::reheat).ifPresent(clocks::add);
        clocks.sort(Comparator.comparingLong(RunningClock::provableUntilMillis));
        return clocks;
    }

    /** The last day of food in store, before it is used. */
    private Optional<StandingQuestion> useBy() {
        ShelfLifeChecks shelf = new ShelfLifeChecks(evidence);
        List<ShelfLifeRule> rules = shelf.rules();
        if (rules.isEmpty() || !cook.isUnderWay(Stage.Kind.STORE)) {
            return Optional.empty();
        }
        LocalDate last = shelf.lastDay(rules.get(0));
        LocalDate today = Instant.ofEpochMilli(presentMillis)
                .atZone(evidence.batch().kitchen().zone())
                .toLocalDate();
        String words = assessment.cautions().stream()
                .filter(caution -> caution.id().startsWith(ShelfLifeChecks.ID + "."))
                .map(Caution::text)
                .findFirst()
                .orElse("");
        return Optional.of(new StandingQuestion(
                ShelfLifeChecks.ID,
                "Used by its last day",
                today.isAfter(last) ? State.LOST : State.KEPT,
                Optional.empty(),
                words,
                List.of()));
    }
}
