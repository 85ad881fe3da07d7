package org.holdproof.core.standing;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.holdproof.core.assess.Assessor;
import org.holdproof.core.assess.BagChecks;
import org.holdproof.core.assess.ComeUpCheck;
import org.holdproof.core.assess.CoolingChecks;
import org.holdproof.core.assess.HoldingChecks;
import org.holdproof.core.assess.HumidityCheck;
import org.holdproof.core.assess.InterruptionCheck;
import org.holdproof.core.assess.LethalityCheck;
import org.holdproof.core.assess.LowCookCheck;
import org.holdproof.core.assess.ProbePlaceCheck;
import org.holdproof.core.assess.ReheatChecks;
import org.holdproof.core.assess.RowJudgement;
import org.holdproof.core.assess.ShelfLifeChecks;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.course.ColumnMissingException;
import org.holdproof.core.course.CookLogs;
import org.holdproof.core.course.CookTimeline;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.AuthorityProfile;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.rules.ShelfLifeRule;
import org.holdproof.core.standing.StandingQuestion.State;
import org.holdproof.core.verdict.Assessment;
import org.holdproof.core.verdict.Caution;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;
import org.holdproof.core.wording.Wording;

/**
 * Where a cook stands at one instant: the same checks as for a finished batch, put to what has happened so far. A log
 * that stops before a stage's end is a cook under way, not a fault.
 *
 * <p>What is proven stays proven however the log goes on at its own rhythm: only a question whose stage is over, or whose
 * answer no later reading can change, is called so. A second heating after a chill puts the cook's questions anew.
 *
 * @param assessment the checks on the record as far as it has happened
 * @param presentMillis the instant, in milliseconds since 1970-01-01T00:00Z
 * @param underWay the stage under way; empty between stages and when the batch is over
 * @param isOver whether the last stage the record names is over
 * @param questions in the order a cook happens
 * @param outlook what lethality still needs; empty where it is proven, or can no longer be
 * @param clocks every limit running out, the next to fall first
 */
