package org.holdproof.core.lesson;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.holdproof.core.log.Trace;
import org.holdproof.core.measure.LongestSpell;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.rules.HoldingRule;
import org.holdproof.core.rules.LethalityRow;

/**
 * One bath of the row.
 *
 * @param celsius its set point, in °C
 * @param core the simulated core from the moment the cut goes in, instant 0
 * @param nearMinutes when the core first comes within 1 °C of the bath; empty if not within the time shown
 * @param courses what grows and dies in it, by organism
 * @param comeUpKept whether the core came up within the published limit, so that a row met counts
 * @param rowMet the published row met first, whatever the come-up; empty if none is within the time shown
 */
public record LessonBath(
        double celsius,
        Trace core,
        OptionalDouble nearMinutes,
        List<CountCourse> courses,
        boolean comeUpKept,
        Optional<RowMet> rowMet) {

    public LessonBath {
        courses = List.copyOf(courses);
    }

    /**
     * A published row and when the core has met it.
     *
     * @param minutes from the moment the cut goes in
     */
    public record RowMet(LethalityRow row, double minutes) {}

    /** Whether a core that does not fall on the way passes a rule's band in its time. */
    static boolean isComeUpKept(Trace core, HoldingRule rule) {
        double from = rule.from().map(Boundary::celsius).orElseThrow();
        double to = rule.limit().map(Boundary::celsius).orElseThrow();
        double never = Double.POSITIVE_INFINITY;
        return LongestSpell.atOrAbove(core, from, 0, never)
                .nominal()
                .flatMap(warm -> LongestSpell.atOrAbove(core, to, 0, never)
                        .nominal()
                        .map(hot -> (hot.fromMillis() - warm.fromMillis()) / 60_000.0))
                .filter(minutes ->
                        rule.timeComparison().holds(minutes, rule.maxMinutes().orElseThrow(), 0))
                .isPresent();
    }

    /** The row met first on a straight line between readings, of a core that does not fall on the way. */
    static Optional<RowMet> firstMet(Trace core, List<LethalityRow> rows) {
        double never = Double.POSITIVE_INFINITY;
        return rows.stream()
                .flatMap(row -> LongestSpell.atOrAbove(core, row.at().celsius(), 0, never).nominal().stream()
                        .filter(spell -> spell.seconds() >= row.seconds())
                        .flatMap(spell -> Stream.of(new RowMet(
                                row, (spell.fromMillis() - core.firstMillis()) / 60_000.0 + row.seconds() / 60))))
                .min(Comparator.comparingDouble(RowMet::minutes));
    }
}
