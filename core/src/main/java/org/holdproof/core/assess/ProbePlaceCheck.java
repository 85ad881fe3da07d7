package org.holdproof.core.assess;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.course.CookMedium;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.heat.Piece;
import org.holdproof.core.heat.PlausibilityFinding;
import org.holdproof.core.heat.ProbePlausibility;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Comparison;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.verdict.Caution;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Curve;
import org.holdproof.core.verdict.Verdict;

/**
 * Could these readings have come from the core of a piece this thick? A probe in the water passes nothing: readings no
 * core could have given leave pasteurization unproven. Possible readings are no proof that the probe was in the core, so
 * nothing is MET by them; where the record allows no answer, that is said as a caution.
 */
public final class ProbePlaceCheck {
    public static final String ID = "probe-place";

    private final Evidence evidence;
    private final Optional<CookMedium> medium;

    ProbePlaceCheck(Evidence evidence, Optional<CookMedium> medium) {
        this.evidence = evidence;
        this.medium = medium;
    }

    /** One probe's readings and what they can be. */
    record Judged(Trace trace, PlausibilityFinding finding) {}

    /** Every core probe over the cook, where the record declares a thickness. */
    List<Judged> judged() {
        List<Judged> judged = new ArrayList<>();
        OptionalDouble thickness = evidence.batch().product().thicknessMillimetres();
        Optional<Span> heating = heating();
        if (thickness.isEmpty() || heating.isEmpty()) {
            return judged;
        }
        Piece piece =
                Piece.of(thickness.getAsDouble(), evidence.batch().product().shape());
        for (Trace trace : evidence.within(heating.get())) {
            finding(trace, piece).ifPresent(found -> judged.add(new Judged(trace, found)));
        }
        return judged;
    }

    /**
     * The rise is held against the hottest the medium had been, so that a bath cooler than the smoker makes no core look
     * too hot; the fall against the medium as it was. In air, whose heat reaches the surface slowly, only a rise that no
     * core can make counts, not the shape of the curve.
     */
    private Optional<PlausibilityFinding> finding(Trace trace, Piece piece) {
        PlausibilityFinding rise = ProbePlausibility.judge(trace, medium.map(CookMedium::hottestSoFar), piece);
        boolean counts = rise.outcome() != PlausibilityFinding.Outcome.PULLED_OUT
                && (medium.isEmpty()
                        || medium.get().waterOnly()
                        || rise.atMillis().isPresent());
        if (rise.outcome().isImpossible() && counts) {
            return Optional.of(rise);
        }
        PlausibilityFinding fall = ProbePlausibility.judge(trace, medium.map(CookMedium::logged), piece);
        if (fall.outcome() == PlausibilityFinding.Outcome.PULLED_OUT) {
            return Optional.of(fall);
        }
        return rise.outcome().isImpossible() ? Optional.empty() : Optional.of(rise);
    }

    /** From the first cooking stage's start to the last one's end. */
    private Optional<Span> heating() {
        return evidence.timeline().cook().flatMap(cook -> evidence.batch().stages().stream()
                .filter(stage -> stage.kind().isCook())
                .map(stage -> evidence.timeline().span(stage).toMillis())
                .reduce(Math::max)
                .filter(end -> end > cook.fromMillis())
                .map(end -> new Span(cook.fromMillis(), Math.min(end, cook.toMillis()))));
    }

    static Optional<Check> check(List<Judged> judged) {
        return judged.stream()
                .filter(probe -> probe.finding().outcome().isImpossible())
                .findFirst()
                .map(ProbePlaceCheck::unproven);
    }

    private static Check unproven(Judged probe) {
        PlausibilityFinding finding = probe.finding();
        return Check.of(ID, "Probe sat in the core")
                .required("readings that a core of the declared thickness can have given")
                .verdict(Verdict.NOT_PROVEN)
                .comparison(Comparison.AT_MOST)
                .why("The readings of " + probe.trace().channel() + " are "
                        + finding.outcome().title() + ": " + finding.why()
                        + ". Pasteurization at the core is not shown by them.")
                .next(
                        "Do not serve on this record. Check where the probe sat and the declared thickness; cook on with a probe in the thickest part until a row is proven there.")
                .channel(probe.trace().channel())
                .window(new Span(probe.trace().firstMillis(), probe.trace().lastMillis()))
                .build();
    }

    /** The lethality check, unproven where the readings it rests on are no core's. */
    static Check trusted(Check lethality, List<Judged> judged) {
        Optional<Check> impossible = check(judged);
        if (impossible.isEmpty() || lethality.verdict() != Verdict.MET) {
            return lethality;
        }
        return lethality.toBuilder()
                .verdict(Verdict.NOT_PROVEN)
                .why(lethality.why() + " But the probe's readings are not a core's.")
                .next(impossible.get().next().orElseThrow())
                .build();
    }

    /** What could not be answered, and why. */
    static List<Caution> cautions(List<Judged> judged) {
        return judged.stream()
                .filter(probe -> probe.finding().outcome() == PlausibilityFinding.Outcome.UNDECIDED)
                .map(probe -> new Caution(
                        ID,
                        "Whether the probe (" + probe.trace().channel()
                                + ") sat in the core cannot be judged from its readings: "
                                + probe.finding().why() + "."))
                .toList();
    }

    /** The readings against the fastest possible core, of the probe whose readings are impossible. */
    static Optional<Curve> curve(List<Judged> judged) {
        return judged.stream()
                .filter(probe -> probe.finding().outcome().isImpossible())
                .findFirst()
                .flatMap(probe -> probe.finding().fastestPossible())
                .map(fastest -> {
                    List<Curve.Point> points = new ArrayList<>();
                    for (int i = 0; i < fastest.size(); i++) {
                        points.add(new Curve.Point(
                                fastest.millis(i), fastest.celsius(i), fastest.celsius(i), fastest.celsius(i)));
                    }
                    return new Curve("Fastest possible core", "°C", points);
                });
    }
}
