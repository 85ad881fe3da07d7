package org.holdproof.core.assess;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.course.Accounts;
import org.holdproof.core.course.ColumnMissingException;
import org.holdproof.core.course.CookLogs;
import org.holdproof.core.course.CookTimeline;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.course.InstrumentStanding;
import org.holdproof.core.course.Surroundings;
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
        CookTimeline timeline = new CookTimeline(batch, span);
        Evidence evidence = new Evidence(
                batch,
                authority,
                core,
                core.stream().mapToDouble(Trace::toleranceCelsius).max().orElse(0),
                timeline,
                new Wording(authority.units(), batch.kitchen().zone()),
                Surroundings.of(log, batch, timeline, standing.correctionCelsius()));
        Accounts accounts = Accounts.of(evidence);

        ProbePlaceCheck.Findings probes = new ProbePlaceCheck(evidence, log).findings();
        List<Check> checks = checks(evidence, accounts, probes);
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
                cautions(logs, log, evidence, accounts, library, checks, probes),
                margins.stream().findFirst().map(found -> curve(evidence, found)),
                margins,
                ProbePlaceCheck.curve(probes),
                facts(log, evidence, standing),
                Unasked.of(evidence, checks));
    }

    /** Every question the batch gives occasion for, in the order a cook happens. */
    private static List<Check> checks(Evidence evidence, Accounts accounts, ProbePlaceCheck.Findings probes) {
        AuthorityProfile authority = evidence.authority();
        List<Check> checks = new ArrayList<>(new RecordChecks(evidence, accounts).checks());
        ProbePlaceCheck.check(probes).ifPresent(checks::add);
        checks.addAll(new InterruptionCheck(evidence, accounts).checks());
        new ComeUpCheck(evidence, accounts).check().ifPresent(checks::add);
        Check lethality = ProbePlaceCheck.trusted(new LethalityCheck(evidence, accounts).check(), probes);
        checks.add(lethality);
        new HumidityCheck(evidence, accounts).check(lethality).ifPresent(checks::add);
        new OvenCheck(evidence, accounts).check(lethality).ifPresent(checks::add);
        authority
                .lowCook()
                .flatMap(rule -> new LowCookCheck(evidence, accounts, rule).check())
                .ifPresent(checks::add);
        authority.seal().ifPresent(rule -> checks.addAll(new BagChecks(evidence, rule).checks()));
        HoldingChecks holding = new HoldingChecks(evidence, accounts);
        checks.addAll(holding.hot());
        holding.underHot().ifPresent(checks::add);
        new CoolingChecks(evidence, accounts)
                .checks().stream()
                        .map(check -> ProbePlaceCheck.trustedCooling(check, probes))
                        .forEach(checks::add);
        holding.neverCold().ifPresent(checks::add);
        holding.cold().ifPresent(checks::add);
        new ShelfLifeChecks(evidence, accounts).check().ifPresent(checks::add);
        new TimeOnlyCheck(evidence, accounts).check().ifPresent(checks::add);
        checks.addAll(new ReheatChecks(evidence, accounts).checks());
        return checks;
    }

    private static List<Caution> cautions(
            CookLogs logs,
            ProbeLog log,
            Evidence evidence,
            Accounts accounts,
            RuleLibrary library,
            List<Check> checks,
            ProbePlaceCheck.Findings probes) {
        List<Caution> cautions = new ArrayList<>(new RecordChecks(evidence, accounts).cautions(log));
        logs.disagreements().stream()
                .map(found -> disagreement(found, evidence.wording()))
                .forEach(cautions::add);
        cautions.addAll(ProbePlaceCheck.cautions(probes));
        new ComeUpCheck(evidence, accounts).caution().ifPresent(cautions::add);
        new InterruptionCheck(evidence, accounts).changeOver().ifPresent(cautions::add);
        List<LethalityRow> rows = accounts.choice()
                .map(choice -> choice.rowsFor(evidence.batch().product().fatPercent()))
                .orElse(List.of());
        Optional<Check> lethality = checks.stream()
                .filter(check -> check.id().equals(LethalityCheck.ID))
                .findFirst();
        lethality
                .flatMap(check -> LowRow.caution(evidence, check, rows, library))
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
