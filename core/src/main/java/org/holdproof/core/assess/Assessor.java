package org.holdproof.core.assess;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.batch.Product;
import org.holdproof.core.course.ColumnMissingException;
import org.holdproof.core.course.CookLogs;
import org.holdproof.core.course.CookTimeline;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.course.InstrumentStanding;
import org.holdproof.core.kinetics.GeneralMethod;
import org.holdproof.core.log.GapLimit;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.rules.AuthorityProfile;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.rules.ThermalDeath;
import org.holdproof.core.verdict.Assessment;
import org.holdproof.core.verdict.Caution;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.ClockRange;
import org.holdproof.core.verdict.Curve;
import org.holdproof.core.verdict.LethalityMargin;
import org.holdproof.core.verdict.RecordFacts;
import org.holdproof.core.verdict.Verdict;
import org.holdproof.core.wording.Wording;

/** Judges one batch: its log, its record and the authority's rules in, every check with its verdict out. */
public final class Assessor {
    /** More points than a page can show; the curve is thinned to this. */
    private static final int CURVE_POINTS = 600;

    private Assessor() {}

    /**
     * Puts every question the batch gives occasion for to its log.
     *
     * @param library the tables the profile comes from
     * @throws ColumnMissingException if the record names a core column the log does not have
     */
    public static Assessment assess(ProbeLog log, BatchRecord batch, AuthorityProfile authority, RuleLibrary library)
            throws ColumnMissingException {
        return assess(CookLogs.of(batch, List.of(log)), authority, library);
    }

    /**
     * Puts every question the batch gives occasion for to its logs; where their clocks may be off, for every way they may
     * be.
     *
     * @param library the tables the profile comes from
     * @throws ColumnMissingException if the record names a core column a log does not have
     */
    public static Assessment assess(CookLogs logs, AuthorityProfile authority, RuleLibrary library)
            throws ColumnMissingException {
        Assessment said = onTheseClocks(logs, authority, library);
        List<Assessment> corners = new ArrayList<>();
        for (CookLogs corner : logs.clockCorners()) {
            corners.add(onTheseClocks(corner, authority, library));
        }
        return corners.isEmpty() ? said : ClockRange.over(said, corners);
    }

    private static Assessment onTheseClocks(CookLogs logs, AuthorityProfile authority, RuleLibrary library) {
        BatchRecord batch = logs.batch();
        ProbeLog log = logs.joined();
        InstrumentStanding standing = InstrumentStanding.of(batch.instrument());
        List<Trace> core = logs.core();
        Span span = new Span(log.millis(0), log.millis(log.rows() - 1));
        Evidence evidence = new Evidence(
                batch,
                authority,
                core,
                core.stream().mapToDouble(Trace::toleranceCelsius).max().orElse(0),
                new CookTimeline(batch, span),
                new Wording(authority.units(), batch.kitchen().zone()));

        ProbePlaceCheck.Findings probes = new ProbePlaceCheck(evidence, log).findings();
        List<Check> checks = checks(evidence, probes);
        List<LethalityMargin> margins = authority.lethalityFor(batch.product()).stream()
                .flatMap(choice -> choice.margin().stream())
                .flatMap(kinetics -> integrated(evidence, kinetics).stream())
                .toList();
        return new Assessment(
                checks.stream().map(Check::verdict).reduce(Verdict.MET, Verdict::and),
                batch,
                authority,
                library.edition(),
                span,
                checks,
                cautions(logs, log, evidence, library, checks, probes),
                margins.stream().findFirst().map(found -> curve(evidence, found)),
                margins,
                ProbePlaceCheck.curve(probes),
                facts(log, evidence, standing));
    }

    /** Every question the batch gives occasion for, in the order a cook happens. */
    private static List<Check> checks(Evidence evidence, ProbePlaceCheck.Findings probes) {
        AuthorityProfile authority = evidence.authority();
        List<LethalityRow> rows = rows(evidence);
        List<Check> checks = new ArrayList<>(new RecordChecks(evidence).checks());
        ProbePlaceCheck.check(probes).ifPresent(checks::add);
        checks.addAll(new InterruptionCheck(evidence).checks());
        authority
                .comeUp()
                .flatMap(rule -> new ComeUpCheck(evidence, rule).check(rows))
                .ifPresent(checks::add);
        Check lethality = ProbePlaceCheck.trusted(new LethalityCheck(evidence).check(), probes);
        checks.add(lethality);
        new HumidityCheck(evidence, rows).check(lethality).ifPresent(checks::add);
        authority
                .lowCook()
                .flatMap(rule -> new LowCookCheck(evidence, rule).check())
                .ifPresent(checks::add);
        authority.seal().ifPresent(rule -> checks.addAll(new BagChecks(evidence, rule).checks()));
        HoldingChecks holding = new HoldingChecks(evidence);
        checks.addAll(holding.hot());
        new CoolingChecks(evidence)
                .checks().stream()
                        .map(check -> ProbePlaceCheck.trustedCooling(check, probes))
                        .forEach(checks::add);
        checks.addAll(holding.cold());
        new ShelfLifeChecks(evidence).check().ifPresent(checks::add);
        new TimeOnlyCheck(evidence).check().ifPresent(checks::add);
        authority.reheat().ifPresent(rule -> checks.addAll(new ReheatChecks(evidence, rule).checks()));
        return checks;
    }

