package org.holdproof.core.assess;

import java.util.List;
import java.util.Optional;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.log.Trace;
import org.holdproof.core.rules.GrowthFact;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.verdict.Caution;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;

/**
 * A cook that meets only rows far down a table stands on the table alone: published trials did not reproduce the lowest
 * rows. The verdict is the table's; whoever reads it is told.
 */
final class LowRow {
    static final String ID = "low-row";

    /** From here on the trials agree with the tables, in °C. */
    private static final double REPRODUCED = 60;
    /** The trials, in growth-facts.csv. */
    private static final String TRIALS = "F09";

    private LowRow() {}

    /**
     * Told where the cook was proven, and by no row from 60 °C on.
     *
     * @param rows the rows that make a cook of this food lethal
     */
    static Optional<Caution> caution(Evidence evidence, Check lethality, List<LethalityRow> rows, RuleLibrary library) {
        List<LethalityRow> high =
                rows.stream().filter(row -> row.at().celsius() >= REPRODUCED).toList();
        if (lethality.verdict() != Verdict.MET || high.size() == rows.size() || met(evidence, high)) {
            return Optional.empty();
        }
        GrowthFact trials = library.rules(GrowthFact.class).require(TRIALS);
        return Optional.of(new Caution(
                ID,
                "Only a row below " + evidence.wording().temperature(REPRODUCED)
                        + " was met. Published trials did not reproduce the 6.5-log time at "
                        + evidence.wording().temperature(54.4) + " ("
                        + trials.citation().text()
                        + "); a hotter bath stands on firmer ground."));
    }

    private static boolean met(Evidence evidence, List<LethalityRow> rows) {
        if (rows.isEmpty()) {
            return false;
        }
        List<Trace> traces = evidence.timeline().cook().map(evidence::within).orElse(List.of());
        return !traces.isEmpty()
                && traces.stream()
                        .allMatch(trace ->
                                RowJudgement.of(trace, rows, evidence.toleranceCelsius(), evidence.gapMinutes(trace))
                                                .verdict()
                                        == Verdict.MET);
    }
}
