package org.holdproof.core.assess;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.stream.Collectors;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.course.CookMedium;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.heat.CoreSteps;
import org.holdproof.core.heat.Piece;
import org.holdproof.core.heat.PlausibilityFinding;
import org.holdproof.core.heat.PlausibilityFinding.Outcome;
import org.holdproof.core.heat.ProbePlausibility;
import org.holdproof.core.heat.Surroundings;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.verdict.Caution;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Curve;
import org.holdproof.core.verdict.Verdict;

/**
 * Could these readings have come from the core of a piece this thick? A probe in the water passes nothing: readings no
 * core could have given prove neither pasteurization nor a chill, and readings that nobody can hold against a thickness
 * and a medium prove nothing either. Possible readings are no proof that the probe was in the core, so nothing is MET by
 * them.
 */
public final class ProbePlaceCheck {
    public static final String ID = "probe-place";
    private static final String TITLE = "Probe sat in the core";

    /** A core that must be this cold by now is asked nothing more of its fall, in °C. */
    private static final double COLD_CELSIUS = 5;

    /** A wet surface is no hotter, in °C. */
    private static final double HOTTEST_SURFACE_CELSIUS = 100;

    /** How long a probe that was put back between two stages takes to settle, in minutes; common practice, no source. */
    private static final double SETTLING_MINUTES = 5;

    private final Evidence evidence;
    private final ProbeLog log;

    ProbePlaceCheck(Evidence evidence, ProbeLog log) {
        this.evidence = evidence;
        this.log = log;
    }

    /** What the readings of a spell are looked at for. */
    enum Spell {
        HEATING,
        COOLING
    }

    /** One probe's readings of one spell and what they can be. */
    record Judged(Spell spell, Trace trace, PlausibilityFinding finding) {}

    /**
     * What the probes' readings can be.
     *
     * @param judged every spell that could be looked at, in the order of time
     * @param missing what the record lacks for it, each in a few words
     * @param bySetPoint stages whose medium is known by its set point alone
     */
    record Findings(List<Judged> judged, List<String> missing, List<Stage> bySetPoint) {
        Findings {
            judged = List.copyOf(judged);
            missing = List.copyOf(missing);
            bySetPoint = List.copyOf(bySetPoint);
        }

        private Optional<Judged> impossible() {
            return judged.stream()
                    .filter(probe -> probe.finding().outcome().isImpossible())
                    .findFirst();
        }

        private Optional<Judged> impossible(Spell spell) {
            return judged.stream()
                    .filter(probe -> probe.spell() == spell)
                    .filter(probe -> probe.finding().outcome().isImpossible())
                    .findFirst();
        }
    }

    /** Every core probe over every heating and over what follows it. */
    Findings findings() {
        List<Judged> judged = new ArrayList<>();
        List<String> missing = new ArrayList<>();
        List<Stage> bySetPoint = new ArrayList<>();
        OptionalDouble thickness = evidence.batch().product().thicknessMillimetres();
        List<List<Stage>> heatings = heatings();
        if (thickness.isEmpty() && !heatings.isEmpty()) {
            missing.add("the thickness of the piece (product, thickness)");
        }
        for (List<Stage> heating : heatings) {
            CookMedium medium = CookMedium.of(log, evidence.batch(), evidence.timeline(), heating);
            medium.unknown().stream()
                    .map(stage -> "the " + stage.kind().title() + "'s set point, or the column it was logged in")
                    .filter(word -> !missing.contains(word))
                    .forEach(missing::add);
            bySetPoint.addAll(medium.bySetPoint());
            if (thickness.isPresent() && medium.surroundings().isPresent()) {
                Piece piece = Piece.of(
                        thickness.getAsDouble(), evidence.batch().product().shape());
                judge(heating, medium.surroundings().get(), piece, judged);
            }
        }
        return new Findings(judged, missing, bySetPoint);
    }

