package org.holdproof.core.lesson;

import java.util.List;
import org.holdproof.core.rules.GrowthFact;
import org.holdproof.core.rules.RuleLibrary;

/**
 * What somebody found in meat at a low temperature, in a line; every figure of it stands in the fact it is taken from.
 *
 * @param celsius the temperature it is told under, in °C
 */
public record MeasuredFinding(int celsius, String text, GrowthFact fact) {
    private record Line(int celsius, String text, String factId) {}

    private static final List<Line> LINES = List.of(
            new Line(48, "Beef surface, 6 h: 99% of staphylococci gone only from 48.8 °C.", "F13"),
            new Line(48, "C. perfringens cells in beef: a 6-log kill was not reached.", "F14"),
            new Line(51, "Beef surface, 6 h: 99% of salmonellae gone only from 51.1 °C.", "F13"),
            new Line(51, "A mixed inoculum on the surface was gone after 12 h at 51.1 °C.", "F13"),
            new Line(53, "C. perfringens in beef: 6-log kill not reached; survivors regrew.", "F14"),
            new Line(53, "Warming 10 to 53 °C: chicken +2 to +3 logs of it, pork below +1.", "F15"),
            new Line(53, "6 h in 3-8 cm cuts: more than 4 logs of L. monocytogenes lost.", "F10"),
            new Line(55, "A 6-log kill of C. perfringens cells in beef was reached.", "F14"),
            new Line(55, "At 54.4 °C the US 6.5-log times were not reproduced; from 60 °C on they were.", "F09"));

    static List<MeasuredFinding> of(RuleLibrary rules) {
        return LINES.stream()
                .flatMap(line -> rules.rules(GrowthFact.class).find(line.factId).stream()
                        .map(fact -> new MeasuredFinding(line.celsius, line.text, fact)))
                .toList();
    }
}
