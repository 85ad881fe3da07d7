package org.holdproof.core.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.quantity.Bounded;

/**
 * Joins what one cook comes to when its loggers' clocks are as the record says with what it comes to when they are as far
 * off as the record allows: worst and best reach over all of them, and a verdict is no better than the worst.
 */
public final class ClockRange {
    private ClockRange() {}

    /**
     * The assessment on the clocks as the record says, its figures widened to what the clocks allow.
     *
     * @param said on the clocks as the record says
     * @param corners on clocks as far off as they may be
     */
    public static Assessment over(Assessment said, List<Assessment> corners) {
        List<Check> checks = new ArrayList<>();
        for (Check check : said.checks()) {
            Check widened = check;
            for (Assessment corner : corners) {
                Optional<Check> other = corner.check(check.id());
                if (other.isPresent()) {
                    widened = widened(widened, other.get());
                }
            }
            checks.add(widened);
        }
        for (Assessment corner : corners) {
            for (Check other : corner.checks()) {
                if (checks.stream().noneMatch(check -> check.id().equals(other.id()))) {
                    checks.add(other);
                }
            }
        }
        return new Assessment(
                checks.stream().map(Check::verdict).reduce(Verdict.MET, Verdict::and),
                said.batch(),
                said.authority(),
                said.tablesEdition(),
                said.span(),
                checks,
                said.cautions(),
                said.lethality(),
                said.integrated(),
                said.fastestCore(),
                said.record(),
                said.notJudged());
    }

    private static Check widened(Check said, Check other) {
        Check.Builder widened = said.toBuilder();
        if (said.measured().isPresent() && other.measured().isPresent()) {
            widened.measured(Optional.of(reach(
                    said.measured().get(),
                    other.measured().get(),
                    said.comparison().isFloor())));
        }
        if (said.verdict() == other.verdict()) {
            return widened.build();
        }
        // clocks that decide between two answers leave none proven
        widened.verdict(Verdict.NOT_PROVEN)
                .why(said.why()
                        + " The loggers' clocks, as far off as the record allows, decide: on other clocks it is "
                        + other.verdict().words() + ".");
        said.next().or(other::next).ifPresent(widened::next);
        return widened.build();
    }

    private static Bounded reach(Bounded said, Bounded other, boolean floor) {
        return floor
                ? new Bounded(
                        Math.min(said.worst(), other.worst()), said.nominal(), Math.max(said.best(), other.best()))
                : new Bounded(
                        Math.max(said.worst(), other.worst()), said.nominal(), Math.min(said.best(), other.best()));
    }
}