public record Standing(
        Assessment assessment,
        long presentMillis,
        Optional<Stage> underWay,
        boolean isOver,
        List<StandingQuestion> questions,
        Optional<LethalityOutlook> outlook,
        List<RunningClock> clocks) {

    public Standing {
        questions = List.copyOf(questions);
        clocks = List.copyOf(clocks);
    }

    /**
     * Where a cook stands at the last row of its log.
     *
     * @throws ColumnMissingException if the record names a core column the log does not have
     */
    public static Standing of(ProbeLog log, BatchRecord batch, AuthorityProfile authority, RuleLibrary library)
            throws ColumnMissingException {
        return of(log, batch, authority, library, log.millis(log.rows() - 1));
    }

    /**
     * Where a cook stands at an instant after the last row of its log.
     *
     * @throws ColumnMissingException if the record names a core column the log does not have
     * @throws IllegalArgumentException if the log goes on after the instant
     */
    public static Standing of(
            ProbeLog log, BatchRecord batch, AuthorityProfile authority, RuleLibrary library, long presentMillis)
            throws ColumnMissingException {
        return of(CookLogs.of(batch, List.of(log)), authority, library, presentMillis);
    }

    /**
     * Where a cook of several logs stands at the last reading of any of them.
     *
     * @throws ColumnMissingException if the record names a core column its log does not have
     */
    public static Standing of(CookLogs logs, AuthorityProfile authority, RuleLibrary library)
            throws ColumnMissingException {
        ProbeLog log = logs.joined();
        return of(logs, authority, library, log.millis(log.rows() - 1));
    }

    private static Standing of(CookLogs logs, AuthorityProfile authority, RuleLibrary library, long presentMillis)
            throws ColumnMissingException {
        ProbeLog log = logs.joined();
        if (presentMillis < log.millis(log.rows() - 1)) {
            throw new IllegalArgumentException("the log goes on after the present instant");
        }
        CookSoFar cook = CookSoFar.of(logs.batch(), presentMillis);
        CookLogs soFar = CookLogs.of(cook.record(), logs.logs());
        Assessment assessment = Assessor.assess(soFar, authority, library);
        return new Judge(evidence(soFar, assessment), cook, assessment, presentMillis).judge();
    }

    private static Evidence evidence(CookLogs logs, Assessment assessment) {
        BatchRecord record = assessment.batch();
        return new Evidence(
                record,
                assessment.authority(),
                logs.core(),
                assessment.record().toleranceCelsius(),
                new CookTimeline(record, assessment.span()),
                new Wording(assessment.authority().units(), record.kitchen().zone()));
    }

    /** The questions that stand so. */
    public List<StandingQuestion> questions(State state) {
        return questions.stream().filter(question -> question.state() == state).toList();
    }

    /** The question with this key. */
    public Optional<StandingQuestion> question(String key) {
        return questions.stream().filter(question -> question.key().equals(key)).findFirst();
    }

    /** MET: all that has happened is proven or kept. NOT PROVEN: something is still open. NOT MET: a limit is lost. */
    public Verdict verdict() {
        if (questions.stream().anyMatch(question -> question.state() == State.LOST)) {
            return Verdict.NOT_MET;
        }
        return questions.stream()
                        .allMatch(question -> question.state() == State.PROVEN || question.state() == State.KEPT)
                ? Verdict.MET
                : Verdict.NOT_PROVEN;
    }

    /** Puts the questions of one instant. */
    private static final class Judge {
        private static final String INSTRUMENT = "instrument";

        private final Evidence evidence;
        private final CookSoFar cook;
        private final Assessment assessment;
        private final long presentMillis;
        private final List<LethalityRow> rows;
        private final Verdict lethality;
        private final boolean rowsMet;

        Judge(Evidence evidence, CookSoFar cook, Assessment assessment, long presentMillis) {
            this.evidence = evidence;
            this.cook = cook;
            this.assessment = assessment;
            this.presentMillis = presentMillis;
            rows = evidence.authority().lethalityFor(evidence.batch().product()).stream()
                    .flatMap(choice -> choice.tables().stream())
                    .flatMap(table -> table.rowsFor(evidence.batch().product().fatPercent()).stream())
                    .toList();
            lethality = assessment.check(LethalityCheck.ID).map(Check::verdict).orElse(Verdict.NOT_PROVEN);
            rowsMet = rowsMet();
        }

        /** Whether every probe has met a row, whatever else may be said against its readings. */
        private boolean rowsMet() {
            List<Trace> traces = evidence.timeline().cook().stream()
                    .flatMap(span -> evidence.within(span).stream())
                    .toList();
            return !rows.isEmpty()
                    && !traces.isEmpty()
                    && traces.stream()
                            .allMatch(trace -> !trace.isEmpty()
                                    && RowJudgement.of(
                                                            trace,
                                                            rows,
                                                            evidence.toleranceCelsius(),
                                                            evidence.gapMinutes(trace))
                                                    .verdict()
                                            == Verdict.MET);
        }

        Standing judge() {
            List<RunningClock> clocks = clocks();
            Optional<LethalityOutlook> outlook = lethality == Verdict.MET || cook.cookIsOver()
                    ? Optional.empty()
                    : LethalityOutlook.of(evidence, rows, cook.underWay(), presentMillis);
            List<StandingQuestion> questions = new ArrayList<>();
            Map<String, Integer> times = new HashMap<>();
            for (Check check : assessment.checks()) {
                int time = times.merge(check.id(), 1, Integer::sum);
                List<RunningClock> own = clocks.stream()
                        .filter(clock -> clock.check().equals(check.id()))
                        .toList();
                State state = state(check, own);
                questions.add(new StandingQuestion(
                        check.id() + (time > 1 ? "#" + time : ""),
                        check.title(),
                        state,
                        Optional.of(check),
                        words(check, state, own, outlook),
                        own.stream().filter(this::stillRuns).toList()));
            }
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

        private boolean stillRuns(RunningClock clock) {
            return clock.lostFromMillis() >= presentMillis;
        }

        private List<RunningClock> clocks() {
            StandingClocks running = new StandingClocks(evidence, cook, presentMillis);
            AuthorityProfile authority = evidence.authority();
            List<RunningClock> clocks = new ArrayList<>();
            if (!rowsMet) {
                authority
                        .comeUpToPlanBy()
                        .flatMap(rule -> running.comeUp(rule, rows))
                        .ifPresent(clocks::add);
            }
            authority.lowCook().flatMap(running::lowCook).ifPresent(clocks::add);
            Optional<Check> cooling = assessment.checks().stream()
                    .filter(check -> isOf(check, CoolingChecks.ID))
                    .findFirst();
            authority.cooling().stream()
                    .filter(rule -> CoolingChecks.isOpen(
                            rule.condition(), evidence.batch().product()))
                    .filter(rule -> cooling.isEmpty()
                            || cooling.get()
                                    .citation()
                                    .filter(rule.citation()::equals)
                                    .isPresent())
                    .findFirst()
                    .ifPresent(rule -> clocks.addAll(running.cooling(rule)));
            authority.reheat().flatMap(running::reheat).ifPresent(clocks::add);
            clocks.sort(Comparator.comparingLong(RunningClock::provableUntilMillis));
            return clocks;
        }

        private static boolean isOf(Check check, String family) {
            return check.id().equals(family) || check.id().startsWith(family + ".");
        }

        private State state(Check check, List<RunningClock> clocks) {
            if (isOf(check, ComeUpCheck.ID)) {
                return comeUp(check);
            }
            if (isOf(check, INSTRUMENT) || isOf(check, InterruptionCheck.ID) || isOf(check, ShelfLifeChecks.ID)) {
                return settled(check);
            }
            if (isOf(check, LethalityCheck.ID)) {
                return lethality(check);
            }
            if (isOf(check, ProbePlaceCheck.ID)) {
                return cook.cookIsOver() ? settled(check) : State.NEEDED;
            }
            if (isOf(check, HumidityCheck.ID)) {
                return humidity(check);
            }
            if (isOf(check, BagChecks.ID)) {
                boolean waits = check.window().isPresent()
                        && check.window().get().toMillis() >= assessment.span().toMillis();
                return check.verdict() == Verdict.NOT_PROVEN && waits ? State.NEEDED : settled(check);
            }
            if (isOf(check, HoldingChecks.HOT)) {
                return held(check, Stage.Kind.HOT_HOLD);
            }
            if (isOf(check, HoldingChecks.COLD)) {
                return held(check, Stage.Kind.STORE);
            }
            if (isOf(check, CoolingChecks.ID)) {
                return cooling(check, clocks);
            }
            if (check.id().equals(ReheatChecks.TIME)) {
                return reheatTime(check, clocks);
            }
            if (check.id().equals(ReheatChecks.TARGET)) {
                return check.verdict() != Verdict.MET && cook.isUnderWay(Stage.Kind.REHEAT, check)
                        ? State.NEEDED
                        : settled(check);
            }
            if (isOf(check, LowCookCheck.ID)) {
                return check.verdict() == Verdict.MET && !cook.cookIsOver() ? State.KEPT : settled(check);
            }
            return check.verdict() == Verdict.MET && !cook.isOver() ? State.KEPT : settled(check);
        }

        private static State settled(Check check) {
            return switch (check.verdict()) {
                case MET -> State.PROVEN;
                case NOT_PROVEN -> State.UNPROVABLE;
                case NOT_MET -> State.LOST;
            };
        }

        /** A row that is met stays met; but while the heating goes on, its readings may yet show that they are no core's. */
        private State lethality(Check check) {
            if (cook.cookIsOver()) {
                return settled(check);
            }
            if (check.verdict() != Verdict.MET) {
                return State.NEEDED;
            }
            boolean doubtMayCome =
                    evidence.batch().product().thicknessMillimetres().isPresent() && cook.heatsOn();
            return doubtMayCome ? State.KEPT : State.PROVEN;
        }

        /** Its time ends with the first lethal spell of the last probe, or with the cook. */
        private State comeUp(Check check) {
            boolean ranOut = check.measured().isPresent()
                    && Check.judge(
                                    check.measured().get(),
                                    check.comparison(),
                                    check.limit().orElse(Double.POSITIVE_INFINITY))
                            == Verdict.NOT_MET;
            if (ranOut) {
                return State.LOST;
            }
            boolean ended = cook.cookIsOver() || rowsMet;
            return check.verdict() == Verdict.MET && !ended ? State.KEPT : settled(check);
        }

        private State humidity(Check check) {
            boolean mayChange = !cook.cookIsOver()
                    && (check.verdict() != Verdict.MET || !rowsMet || cook.isUnderWay(Stage.Kind.SMOKE));
            if (!mayChange || check.verdict() == Verdict.NOT_MET) {
                return settled(check);
            }
            return check.verdict() == Verdict.MET ? State.KEPT : State.NEEDED;
        }

        /** A level kept to: what was broken is lost at once, what was missed in a gap stays unproven. */
        private State held(Check check, Stage.Kind kind) {
            if (check.verdict() == Verdict.NOT_MET || !cook.isUnderWay(kind, check)) {
                return settled(check);
            }
            if (check.verdict() == Verdict.MET) {
                return State.KEPT;
            }
            return check.measured().isPresent() ? State.UNPROVABLE : State.NEEDED;
        }

        private State cooling(Check check, List<RunningClock> clocks) {
            if (check.verdict() == Verdict.NOT_MET || !cook.isUnderWay(Stage.Kind.CHILL)) {
                return settled(check);
            }
            if (check.verdict() == Verdict.MET) {
                return State.KEPT;
            }
            return clocks.stream().anyMatch(clock -> clock.minutesLeft() < 0) ? State.UNPROVABLE : State.NEEDED;
        }

        /** While the target is not reached the check itself has no end to judge by; its clock has. */
        private State reheatTime(Check check, List<RunningClock> clocks) {
            if (check.verdict() == Verdict.MET || !cook.isUnderWay(Stage.Kind.REHEAT, check)) {
                return settled(check);
            }
            if (clocks.isEmpty()) {
                return check.verdict() == Verdict.NOT_MET && isFinite(check) ? State.LOST : State.NEEDED;
            }
            RunningClock clock = clocks.get(0);
            if (clock.lostFromMillis() < presentMillis) {
                return State.LOST;
            }
            return clock.minutesLeft() < 0 ? State.UNPROVABLE : State.NEEDED;
        }

        private static boolean isFinite(Check check) {
            return check.measured().isPresent()
                    && Double.isFinite(check.measured().get().best());
        }

        private String words(Check check, State state, List<RunningClock> clocks, Optional<LethalityOutlook> outlook) {
            if (check.id().equals(LethalityCheck.ID) && outlook.isPresent()) {
                return outlook.get().words();
            }
            if (check.id().equals(LethalityCheck.ID) && state == State.KEPT) {
                return check.why() + " It stands when the heating ends, if the readings stay such as a core can give.";
            }
            if (isOf(check, CoolingChecks.ID)
                    && state == State.NEEDED
                    && clocks.isEmpty()
                    && check.measured().isPresent()) {
                return "Its clock has not started. Required: " + check.rule() + ".";
            }
            boolean held = isOf(check, HoldingChecks.HOT) || isOf(check, HoldingChecks.COLD);
            return held && state == State.KEPT ? margin(check) : check.why();
        }

        /** How far the level that is being kept lies from its limit now, less the tolerance. */
        private String margin(Check check) {
            TemperatureUnit unit = check.unit()
                            .filter(TemperatureUnit.FAHRENHEIT.symbol()::equals)
                            .isPresent()
                    ? TemperatureUnit.FAHRENHEIT
                    : TemperatureUnit.CELSIUS;
            Boundary limit = new Boundary(check.limit().orElseThrow(), unit);
            boolean floor = check.comparison().isFloor();
            Comparator<Trace> byLast = Comparator.comparingDouble(Judge::last);
            Trace governing = evidence.core().stream()
                    .filter(trace -> !trace.isEmpty())
                    .min(floor ? byLast : byLast.reversed())
                    .orElseThrow();
            double room = (floor ? 1 : -1) * (last(governing) - limit.celsius()) - evidence.toleranceCelsius();
            return governing.channel() + " reads " + evidence.wording().temperature(last(governing)) + ", "
                    + evidence.wording().difference(room) + " inside the limit of "
                    + evidence.wording().boundary(limit) + " with the tolerance taken off.";
        }

        private static double last(Trace trace) {
            return trace.celsius(trace.size() - 1);
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
}