    /** Cooking stages that follow each other without the food being chilled, stored or frozen between them. */
    private List<List<Stage>> heatings() {
        List<List<Stage>> heatings = new ArrayList<>();
        boolean goesOn = false;
        for (Stage stage : evidence.batch().stages()) {
            switch (stage.kind()) {
                case SMOKE, BATH -> {
                    if (!goesOn) {
                        heatings.add(new ArrayList<>());
                    }
                    heatings.get(heatings.size() - 1).add(stage);
                    goesOn = true;
                }
                case CHILL, STORE, FREEZE -> goesOn = false;
                case BAG, HOT_HOLD, REHEAT, SERVE, TIME_ONLY -> {}
            }
        }
        return heatings;
    }

    private void judge(List<Stage> heating, Surroundings medium, Piece piece, List<Judged> judged) {
        long from = heating.get(0).from().toEpochMilli();
        long to = heating.stream()
                .mapToLong(stage -> evidence.timeline().span(stage).toMillis())
                .max()
                .orElse(from);
        if (to <= from) {
            return;
        }
        for (Trace trace : evidence.within(new Span(from, to))) {
            judged.add(new Judged(Spell.HEATING, trace, risen(heating, trace, medium, piece)));
        }
        for (Trace trace : evidence.within(new Span(to, endOfCooling(to)))) {
            fallen(trace, medium, piece).ifPresent(judged::add);
        }
    }

    private PlausibilityFinding risen(List<Stage> heating, Trace trace, Surroundings medium, Piece piece) {
        PlausibilityFinding finding = ProbePlausibility.judge(trace, medium, piece);
        if (finding.outcome().isImpossible()) {
            return finding;
        }
        for (Stage stage : heating) {
            Span span = evidence.timeline().span(stage);
            boolean first = stage.equals(heating.get(0));
            long settled = span.fromMillis() + (first ? 0 : Math.round(SETTLING_MINUTES * 60_000));
            Trace part = trace.between(settled, span.toMillis());
            OptionalLong at = part.isEmpty()
                    ? OptionalLong.empty()
                    : steps(part, medium, piece).impossibleRise();
            if (at.isPresent()) {
                return moved(at.getAsLong(), "rise further from one reading to the next than a core can", finding);
            }
        }
        return finding;
    }

    /** The fall after a heating, whatever the stages after it are called. */
    private Optional<Judged> fallen(Trace trace, Surroundings medium, Piece piece) {
        if (trace.isEmpty()) {
            return Optional.empty();
        }
        OptionalLong at = steps(trace, medium, piece).impossibleFall(COLD_CELSIUS);
        if (at.isEmpty()) {
            return Optional.empty();
        }
        PlausibilityFinding finding = moved(
                at.getAsLong(),
                "fall further from one reading to the next than a core can, even in ice water",
                PlausibilityFinding.undecided(""));
        return Optional.of(new Judged(Spell.COOLING, trace, finding));
    }

    private CoreSteps steps(Trace trace, Surroundings medium, Piece piece) {
        double hottest = Math.min(HOTTEST_SURFACE_CELSIUS, medium.hottest());
        for (int i = 0; i < trace.size(); i++) {
            hottest = Math.max(hottest, Math.min(HOTTEST_SURFACE_CELSIUS, trace.celsius(i)));
        }
        double coldest = evidence.batch().stages().stream()
                .flatMapToDouble(stage -> stage.setPointCelsius().stream())
                .min()
                .orElse(CoreSteps.COLDEST_CELSIUS);
        return new CoreSteps(trace, piece, hottest, coldest);
    }

    private PlausibilityFinding moved(long atMillis, String how, PlausibilityFinding figures) {
        return figures.saying(
                Outcome.MOVED, "at " + evidence.wording().clock(atMillis) + " the readings " + how, atMillis);
    }

    /** Until the food is heated again or served; then a probe may be taken out. */
    private long endOfCooling(long fromMillis) {
        return evidence.batch().stages().stream()
                .filter(stage ->
                        stage.kind().isCook() || stage.kind() == Stage.Kind.REHEAT || stage.kind() == Stage.Kind.SERVE)
                .mapToLong(stage -> stage.from().toEpochMilli())
                .filter(millis -> millis >= fromMillis)
                .min()
                .orElse(Math.max(fromMillis, evidence.timeline().log().toMillis()));
    }