    private static List<Caution> cautions(
            CookLogs logs,
            ProbeLog log,
            Evidence evidence,
            RuleLibrary library,
            List<Check> checks,
            ProbePlaceCheck.Findings probes) {
        List<Caution> cautions = new ArrayList<>(new RecordChecks(evidence).cautions(log));
        logs.disagreements().stream()
                .map(found -> disagreement(found, evidence.wording()))
                .forEach(cautions::add);
        cautions.addAll(ProbePlaceCheck.cautions(probes));
        new InterruptionCheck(evidence).changeOver().ifPresent(cautions::add);
        evidence.authority()
                .comeUpGuidance()
                .flatMap(rule -> new ComeUpCheck(evidence, rule).caution(rows(evidence)))
                .ifPresent(cautions::add);
        Optional<Check> lethality = checks.stream()
                .filter(check -> check.id().equals(LethalityCheck.ID))
                .findFirst();
        lethality
                .flatMap(check -> LowRow.caution(evidence, check, rows(evidence), library))
                .ifPresent(cautions::add);
        lethality.flatMap(check -> Undercooked.caution(evidence, check)).ifPresent(cautions::add);
        HumidityCheck.dried(evidence).ifPresent(cautions::add);
        cautions.addAll(new ModelledGrowth(evidence, library).cautions(checks));
        cautions.addAll(new ShelfLifeChecks(evidence).useBy());
        ReheatChecks.again(evidence).ifPresent(cautions::add);
        return cautions;
    }

    private static Caution disagreement(CookLogs.Disagreement found, Wording wording) {
        return new Caution(
                "instruments-disagree",
                found.first() + " and " + found.second() + " differ by "
                        + wording.difference(found.differenceCelsius()) + " at " + found.probe() + " ("
                        + wording.clock(found.millis()) + "), more than their tolerances together, "
                        + wording.difference(found.toleranceCelsius())
                        + ": one of them is wrong, or they did not sit in one place. Check both before the next cook.");
    }

    /** The rows that can make a cook lethal for this food. */
    private static List<LethalityRow> rows(Evidence evidence) {
        Product product = evidence.batch().product();
        return evidence.authority().lethalityFor(product).stream()
                .flatMap(choice -> choice.tables().stream())
                .flatMap(table -> table.rowsFor(product.fatPercent()).stream())
                .toList();
    }

    private static Optional<LethalityMargin> integrated(Evidence evidence, ThermalDeath kinetics) {
        Optional<Span> cook = evidence.timeline().cook();
        return cook.flatMap(span -> evidence.within(span).stream()
                .filter(trace -> !trace.isEmpty())
                .map(trace -> new LethalityMargin(
                        kinetics,
                        trace.channel(),
                        new GeneralMethod(List.of(kinetics), evidence.toleranceCelsius(), evidence.gapMinutes(trace))
                                .log10Reductions(trace)
                                .get(0)))
                .min(Comparator.comparingDouble(
                                (LethalityMargin found) -> found.log10().worst())
                        .thenComparingDouble(found -> found.log10().nominal())
                        .thenComparingDouble(found -> found.log10().best())));
    }

    private static Curve curve(Evidence evidence, LethalityMargin margin) {
        Trace trace = evidence.within(evidence.timeline().cook().orElseThrow()).stream()
                .filter(found -> found.channel().equals(margin.channel()))
                .findFirst()
                .orElseThrow();
        Bounded[] cumulative = new GeneralMethod(
                        List.of(margin.kinetics()), evidence.toleranceCelsius(), evidence.gapMinutes(trace))
                .cumulative(trace);
        List<Curve.Point> points = new ArrayList<>();
        int step = Math.max(1, trace.size() / CURVE_POINTS);
        for (int i = 0; i < trace.size(); i += step) {
            points.add(point(trace, cumulative, i));
        }
        if ((trace.size() - 1) % step != 0) {
            points.add(point(trace, cumulative, trace.size() - 1));
        }
        return new Curve(margin.kinetics().title(), "log10", points);
    }

    private static Curve.Point point(Trace trace, Bounded[] cumulative, int i) {
        return new Curve.Point(trace.millis(i), cumulative[i].worst(), cumulative[i].nominal(), cumulative[i].best());
    }

    private static RecordFacts facts(ProbeLog log, Evidence evidence, InstrumentStanding standing) {
        List<RecordFacts.Gap> gaps = new ArrayList<>();
        double median = 0;
        double limit = GapLimit.CEILING_MINUTES;
        for (Trace trace : evidence.core()) {
            double gapMinutes = GapLimit.minutes(trace, OptionalDouble.empty());
            median = Math.max(median, GapLimit.medianMinutes(trace));
            limit = Math.min(limit, gapMinutes);
            for (int i = 0; i + 1 < trace.size(); i++) {
                if (trace.minutesAfter(i) > gapMinutes) {
                    gaps.add(new RecordFacts.Gap(trace.channel(), new Span(trace.millis(i), trace.millis(i + 1))));
                }
            }
        }
        return new RecordFacts(
                log.rows(), median, limit, gaps, standing.correctionCelsius(), evidence.toleranceCelsius());
    }
}
