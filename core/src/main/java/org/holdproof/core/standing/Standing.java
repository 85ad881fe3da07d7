package org.holdproof.core.standing;

import java.util.List;
import java.util.Optional;
import org.holdproof.core.assess.Assessor;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.course.ColumnMissingException;
import org.holdproof.core.course.CookLogs;
import org.holdproof.core.course.CookTimeline;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.rules.AuthorityProfile;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.standing.StandingQuestion.State;
import org.holdproof.core.verdict.Assessment;
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
        return new StandingJudge(evidence(soFar, assessment), log, cook, assessment, presentMillis).judge();
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
}