    static Optional<Check> check(Findings findings) {
        Optional<Judged> impossible = findings.impossible();
        if (impossible.isPresent()) {
            return impossible.map(ProbePlaceCheck::unproven);
        }
        if (!findings.missing().isEmpty()) {
            return Optional.of(unjudged(
                    "Whether the probe sat in the core cannot be judged: the record lacks "
                            + String.join(", and ", findings.missing()) + ".",
                    "Add to the batch record " + String.join(", and ", findings.missing()) + "."));
        }
        return findings.judged().stream()
                .filter(probe -> probe.finding().outcome() == Outcome.UNDECIDED)
                .findFirst()
                .map(probe -> unjudged(
                                "Whether the probe (" + probe.trace().channel()
                                        + ") sat in the core cannot be judged from its readings: "
                                        + probe.finding().why() + ".",
                                "Log the core from before the heating begins, and often enough for the piece's thickness.")
                        .toBuilder()
                        .channel(probe.trace().channel())
                        .build());
    }

    private static Check.Builder asked() {
        return Check.of(ID, TITLE)
                .required("readings that a core of the declared thickness can have given")
                .verdict(Verdict.NOT_PROVEN);
    }

    private static Check unjudged(String why, String next) {
        return asked().why(why).next(next).build();
    }

    private static Check unproven(Judged probe) {
        PlausibilityFinding finding = probe.finding();
        boolean heating = probe.spell() == Spell.HEATING;
        return asked().why("The readings of " + probe.trace().channel() + " are "
                        + finding.outcome().title() + ": " + finding.why() + ". "
                        + (heating ? "Pasteurization at the core" : "The chill of the core")
                        + " is not shown by them.")
                .next(
                        heating
                                ? "Do not serve on this record. Check where the probe sat and the declared thickness; cook on with a probe in the thickest part until a row is proven there."
                                : "Do not serve on this record. Check where the probe sat in the chill and the declared thickness; hold the food apart.")
                .channel(probe.trace().channel())
                .window(new Span(probe.trace().firstMillis(), probe.trace().lastMillis()))
                .build();
    }

    /** The lethality check, unproven where the readings it rests on are no core's. */
    static Check trusted(Check lethality, Findings findings) {
        return findings.impossible(Spell.HEATING)
                .map(probe -> doubted(lethality, probe))
                .orElse(lethality);
    }

    /** A check of a cooling, unproven where the readings it rests on are no core's. */
    static Check trustedCooling(Check cooling, Findings findings) {
        return findings.impossible(Spell.COOLING)
                .map(probe -> doubted(cooling, probe))
                .orElse(cooling);
    }

    private static Check doubted(Check check, Judged probe) {
        return check.verdict() != Verdict.MET
                ? check
                : check.toBuilder()
                        .verdict(Verdict.NOT_PROVEN)
                        .why(check.why() + " But the probe's readings are not a core's.")
                        .next(unproven(probe).next().orElseThrow())
                        .build();
    }

    /** What was judged by less than a log of the medium. */
    static List<Caution> cautions(Findings findings) {
        if (findings.bySetPoint().isEmpty()) {
            return List.of();
        }
        String stages = findings.bySetPoint().stream()
                .map(stage -> "the " + stage.kind().title())
                .distinct()
                .collect(Collectors.joining(", "));
        return List.of(
                new Caution(
                        ID + ".set-point",
                        "The log holds no medium for " + stages
                                + ": its set point stands in for it. That bounds how fast a core can have risen; a medium that failed, and a core that fell with it, it cannot show."));
    }

    /** The readings against the fastest possible core, of the probe whose readings are impossible. */
    static Optional<Curve> curve(Findings findings) {
        return findings.impossible().stream()
                .flatMap(probe -> probe.finding().fastestPossible().stream())
                .findFirst()
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
