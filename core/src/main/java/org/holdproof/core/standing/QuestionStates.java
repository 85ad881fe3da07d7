package org.holdproof.core.standing;

import java.util.List;
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
import org.holdproof.core.assess.ShelfLifeChecks;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.standing.StandingQuestion.State;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;

/**
 * How a check stands while its cook is under way: what later readings can still settle, and what they cannot.
 *
 * @param lastMillis the log's last reading
 * @param rowsMet whether every probe has met a row
 * @param thicknessKnown whether the readings can be held against a thickness
 */
record QuestionStates(CookSoFar cook, long lastMillis, long presentMillis, boolean rowsMet, boolean thicknessKnown) {
    private static final String INSTRUMENT = "instrument";
    private static final String END = "record.end";

    static boolean isOf(Check check, String family) {
        return check.id().equals(family) || check.id().startsWith(family + ".");
    }

    State of(Check check, List<RunningClock> clocks) {
        if (isOf(check, ComeUpCheck.ID)) {
            return comeUp(check);
        }
        if (check.id().equals(END)) {
            return check.verdict() == Verdict.MET ? State.PROVEN : cook.isOver() ? State.NEEDED : State.KEPT;
        }
        if (isOf(check, ShelfLifeChecks.ID) || isOf(check, HoldingChecks.UNDER_HOT)) {
            return open(check);
        }
        if (isOf(check, INSTRUMENT) || isOf(check, InterruptionCheck.ID)) {
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
            boolean waits = check.window().isPresent() && check.window().get().toMillis() >= lastMillis;
            return check.verdict() == Verdict.NOT_PROVEN && waits ? State.NEEDED : settled(check);
        }
        if (isOf(check, HoldingChecks.HOT)) {
            return held(check, Stage.Kind.HOT_HOLD);
        }
        if (isOf(check, HoldingChecks.COLD)) {
            return open(check);
        }
        if (isOf(check, CoolingChecks.ID)) {
            return cooling(check, clocks);
        }
        if (check.id().equals(ReheatChecks.TIME)) {
            return reheatTime(check, clocks);
        }
        if (check.id().equals(ReheatChecks.TARGET)) {
            return check.verdict() != Verdict.MET && !cook.isOver() ? State.NEEDED : settled(check);
        }
        if (isOf(check, LowCookCheck.ID)) {
            return check.verdict() == Verdict.MET && !cook.cookIsOver() ? State.KEPT : settled(check);
        }
        return check.verdict() == Verdict.MET && !cook.isOver() ? State.KEPT : settled(check);
    }

    /** How a clock stands by itself. */
    static State of(RunningClock clock, long presentMillis) {
        if (clock.lostFromMillis() < presentMillis) {
            return State.LOST;
        }
        return clock.minutesLeft() < 0 ? State.UNPROVABLE : State.NEEDED;
    }

    /** What the readings to come may still change, until the cook is over; a miss stays one. */
    private State open(Check check) {
        if (check.verdict() == Verdict.NOT_MET || cook.isOver()) {
            return settled(check);
        }
        return check.verdict() == Verdict.MET ? State.KEPT : State.NEEDED;
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
        return thicknessKnown && cook.heatsOn() ? State.KEPT : State.PROVEN;
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
        boolean mayChange =
                !cook.cookIsOver() && (check.verdict() != Verdict.MET || !rowsMet || cook.isUnderWay(Stage.Kind.SMOKE));
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

    /** While its clock runs, the clock says how it stands, whatever the stage under way is called. */
    private State cooling(Check check, List<RunningClock> clocks) {
        boolean chilling = !cook.isOver();
        if (check.verdict() == Verdict.NOT_MET) {
            return State.LOST;
        }
        if (check.verdict() == Verdict.MET) {
            return cook.isUnderWay(Stage.Kind.CHILL) ? State.KEPT : State.PROVEN;
        }
        if (!clocks.isEmpty()) {
            return clocks.stream().anyMatch(clock -> clock.minutesLeft() < 0) ? State.UNPROVABLE : State.NEEDED;
        }
        return chilling ? State.NEEDED : settled(check);
    }

    /** While the target is not reached the check itself has no end to judge by; its clock has. */
    private State reheatTime(Check check, List<RunningClock> clocks) {
        if (check.verdict() == Verdict.MET || !cook.isUnderWay(Stage.Kind.REHEAT, check)) {
            return settled(check);
        }
        if (clocks.isEmpty()) {
            return check.verdict() == Verdict.NOT_MET && isFinite(check) ? State.LOST : State.NEEDED;
        }
        return of(clocks.get(0), presentMillis);
    }

    private static boolean isFinite(Check check) {
        return check.measured().isPresent()
                && Double.isFinite(check.measured().get().best());
    }
}
