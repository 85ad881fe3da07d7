package org.holdproof.core.assess;

import java.util.Comparator;
import java.util.function.ToDoubleFunction;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.verdict.Check;

/** Which of several probes' answers to one question governs: the worst verdict, then the figure that speaks worst for the cook. */
final class Governing {
    /** Rising from the answer that speaks best for the cook to the one that speaks worst. */
    static final Comparator<Check> ORDER = Comparator.comparing(Check::verdict)
            .thenComparingDouble(check -> against(check, Bounded::worst))
            .thenComparingDouble(check -> against(check, Bounded::nominal))
            .thenComparingDouble(check -> against(check, Bounded::best))
            .thenComparing(check -> check.channel().orElse(""));

    private Governing() {}

    private static double against(Check check, ToDoubleFunction<Bounded> end) {
        double sign = check.comparison().isFloor() ? -1 : 1;
        return check.measured().map(figure -> sign * end.applyAsDouble(figure)).orElse(Double.NEGATIVE_INFINITY);
    }
}
