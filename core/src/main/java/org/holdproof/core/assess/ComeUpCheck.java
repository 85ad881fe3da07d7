package org.holdproof.core.assess;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.log.Trace;
import org.holdproof.core.measure.BandTime;
import org.holdproof.core.measure.FirstMet;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.HoldingRule;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.core.verdict.Caution;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;
import org.holdproof.core.wording.Wording;

/**
 * Did the core pass through the growth range fast enough while heating? Times add up until a lethal time and
 * temperature was reached; only then does a new heating get a new allowance (FSIS Cooking Guideline 2021, page 25).
 */
public final class ComeUpCheck {
    public static final String ID = "come-up";

    private final Evidence evidence;
    private final HoldingRule rule;

    ComeUpCheck(Evidence evidence, HoldingRule rule) {
        this.evidence = evidence;
        this.rule = rule;
    }

    /**
     * The come-up, where the batch has a cook with readings.
     *
     * @param rows the rows that make a cook of this food lethal
     */
    Optional<Check> check(List<LethalityRow> rows) {
        Optional<Span> cook = evidence.timeline().cook();
        if (cook.isEmpty() || rule.limit().isEmpty() || rule.from().isEmpty()) {
            return Optional.empty();
        }
        List<Trace> traces = evidence.within(cook.get()).stream()
                .filter(trace -> !trace.isEmpty())
                .toList();
        return traces.stream()
                .map(trace -> longest(trace, rows))
                .max(Comparator.comparingDouble(
                                (Heating heating) -> heating.minutes().worst())
                        .thenComparingDouble(heating -> heating.minutes().nominal()))
                .map(this::judge);
    }

    /** A come-up beyond another authority's limit, where the batch's own authority sets none. */
    Optional<Caution> caution(List<LethalityRow> rows) {
        return check(rows)
                .filter(check -> check.verdict() != Verdict.MET)
                .map(check -> new Caution(
                        ID,
                        evidence.authority().title() + " sets no limit on the come-up. Beside one that does ("
                                + rule.citation().text() + ": " + check.rule() + "): " + check.why()));
    }

    private record Heating(Trace trace, Bounded minutes, boolean startLogged, Span span) {}

    /** The longest come-up of one probe: the time up to its first lethal spell, or that of any heating after one. */
    private Heating longest(Trace trace, List<LethalityRow> rows) {
        List<Trace> heatings = new ArrayList<>();
        Trace rest = trace;
        while (!rest.isEmpty()) {
            Optional<Long> lethal = firstLethal(rest, rows);
            long end = lethal.orElse(rest.lastMillis());
            heatings.add(rest.between(rest.firstMillis(), end));
            rest = lethal.isEmpty() ? rest.between(1, 0) : afterFallingOut(rest.between(end + 1, trace.lastMillis()));
        }
        return heatings.stream()
                .map(this::measure)
                .max(Comparator.comparingDouble(
                        (Heating heating) -> heating.minutes().worst()))
                .orElseThrow();
    }

    /** What follows once the food has been below the band, so that a hot hold or a slow fall is no heating. */
    private Trace afterFallingOut(Trace trace) {
        double lower = rule.from().orElseThrow().celsius();
        for (int i = 0; i < trace.size(); i++) {
            if (trace.celsius(i) < lower) {
                return trace.between(trace.millis(i), trace.lastMillis());
            }
        }
        return trace.between(1, 0);
    }

    private Optional<Long> firstLethal(Trace trace, List<LethalityRow> rows) {
        return rows.stream()
                .map(row -> FirstMet.millis(trace, row, evidence.toleranceCelsius(), evidence.gapMinutes(trace)))
                .flatMap(Optional::stream)
                .min(Comparator.naturalOrder());
    }

    private Heating measure(Trace trace) {
        double lower = rule.from().map(Boundary::celsius).orElseThrow();
        double upper = rule.limit().map(Boundary::celsius).orElseThrow();
        Bounded minutes = BandTime.minutes(trace, lower, upper, evidence.toleranceCelsius());
        boolean startLogged = trace.celsius(0) <= lower + TemperatureUnit.SLACK_CELSIUS + evidence.toleranceCelsius();
        Bounded bounded =
                startLogged ? minutes : new Bounded(Double.POSITIVE_INFINITY, minutes.nominal(), minutes.best());
        return new Heating(trace, bounded, startLogged, new Span(trace.firstMillis(), trace.lastMillis()));
    }

    private Check judge(Heating heating) {
        double limit = rule.maxMinutes().orElseThrow();
        Verdict kept = Check.judge(heating.minutes(), rule.timeComparison(), limit);
        String band = evidence.wording().boundary(rule.from().orElseThrow()) + " and "
                + evidence.wording().boundary(rule.limit().orElseThrow());
        return Check.of(ID, "Come-up fast enough")
                .required(rule.timeComparison().words() + " " + Wording.minutes(limit) + " in all between " + band
                        + " while heating")
                .citation(rule.citation())
                .verdict(kept == Verdict.MET ? Verdict.MET : Verdict.NOT_PROVEN)
                .measured(heating.minutes())
                .limit(limit)
                .comparison(rule.timeComparison())
                .unit("min")
                .why(why(heating, kept, limit))
                .next(
                        "Do not serve on this record. Have growth during the come-up evaluated; S. aureus toxin is not undone by heat.")
                .channel(heating.trace().channel())
                .window(heating.span())
                .build();
    }

    private String why(Heating heating, Verdict kept, double limit) {
        String slowest = "The slowest probe (" + heating.trace().channel() + ") ";
        if (!heating.startLogged()) {
            return slowest + "was already at "
                    + evidence.wording().temperature(heating.trace().celsius(0))
                    + " at its first reading: how long it had been in the range is not logged.";
        }
        if (kept == Verdict.MET) {
            return slowest + "was in the range for at most "
                    + Wording.minutes(heating.minutes().worst()) + ".";
        }
        if (kept == Verdict.NOT_PROVEN) {
            return slowest + "was in the range for "
                    + Wording.between(
                            heating.minutes().best(), heating.minutes().worst()) + ": the record does not decide.";
        }
        return slowest + "was in the range for at least "
                + Wording.minutes(heating.minutes().best())
                + ". Beyond " + Wording.minutes(limit)
                + " the guideline names a scientific gap (long come-up, gap 6): not a failure by itself, but no published support either.";
    }
}
