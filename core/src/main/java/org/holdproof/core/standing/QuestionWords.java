package org.holdproof.core.standing;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.assess.CoolingChecks;
import org.holdproof.core.assess.HoldingChecks;
import org.holdproof.core.assess.LethalityCheck;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.standing.StandingQuestion.State;
import org.holdproof.core.verdict.Check;

/** Why a check stands so, or what it still needs, in a few sentences. */
record QuestionWords(Evidence evidence, Optional<LethalityOutlook> outlook) {

    String of(Check check, State state, List<RunningClock> clocks) {
        if (check.id().equals(LethalityCheck.ID) && outlook.isPresent()) {
            return outlook.get().words();
        }
        if (check.id().equals(LethalityCheck.ID) && state == State.KEPT) {
            return check.why() + " It stands when the heating ends, if the readings stay such as a core can give.";
        }
        if (QuestionStates.isOf(check, CoolingChecks.ID)
                && state == State.NEEDED
                && clocks.isEmpty()
                && check.measured().isPresent()) {
            return "Its clock has not started. Required: " + check.rule() + ".";
        }
        boolean held = QuestionStates.isOf(check, HoldingChecks.HOT) || QuestionStates.isOf(check, HoldingChecks.COLD);
        return held && state == State.KEPT && check.limit().isPresent() ? margin(check) : check.why();
    }

    /** How far the level that is being kept lies from its limit now, less the tolerance. */
    private String margin(Check check) {
        TemperatureUnit unit =
                check.unit().filter(TemperatureUnit.FAHRENHEIT.symbol()::equals).isPresent()
                        ? TemperatureUnit.FAHRENHEIT
                        : TemperatureUnit.CELSIUS;
        Boundary limit = new Boundary(check.limit().orElseThrow(), unit);
        boolean floor = check.comparison().isFloor();
        Comparator<Trace> byLast = Comparator.comparingDouble(QuestionWords::last);
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
}
